using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>A recipe asked backwards, and the spread of a run.</summary>
[Collection("browser")]
public sealed class SolvePageTests(Chromium chromium)
{
    [Fact]
    public async Task Wants_in_plain_words_give_whole_recipes_and_one_becomes_a_draft()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/recipes/{recipe}/solve");
        await page.GetByLabel("Wanted, one to a line").FillAsync("DC resistance = 8.2 kΩ\nloaded peak >= 3.2 kHz");
        await page.GetByLabel("What may change").FillAsync("turns,gauge");
        await page.GetByRole(AriaRole.Button, new() { Name = "Search" }).ClickAsync();
        ILocator answer = page.GetByRole(AriaRole.Region, new() { Name = "Answer" });
        // the search goes on in the background
        await Expect(answer.GetByRole(AriaRole.Row).Nth(1)).ToContainTextAsync("8.2", new() { Timeout = 60_000 });
        await Expect(answer.GetByRole(AriaRole.Figure).First).ToBeVisibleAsync();
        await answer.GetByRole(AriaRole.Button, new() { NameRegex = new("Make it a draft: turns") }).First.ClickAsync();
        await Expect(page.GetByText("revision B").First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Solutions_are_pinned_by_links_alone_compared_and_one_becomes_a_draft()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url, scripts: false);
        page.SetDefaultTimeout(60_000); // every answer is searched for anew in the background
        await page.OpenAsync($"/recipes/{recipe}/solve?want=dcResistance%3D8.2k%CE%A9&vary=turns,gauge");
        ILocator answer = page.GetByRole(AriaRole.Region, new() { Name = "Answer" });
        ILocator pinned = page.GetByRole(AriaRole.Region, new() { Name = "Pinned", Exact = true });
        await answer.GetByRole(AriaRole.Row).Nth(1).GetByRole(AriaRole.Link, new() { NameRegex = new("^Pin ") }).ClickAsync();
        await Expect(pinned.GetByRole(AriaRole.Columnheader, new() { Name = "Harbour bridge as it stands" }).First).ToBeVisibleAsync();

        // A dot of the trade-off by keyboard.
        ILocator dot = answer.GetByRole(AriaRole.Figure).GetByRole(AriaRole.Link, new() { NameRegex = new("^Pin ") }).Last;
        await dot.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(pinned.GetByRole(AriaRole.Link, new() { Name = "Unpin" })).ToHaveCountAsync(2);
        await Expect(pinned.GetByRole(AriaRole.Row, new() { NameRegex = new("^DC resistance") }).First).ToContainTextAsync("±");

        await pinned.GetByRole(AriaRole.Link, new() { Name = "Compare others with this one" }).First.ClickAsync();
        await Expect(pinned.GetByRole(AriaRole.Columnheader).Nth(1)).Not.ToHaveTextAsync("Harbour bridge as it stands");
        await pinned.GetByRole(AriaRole.Button, new() { Name = "Make it a draft revision" }).First.ClickAsync();
        await Expect(page.GetByText("revision B").First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_want_that_is_not_understood_is_answered_and_stays()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/recipes/{recipe}/solve");
        await page.GetByLabel("Wanted, one to a line").FillAsync("loudness=3");
        await page.GetByRole(AriaRole.Button, new() { Name = "Search" }).ClickAsync();
        await Expect(page.GetByText("no such quantity").First).ToBeVisibleAsync();
        await Expect(page.GetByLabel("Wanted, one to a line")).ToHaveValueAsync("loudness=3");
    }

    [Fact]
    public async Task The_spread_of_a_run_names_its_causes_in_words()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/recipes/{recipe}/spread");
        await Expect(page.GetByRole(AriaRole.Row, new() { Name = "bare diameter" }).First).ToContainTextAsync("%");
        await Expect(
                page.GetByRole(AriaRole.Region, new() { Name = "How well the field follows" })
                    .GetByRole(AriaRole.Row, new() { NameRegex = new("^inductance") })
            )
            .ToContainTextAsync("%");
        await Expect(page.GetByRole(AriaRole.Img, new() { NameRegex = new("Spread of DC resistance") })).ToBeVisibleAsync();
    }
}
