using System.Text.RegularExpressions;
using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>A figure that can mean two things: one touch decides, and nothing is stored before.</summary>
public sealed partial class TwoReadingsTests(Chromium chromium)
{
    private const string Typed = "62,100",
        Chosen = "62100 Ω",
        Other = "62.100 Ω";

    [Fact]
    public async Task One_touch_decides_what_a_coils_ohms_mean_and_stores_the_coil()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid batch = await shop.BatchAsync(await shop.ReleasedRecipeAsync(), 5);
        await shop.RoomAsync("20 C");
        IPage page = await chromium.PageAsync(shop.Url);
        EntryPageDriver entry = new(page, batch);
        await entry.OpenAsync();
        await Expect(entry.Resistance).ToBeFocusedAsync();
        await page.Keyboard.TypeAsync(Typed);
        ILocator chosen = Reading(page, Chosen),
            other = Reading(page, Other);
        await Expect(page.GetByText("which of the two is \"62,100\"?")).ToBeVisibleAsync();
        foreach (ILocator button in new[] { chosen, other })
        {
            LocatorBoundingBoxResult box = (await button.BoundingBoxAsync())!;
            Assert.True(box is { Width: >= 44, Height: >= 44 }, $"{box.Width} × {box.Height}");
        }

        await page.Keyboard.PressAsync("Enter"); // not decided: nothing is queued
        await Expect(page.GetByText("Say first which of the two it is.")).ToBeVisibleAsync();
        await Expect(entry.Sent.GetByRole(AriaRole.Listitem)).ToHaveCountAsync(0);
        await Expect(entry.Resistance).ToBeFocusedAsync();

        await page.Keyboard.TypeAsync("0"); // a reading of the older text is not offered for a newer one
        await Expect(chosen).ToBeHiddenAsync();
        await page.Keyboard.PressAsync("Backspace");
        await Expect(chosen).ToBeVisibleAsync();
        await page.Keyboard.PressAsync("Tab");
        await Expect(other).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Tab");
        await Expect(chosen).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Enter");
        await entry.AllSavedAsync();
        await Expect(entry.Sent).ToContainTextAsync($"C-001: {Chosen}");
        await Expect(entry.Resistance).ToHaveValueAsync("");
        await Expect(entry.Resistance).ToBeFocusedAsync();
        await Expect(other).ToBeHiddenAsync();
        Assert.Equal(("C-001", Chosen), Assert.Single(await entry.TableAsync()));
    }

    [Fact]
    public async Task A_figure_typed_offline_is_asked_about_when_the_server_answers_and_decided_from_any_page()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid batch = await shop.BatchAsync(await shop.ReleasedRecipeAsync(), 5);
        await shop.RoomAsync("20 C");
        IPage page = await chromium.PageAsync(shop.Url);
        EntryPageDriver entry = new(page, batch);
        await entry.OpenAsync();
        await Expect(entry.Resistance).ToBeFocusedAsync();
        await shop.KillAsync();
        await entry.TypeAsync(Typed);
        await entry.TypeAsync("6.18 k");
        await entry.TypeAsync("63,100");
        await page.GotoAsync("about:blank");
        await shop.RestartAsync();
        await page.GotoAsync("/");
        ILocator waiting = page.GetByRole(AriaRole.Region, new() { Name = "Coils on this tablet" });
        await Expect(waiting.GetByRole(AriaRole.Heading, new() { Name = "2 coils of this tablet were not saved" }))
            .ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Expect(waiting).ToContainTextAsync($"can mean {Other} or {Chosen}");
        await Expect(waiting).ToContainTextAsync(SavedAt(), new() { Timeout = 60_000 });
        Assert.Equal(("C-002", "6.18 k"), Assert.Single(await entry.TableAsync()));

        await entry.OpenAsync(); // the batch's own entry page asks too
        ILocator choice = Reading(page, $"C-001: {Chosen}");
        LocatorBoundingBoxResult box = (await choice.BoundingBoxAsync())!;
        Assert.True(box is { Width: >= 44, Height: >= 44 }, $"{box.Width} × {box.Height}");
        await choice.ClickAsync();
        await Expect(entry.Verdict).ToContainTextAsync("C-001", new() { Timeout = 60_000 });
        await Expect(choice).ToBeHiddenAsync();

        await page.GotoAsync("/"); // and so does any other
        await Reading(page, "C-003: 63100 Ω").ClickAsync();
        await Expect(waiting).ToBeHiddenAsync(new() { Timeout = 60_000 });
        Assert.Equal([("C-001", Chosen), ("C-002", "6.18 k"), ("C-003", "63100 Ω")], (await entry.TableAsync()).Order());
    }

    [Fact]
    public async Task Without_scripts_Enter_decides_nothing_and_one_press_does()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid batch = await shop.BatchAsync(await shop.ReleasedRecipeAsync(), 5);
        await shop.RoomAsync("20 C");
        IPage page = await chromium.PageAsync(shop.Url, scripts: false);
        EntryPageDriver entry = new(page, batch);
        await entry.OpenAsync();
        await entry.Resistance.FillAsync(Typed);
        for (int n = 0; n < 2; n++)
        {
            await entry.Resistance.PressAsync("Enter");
            await Expect(Reading(page, Other)).ToBeVisibleAsync();
            await Expect(entry.Resistance).ToHaveValueAsync(Typed);
        }

        await Reading(page, Chosen).ClickAsync();
        await Expect(entry.Verdict).ToContainTextAsync("C-001");
        Assert.Equal(("C-001", Chosen), Assert.Single(await entry.TableAsync()));
    }

    [GeneratedRegex(@"saved \d\d:\d\d")]
    private static partial Regex SavedAt();

    private static ILocator Reading(IPage page, string reading) => page.GetByRole(AriaRole.Button, new() { Name = reading, Exact = true });
}
