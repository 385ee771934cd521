using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>Coils typed while the server was away go out from any page; what was not taken stays in sight.</summary>
public sealed class WaitingCoilsTests(Chromium chromium)
{
    [Fact]
    public async Task Coils_typed_offline_stand_on_Today_and_go_out_from_there_once()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid batch = await shop.BatchAsync(await shop.ReleasedRecipeAsync(), 5);
        await shop.RoomAsync("20 C");
        IPage page = await chromium.PageAsync(shop.Url);
        EntryPageDriver entry = new(page, batch);
        await entry.OpenAsync();
        await Expect(entry.Resistance).ToBeFocusedAsync();
        await shop.KillAsync();
        await entry.TypeAsync("6.18 k");
        await entry.TypeAsync("6.21 k");
        await page.GotoAsync("about:blank");
        await shop.RestartAsync();
        bool away = true;
        await page.RouteAsync("**/api/batches/*/coils", route => away ? route.AbortAsync() : route.ContinueAsync());
        foreach (string address in new[] { "/", $"/batches/{batch}" })
        {
            await page.GotoAsync(address);
            await Expect(Waiting(page).GetByRole(AriaRole.Heading, new() { Name = "2 coils wait on this tablet" })).ToBeVisibleAsync();
            await Expect(Waiting(page)).ToContainTextAsync("C-001: 6.18 k");
            await Expect(Waiting(page)).ToContainTextAsync("C-002: 6.21 k");
        }

        await page.GotoAsync("/");
        away = false;
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("2 of 5", new() { Timeout = 60_000 });
        await Expect(Waiting(page)).ToBeHiddenAsync();
        Assert.Equal([("C-001", "6.18 k"), ("C-002", "6.21 k")], (await entry.TableAsync()).Order());
    }

    [Fact]
    public async Task A_refused_coil_stays_in_sight_with_its_reason_until_it_is_mended_or_discarded()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid batch = await shop.BatchAsync(await shop.ReleasedRecipeAsync(), 5);
        await shop.RoomAsync("20 C");
        IPage page = await chromium.PageAsync(shop.Url);
        EntryPageDriver entry = new(page, batch);
        await entry.OpenAsync();
        await Expect(entry.Resistance).ToBeFocusedAsync();
        await shop.KillAsync();
        await entry.Tag.FillAsync("");
        await entry.Resistance.FillAsync("6.18 k");
        await page.Keyboard.PressAsync("Enter");
        await page.GotoAsync("about:blank");
        await shop.RestartAsync();
        await page.RunAndWaitForResponseAsync(
            () => page.GotoAsync("/spools"),
            answer => answer.Url.EndsWith("/coils", StringComparison.Ordinal),
            new() { Timeout = 30_000 }
        ); // any page sends
        await page.GotoAsync("/");
        await Expect(Waiting(page).GetByRole(AriaRole.Heading, new() { Name = "1 coil of this tablet was not saved" })).ToBeVisibleAsync();
        await Expect(Waiting(page)).ToContainTextAsync("coil without a tag: 6.18 k");
        await Expect(Waiting(page)).ToContainTextAsync("A coil needs a tag. Allowed: up to 40 letters on one line.");
        await page.ReloadAsync();
        await Waiting(page).GetByRole(AriaRole.Link, new() { Name = "Mend coil without a tag" }).ClickAsync();
        await Expect(entry.Resistance).ToHaveValueAsync("6.18 k");
        await page.ReloadAsync();
        await Expect(entry.Resistance).ToHaveValueAsync("6.18 k"); // and is lost by no reload
        await entry.Tag.FillAsync("C-004");
        await entry.Resistance.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await entry.AllSavedAsync();
        Assert.Equal(("C-004", "6.18 k"), Assert.Single(await entry.TableAsync()));
        await page.GotoAsync("/");
        await Expect(Waiting(page)).ToBeHiddenAsync();
    }

    private static ILocator Waiting(IPage page) => page.GetByRole(AriaRole.Region, new() { Name = "Coils on this tablet" });
}
