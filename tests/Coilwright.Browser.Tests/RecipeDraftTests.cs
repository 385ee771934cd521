using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>What was typed into a released recipe and not saved says what it is, and the released numbers are one touch away.</summary>
public sealed class RecipeDraftTests(Chromium chromium)
{
    [Fact]
    public async Task A_draft_of_this_tablet_says_so_above_the_answers_and_can_be_discarded()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        (IPage page, Guid recipe) = await TypedAsync(shop);
        await page.GotoAsync($"/recipes/{recipe}");
        await Expect(Turns(page)).ToHaveValueAsync("5000");
        await Expect(Bar(page))
            .ToContainTextAsync("Unsaved changes on this tablet: turns 5,000 instead of 8,000. The numbers below are of the draft.");
        await Expect(
                page.GetByRole(
                    AriaRole.Heading,
                    new()
                    {
                        Level = 1,
                        Name = "Harbour bridge draft on revision A, not saved",
                        Exact = true,
                    }
                )
            )
            .ToBeVisibleAsync();
        await page.GetByText("Papers", new() { Exact = true }).ClickAsync();
        await Expect(page.GetByText("are of revision A as released; unsaved changes on a tablet are in none of them")).ToBeVisibleAsync();
        await page.GetByText("Papers", new() { Exact = true }).ClickAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Discard the changes" }).ClickAsync();
        await Expect(Turns(page)).ToHaveValueAsync("8000");
        await page.GetByRole(AriaRole.Button, new() { Name = "Bring the changes back" }).ClickAsync();
        await Expect(Turns(page)).ToHaveValueAsync("5000");
        await page.GetByRole(AriaRole.Button, new() { Name = "Discard the changes" }).ClickAsync();
        await page.ReloadAsync();
        await Expect(Turns(page)).ToHaveValueAsync("8000");
        await Expect(Bar(page)).ToBeHiddenAsync();
        await Expect(
                page.GetByRole(
                    AriaRole.Heading,
                    new()
                    {
                        Level = 1,
                        Name = "Harbour bridge revision A, released",
                        Exact = true,
                    }
                )
            )
            .ToBeVisibleAsync();
    }

    [Fact]
    public async Task The_released_revision_is_one_touch_away_and_a_revision_asked_for_is_never_shown_as_a_draft()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        (IPage page, Guid recipe) = await TypedAsync(shop);
        await page.GotoAsync($"/recipes/{recipe}");
        await page.GetByRole(AriaRole.Link, new() { Name = "Show revision A as released" }).ClickAsync();
        await Expect(Turns(page)).ToHaveValueAsync("8000");
        await Expect(
                page.GetByRole(
                    AriaRole.Heading,
                    new()
                    {
                        Level = 1,
                        Name = "Harbour bridge revision A, released",
                        Exact = true,
                    }
                )
            )
            .ToBeVisibleAsync();
        await Expect(Bar(page)).ToContainTextAsync("The numbers below are of revision A as released.");
        await Expect(page.GetByRole(AriaRole.Region, new() { Name = "Five answers" })).ToContainTextAsync("6.12 kΩ");
        await page.GetByRole(AriaRole.Link, new() { Name = "Show the draft" }).ClickAsync();
        await Expect(Turns(page)).ToHaveValueAsync("5000");

        await page.GetByRole(AriaRole.Button, new() { Name = "Save as revision B" }).ClickAsync();
        await Expect(page.GetByLabel("Reason for the change")).ToBeFocusedAsync();
        await page.GetByLabel("Reason for the change").FillAsync("a weak one");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save as revision B" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("revision B");
        await Turns(page).FillAsync("5100");
        await page.GotoAsync($"/recipes/{recipe}?revision=1");
        await Expect(Turns(page)).ToHaveValueAsync("8000");
        await Expect(Bar(page)).ToBeHiddenAsync(); // the draft is one of revision B
        await Expect(page.GetByText("This is an older revision.")).ToBeVisibleAsync();
    }

    private static ILocator Turns(IPage page) => page.GetByLabel("Turns", new() { Exact = true });

    private static ILocator Bar(IPage page) => page.GetByRole(AriaRole.Region, new() { Name = "Unsaved changes" });

    private async Task<(IPage Page, Guid Recipe)> TypedAsync(ServedShop shop)
    {
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/recipes/{recipe}");
        await Turns(page).FillAsync("5000");
        await page.GotoAsync("/");
        return (page, recipe);
    }
}
