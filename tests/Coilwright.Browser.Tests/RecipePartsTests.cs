using Coilwright.Browser.Tests.Ground;
using Coilwright.Workshop.Recipes;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>Parts are added to a recipe and taken away on its page; the draft keeps them until it is saved or discarded.</summary>
public sealed class RecipePartsTests(Chromium chromium)
{
    [Fact]
    public async Task A_draft_keeps_a_part_that_was_added_over_a_reload_and_gives_it_up_when_discarded()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        RevisionRecord recipe = await shop.ReleasedAsync("harbour-bridge.json");
        string address = $"/recipes/{recipe.RecipeId}";
        IPage page = await chromium.PageAsync(shop.Url);
        page.SetDefaultTimeout(60_000);
        await page.OpenAsync(address);
        await page.GetByLabel("Turns", new() { Exact = true }).FillAsync("8100");
        await page.GetByText("Poles and magnets", new() { Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Add a cover" }).ClickAsync();
        await Expect(Bar(page)).ToContainTextAsync("1 piece of metalwork added; turns 8,100 instead of 8,000");
        await Expect(Cover(page)).ToHaveValueAsync("nickel silver");
        await Expect(page.Locator(".field").Filter(new() { Has = Cover(page) })).ToContainTextAsync("common practice");
        await Cover(page).FillAsync("brass");

        await page.OpenAsync(address);
        await Expect(Bar(page)).ToContainTextAsync("1 piece of metalwork added; turns 8,100 instead of 8,000");
        await Expect(Cover(page)).ToHaveValueAsync("brass");
        await page.GetByRole(AriaRole.Button, new() { Name = "Discard the changes" }).ClickAsync();
        await Expect(page.GetByLabel("Turns", new() { Exact = true })).ToHaveValueAsync("8000");
        await Expect(Bar(page)).ToBeHiddenAsync();
        await page.OpenAsync(address);
        await Expect(Bar(page)).ToBeHiddenAsync();
    }

    [Fact]
    public async Task Without_scripts_a_coil_is_added_and_taken_away_and_a_plate_is_saved()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        RevisionRecord recipe = await shop.ReleasedAsync("harbour-bridge.json");
        IPage page = await chromium.PageAsync(shop.Url, scripts: false);
        page.SetDefaultTimeout(60_000);
        await page.GotoAsync($"/recipes/{recipe.RecipeId}");
        await page.GetByText("Bobbin", new() { Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Add a coil" }).ClickAsync();
        ILocator answers = page.GetByRole(AriaRole.Region, new() { Name = "Five answers" });
        await Expect(answers).ToContainTextAsync("12.2 kΩ");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take away coil 2 coil: bobbin" }).ClickAsync();
        await Expect(answers).ToContainTextAsync("6.12 kΩ");
        await page.GetByText("Poles and magnets", new() { Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Add a plate" }).ClickAsync();
        await page.GetByLabel("Reason for the change").FillAsync("a plate below");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save draft" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("revision B");
        Assert.Contains(
            "\"plate\"",
            (await shop.Services.Records.Recipes.RevisionsAsync(recipe.RecipeId, TestContext.Current.CancellationToken))
                .MaxBy(one => one.Number)!
                .Json,
            StringComparison.Ordinal
        );
    }

    private static ILocator Bar(IPage page) => page.GetByRole(AriaRole.Region, new() { Name = "Unsaved changes" });

    private static ILocator Cover(IPage page) => page.Locator("[id='metalwork[0].material']");
}
