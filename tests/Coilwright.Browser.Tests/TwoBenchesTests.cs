using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>Two tablets wind one batch: no two coils get one tag.</summary>
public sealed class TwoBenchesTests(Chromium chromium)
{
    [Fact]
    public async Task A_tag_that_the_other_tablet_has_used_is_asked_about_and_Enter_takes_the_next()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        Guid batch = await shop.BatchAsync(await shop.ReleasedAsync("harbour-bridge.json"), "H-12", "main", "C-");
        IPage one = await chromium.PageAsync(shop.Url),
            other = await chromium.PageAsync(shop.Url);
        EntryPageDriver first = new(one, batch),
            second = new(other, batch);
        await first.OpenAsync();
        await second.OpenAsync();
        await Expect(second.Resistance).ToBeFocusedAsync();
        await Expect(first.Resistance).ToBeFocusedAsync();
        await first.TypeAsync("6.21 k");
        await Expect(first.Verdict).ToContainTextAsync("C-001");

        await second.TypeAsync("6.25 k");
        await Expect(other.GetByText("Another bench has entered C-001 meanwhile")).ToBeVisibleAsync();
        await Expect(second.Tag).ToHaveValueAsync("C-002");
        await Expect(second.Resistance).ToHaveValueAsync("6.25 k");
        await second.Resistance.PressAsync("Enter");
        await Expect(second.Verdict).ToContainTextAsync("C-002");
        await Expect(second.Tag).ToHaveValueAsync("C-003");
        await second.Tag.FillAsync("C-001"); // meant: the same coil, read once more
        await second.Resistance.FillAsync("6.20 k");
        await second.Resistance.PressAsync("Enter");
        await Expect(second.Verdict).ToContainTextAsync("C-001");
    }

    [Fact]
    public async Task Without_scripts_saving_again_takes_the_next_tag()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        Guid batch = await shop.BatchAsync(await shop.ReleasedAsync("harbour-bridge.json"), "H-12", "main", "C-");
        IPage one = await chromium.PageAsync(shop.Url, scripts: false),
            other = await chromium.PageAsync(shop.Url, scripts: false);
        await one.GotoAsync($"/batches/{batch}/enter");
        await other.GotoAsync($"/batches/{batch}/enter");
        foreach ((IPage page, string ohms) in new[] { (one, "6.21 k"), (other, "6.25 k") })
        {
            await page.GetByLabel("Resistance", new() { Exact = true }).FillAsync(ohms);
            await page.GetByRole(AriaRole.Button, new() { Name = "Save coil" }).ClickAsync();
        }

        await Expect(other.GetByText("Another bench has entered C-001 meanwhile")).ToBeVisibleAsync();
        await other.GetByRole(AriaRole.Button, new() { Name = "Save coil" }).ClickAsync();
        await Expect(other.GetByLabel("Tag", new() { Exact = true })).ToHaveValueAsync("C-003");
    }
}
