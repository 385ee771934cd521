using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>A recipe asked backwards, and the spread of a run.</summary>
public sealed class SolvePageTests(Chromium chromium)
{
    [Fact]
    public async Task Wants_row_by_row_give_whole_recipes_with_marks_and_one_becomes_a_draft()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.OpenAsync($"/recipes/{recipe}/solve");
        await page.GetByLabel("Want 1, quantity").SelectOptionAsync("DC resistance at 20 °C (kΩ)");
        await page.GetByLabel("Want 1, how much").FillAsync("8.2");
        await page.SendAsync("Add a want");
        await page.GetByLabel("Want 3, quantity").SelectOptionAsync("Resonance, loaded (kHz)");
        await page.GetByLabel("Want 3, how", new() { Exact = true }).SelectOptionAsync("at least");
        await page.GetByLabel("Want 3, how much").FillAsync("3.2 k");
        await page.SendAsync("Remove want 2");
        await page.GetByRole(AriaRole.Checkbox, new() { NameRegex = new("^Wire gauge") }).CheckAsync();
        await page.GetByLabel("Want 2, how much").PressAsync("Enter"); // as if Search were pressed

        ILocator best = page.GetByRole(AriaRole.Region, new() { Name = "Answer" }).GetByRole(AriaRole.Listitem).First;
        // the search goes on in the background
        await Expect(best).ToContainTextAsync("DC resistance at 20 °C 8.", new() { Timeout = 60_000 });
        await Expect(best).ToContainTextAsync("met");
        await Expect(page.GetByText("resonance, loaded at least 3.20 kHz")).ToBeVisibleAsync();
        await best.GetByRole(AriaRole.Button, new() { NameRegex = new("^Make it a draft: [0-9,]+ turns") }).PressAsync("Enter");
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
        await answer.GetByRole(AriaRole.Listitem).First.GetByRole(AriaRole.Link, new() { NameRegex = new("^Pin ") }).ClickAsync();
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
    public async Task The_spread_of_a_run_leads_with_its_share_within_limits_and_what_to_mend_first()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.OpenAsync($"/recipes/{recipe}/spread"); // drawn in the background
        ILocator answer = page.GetByRole(AriaRole.Region, new() { Name = "Answer", Exact = true });
        await Expect(answer).ToContainTextAsync("% of pieces within limits");
        await Expect(answer).ToContainTextAsync("Mend first: ");
        await Expect(answer.GetByRole(AriaRole.Row, new() { NameRegex = new("resistance of 10 m of each spool") })).ToBeInViewportAsync();
        await Expect(page.GetByRole(AriaRole.Img, new() { NameRegex = new("How DC resistance at 20 °C scatters") })).ToBeVisibleAsync();
        await page.GetByText("Every quantity and its causes").ClickAsync();
        await Expect(page.GetByRole(AriaRole.Row, new() { NameRegex = new("^DC resistance") }).Last).ToContainTextAsync("bare diameter");
        await page.GetByText("How well the field follows").ClickAsync();
        await Expect(
                page.GetByRole(AriaRole.Region, new() { Name = "How well the field follows" })
                    .GetByRole(AriaRole.Row, new() { NameRegex = new("^inductance") })
            )
            .ToContainTextAsync("%");
    }
}
