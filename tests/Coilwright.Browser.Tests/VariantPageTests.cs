using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>Ready questions about a recipe: a spool that is off, and variants.</summary>
public sealed class VariantPageTests(Chromium chromium)
{
    [Fact]
    public async Task A_typed_resistance_per_metre_shows_both_choices_and_holding_ohms_makes_a_draft()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url, scripts: false);
        await page.GotoAsync($"/recipes/{recipe}");
        await page.GetByText("More", new() { Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Keep turns or keep ohms" }).ClickAsync();
        await page.GetByLabel("or its resistance per metre at 20 °C").FillAsync("5.544");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show both" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Row, new() { Name = "inductance at 1 kHz" })).ToContainTextAsync("−3.3");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("Draft with 7,8\\d\\d turns") }).ClickAsync();
        await Expect(page.GetByText("revision B").First).ToBeVisibleAsync();
        await Expect(page.GetByLabel("Turns", new() { Exact = true }))
            .ToHaveValueAsync(new System.Text.RegularExpressions.Regex("78\\d\\d"));
    }

    [Fact]
    public async Task A_resistance_that_no_wire_has_is_refused_with_what_is_allowed()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/recipes/{recipe}/hold?ohmPerM=5544");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("0.05 to 250 Ω/m", new() { IgnoreCase = true });
        await page.GotoAsync($"/recipes/{recipe}/hold?spool=99");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("no spool of this label", new() { IgnoreCase = true });
    }

    [Fact]
    public async Task A_longer_core_tells_its_numbers_and_becomes_a_recipe_of_its_own()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url, scripts: false);
        await page.GotoAsync($"/recipes/{recipe}/variants");
        await page.GetByRole(AriaRole.Button, new() { Name = "Ask: A longer core, same poles" }).ClickAsync();
        ILocator answer = page.GetByRole(AriaRole.Region, new() { Name = "Answer" });
        await Expect(answer).ToContainTextAsync("140.5 mm → 146.1 mm");
        await answer.GetByRole(AriaRole.Button, new() { Name = "Make it a new recipe" }).First.ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("core 2.8 mm longer revision A, draft");
    }

    [Fact]
    public async Task Labels_change_no_number_and_a_wrong_length_is_told_with_its_range()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/recipes/{recipe}/variants?ask=colour&value=black");
        await Expect(page.GetByText("Parts and labels only")).ToBeVisibleAsync();
        await page.GotoAsync($"/recipes/{recipe}/variants?ask=spacing&value=90%20mm");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("4 mm to 30 mm", new() { IgnoreCase = true });
    }
}
