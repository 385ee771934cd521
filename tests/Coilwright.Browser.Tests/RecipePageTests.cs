using System.Text.RegularExpressions;
using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>A recipe and its forecast while fields move.</summary>
public sealed class RecipePageTests(Chromium chromium)
{
    [Fact]
    public async Task Forecast_follows_a_field_as_it_moves()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/recipes/{recipe}");
        ILocator resistance = Answer(page, "Ohms at 20 °C");
        string before = await resistance.InnerTextAsync();
        await page.GetByRole(AriaRole.Slider, new() { Name = "Turns, slider" }).FillAsync("4000");
        await Expect(page.GetByLabel("Turns", new() { Exact = true })).ToHaveValueAsync("4000");
        await Expect(resistance).Not.ToHaveTextAsync(before);
        await Expect(resistance).ToContainTextAsync("kΩ");
    }

    [Fact]
    public async Task A_slow_older_answer_leaves_a_newer_one_undimmed()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/recipes/{recipe}");
        ILocator panel = page.GetByRole(AriaRole.Region, new() { Name = "Five answers" });
        await Expect(panel).ToHaveAttributeAsync("aria-busy", "false");
        await page.WaitForTimeoutAsync(1000); // the band has come too
        ILocator resistance = Answer(page, "Ohms at 20 °C");
        string before = await resistance.InnerTextAsync();
        int asked = 0,
            slow = 1500; // the older one is held back far beyond the moment at which a panel dims
        await page.RouteAsync("**/forecast?**", async route =>
        {
            bool first = Interlocked.Increment(ref asked) == 1;
            await Task.Delay(first ? slow : 0);
            await route.ContinueAsync();
        });
        await page.GetByLabel("Turns", new() { Exact = true }).FillAsync("7900");
        await page.WaitForTimeoutAsync(50);
        await page.GetByLabel("Turns", new() { Exact = true }).FillAsync("4000");
        await Expect(resistance).Not.ToHaveTextAsync(before);
        string newest = await resistance.InnerTextAsync();
        await page.WaitForTimeoutAsync(slow + 500);
        Assert.Equal(3, asked); // both, and the band once the form had settled
        await Expect(panel).ToHaveAttributeAsync("aria-busy", "false");
        await Expect(resistance).ToContainTextAsync(Regex.Match(newest, @"[\d.]+ kΩ").Value);
    }

    [Fact]
    public async Task A_mistake_is_answered_beside_its_field_and_what_was_typed_stays()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/recipes/{recipe}");
        await page.GetByLabel("Turns", new() { Exact = true }).FillAsync("eight thousand");
        await page.GetByLabel("Reason for the change").FillAsync("test");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save draft" }).ClickAsync();
        await Expect(page.GetByLabel("Turns", new() { Exact = true })).ToHaveValueAsync("eight thousand");
        await Expect(page.GetByRole(AriaRole.Alert).First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_length_takes_its_interval_keeps_it_under_the_slider_and_widens_the_forecast()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/recipes/{recipe}");
        await page.GetByText("Bobbin", new() { Exact = true }).ClickAsync();
        ILocator width = page.GetByLabel("Core width", new() { Exact = true }),
            field = page.Locator(".field").Filter(new() { Has = width }),
            inductance = Answer(page, "Inductance, 1 kHz");
        string before = await inductance.InnerTextAsync();
        await width.FillAsync("6.2 mm ± 1 mm");
        await Expect(field).ToContainTextAsync("6.2 mm ± 1 mm");
        await Expect(inductance).Not.ToHaveTextAsync(before);
        await page.GetByRole(AriaRole.Slider, new() { Name = "Core width, slider" }).FillAsync("6.4");
        await Expect(width).ToHaveValueAsync("6.4 mm ± 1 mm");
        await width.FillAsync("6.2 mm ±");
        await Expect(field).ToContainTextAsync("no number behind the ±");
        await page.GetByLabel("Reason for the change").FillAsync("measured");
        await page.SendAsync("Save draft");
        await Expect(width).ToHaveValueAsync("6.2 mm ±");
        await width.FillAsync("6.2 mm ± 0.05 mm");
        await page.SendAsync("Save draft");
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("revision B");
        await Expect(width).ToHaveValueAsync("6.2 mm ± 0.05 mm");
    }

    [Fact]
    public async Task Story_1_changing_turns_of_a_released_recipe_makes_the_next_revision_and_asks_for_a_reason()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/recipes/{recipe}");
        await page.GetByLabel("Turns", new() { Exact = true }).FillAsync("8050");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save draft" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert).First).ToContainTextAsync("eason", new() { IgnoreCase = true });
        await page.GetByLabel("Reason for the change").FillAsync("a little hotter");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save draft" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("revision B");
        await Expect(page.GetByLabel("Turns", new() { Exact = true })).ToHaveValueAsync("8050");
    }

    [Fact]
    public async Task What_a_small_change_does_follows_the_forecast_once_the_form_rests()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/recipes/{recipe}?view=moves");
        ILocator changes = page.GetByRole(AriaRole.Table, new() { Name = "What one small change does" });
        await Expect(changes.GetByRole(AriaRole.Columnheader, new() { Name = "wire 1 % thicker" })).ToBeVisibleAsync();
        ILocator resistance = changes.GetByRole(AriaRole.Row, new() { NameRegex = new("DC resistance at 20 °C: ") });
        string before = await resistance.InnerTextAsync();
        await page.GetByRole(AriaRole.Slider, new() { Name = "Turns, slider" }).FillAsync("4000");
        await Expect(resistance).Not.ToHaveTextAsync(before);
        await Expect(page.GetByRole(AriaRole.Region, new() { Name = "Small changes", Exact = true }))
            .ToHaveAttributeAsync("aria-busy", "false");
        await Expect(page.GetByRole(AriaRole.Table).GetByText("kΩ").First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Without_scripts_a_button_asks_for_the_small_changes()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url, scripts: false);
        await page.GotoAsync($"/recipes/{recipe}");
        await page.GetByRole(AriaRole.Link, new() { Name = "What moves it" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "What would one small change do?" }).ClickAsync();
        ILocator changes = page.GetByRole(AriaRole.Table, new() { Name = "What one small change does" });
        await Expect(changes).ToContainTextAsync("100 turns more");
        await Expect(page.GetByText("cannot be made: does not fit")).ToBeVisibleAsync(); // a gauge coarser fills this bobbin
    }

    private static ILocator Answer(IPage page, string label) =>
        page.GetByRole(AriaRole.Region, new() { Name = "Five answers" }).GetByRole(AriaRole.Listitem).Filter(new() { HasText = label });
}
