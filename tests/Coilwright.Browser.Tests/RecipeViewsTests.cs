using Coilwright.Browser.Tests.Ground;
using Coilwright.Workshop.Recipes;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>One view of a recipe at a time, each with an address; the five answers and the main action before everything.</summary>
public sealed class RecipeViewsTests(Chromium chromium)
{
    /// <summary>Two screens of a tablet held upright.</summary>
    private const int LongestPx = 2160;

    private static readonly string[] s_views = ["sound", "strings", "coil", "moves", "numbers", "history"];

    /// <summary>Sizes of a phone, a laptop and a tablet.</summary>
    private static readonly (int Width, int Height)[] s_sizes = [(390, 844), (1280, 800), (810, 1080)];

    [Fact]
    public async Task Each_view_of_any_recipe_has_answers_and_main_action_in_its_first_screen_and_fits_two_of_a_tablet()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        List<string> tooLong = [];
        foreach (string file in Directory.EnumerateFiles(Path.Combine(Ground.Demo.Root, "demo", "recipes")).Select(Path.GetFileName)!)
        {
            RevisionRecord recipe = await shop.ReleasedAsync(file);
            foreach (string view in s_views)
            {
                await page.OpenAsync($"/recipes/{recipe.RecipeId}?view={view}");
                foreach ((int width, int height) in s_sizes)
                {
                    await page.SetViewportSizeAsync(width, height);
                    await FirstScreenAsync(page, file == "tideway-bass.json" ? $"recipe-{view}" : file, width, height);
                }

                int whole = await page.EvaluateAsync<int>("() => document.documentElement.scrollHeight"); // of the tablet
                tooLong.AddRange(whole > LongestPx ? [$"{file} {view}: {whole}"] : []);
            }
        }

        Assert.True(tooLong.Count == 0, string.Join(", ", tooLong));
    }

    private static async Task FirstScreenAsync(IPage page, string name, int width, int height)
    {
        if (name.StartsWith("recipe-", StringComparison.Ordinal))
        {
            await ScreenTests.CheckAsync(page, name, width);
        }

        ILocator answers = page.GetByRole(AriaRole.Region, new() { Name = "Five answers" }).GetByRole(AriaRole.Listitem);
        await Expect(answers).ToHaveCountAsync(5);
        ILocator action = page.GetByRole(AriaRole.Link, new() { Name = "Start a batch on revision A" });
        foreach (ILocator one in (ILocator[])[action, answers.First, answers.Last])
        {
            LocatorBoundingBoxResult box = (await one.BoundingBoxAsync())!;
            Assert.InRange(box.Y + box.Height, 1, width <= 600 ? height - 60 : height);
        }

        Assert.Equal(1, await page.EvaluateAsync<int>(Copper));
    }

    [Fact]
    public async Task A_view_is_a_link_without_scripts_and_a_touch_with_them_and_the_draft_goes_along()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        RevisionRecord recipe = await shop.ReleasedAsync("harbour-bridge.json");
        string address = $"/recipes/{recipe.RecipeId}";
        IPage bare = await chromium.PageAsync(shop.Url, scripts: false);
        await bare.GotoAsync(address);
        await bare.GetByRole(AriaRole.Link, new() { Name = "All numbers" }).ClickAsync();
        Assert.EndsWith("view=numbers", bare.Url, StringComparison.Ordinal);
        await Expect(bare.GetByRole(AriaRole.List, new() { Name = "The pickup" })).ToContainTextAsync("6.12 kΩ");
        await bare.GetByLabel("Turns", new() { Exact = true }).FillAsync("8600");
        await bare.GetByRole(AriaRole.Button, new() { Name = "Show the forecast" }).ClickAsync();
        await bare.GetByRole(AriaRole.Button, new() { Name = "Coil", Exact = true }).ClickAsync();
        await Expect(bare.GetByLabel("Turns", new() { Exact = true })).ToHaveValueAsync("8600");
        await Expect(bare.GetByRole(AriaRole.List, new() { Name = "Coil main" })).ToContainTextAsync("6.62 kΩ");

        IPage page = await chromium.PageAsync(shop.Url);
        await page.OpenAsync(address);
        await page.GetByLabel("Turns", new() { Exact = true }).FillAsync("8600");
        await page.GetByRole(AriaRole.Link, new() { Name = "All numbers" }).ClickAsync();
        Assert.EndsWith("view=numbers", page.Url, StringComparison.Ordinal);
        await Expect(page.GetByRole(AriaRole.List, new() { Name = "The pickup" })).ToContainTextAsync("6.62 kΩ");
        ILocator answers = page.GetByRole(AriaRole.Region, new() { Name = "Five answers" });
        await Expect(answers).ToContainTextAsync("+498 Ω against revision A");
        await page.GetByRole(AriaRole.Link, new() { Name = "Sound" }).ClickAsync();
        await Expect(page.GetByText("with its 95 % band. Dashed: revision A")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "What moves it" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Table, new() { Name = "What one small change does" })).ToContainTextAsync("6.62 kΩ");
    }

    [Fact]
    public async Task A_field_lights_its_dimension_and_a_dimension_leads_to_its_field()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        RevisionRecord recipe = await shop.ReleasedAsync("harbour-bridge.json");
        IPage page = await chromium.PageAsync(shop.Url);
        await page.OpenAsync($"/recipes/{recipe.RecipeId}");
        ILocator height = page.Locator("[data-dimension='coils[0].bobbin.windingHeight']");
        await Expect(height).ToHaveAttributeAsync("aria-label", "Coil 1, bobbin, winding height 11 mm");
        await height.ClickAsync();
        await Expect(page.GetByLabel("Winding height", new() { Exact = true })).ToBeFocusedAsync();
        await Expect(height).ToHaveClassAsync("dimension lit");
        await page.GetByLabel("Winding height", new() { Exact = true }).FillAsync("12 mm");
        await Expect(height).ToHaveAttributeAsync("aria-label", "Coil 1, bobbin, winding height 12 mm");
        await Expect(height).ToHaveClassAsync("dimension lit"); // drawn anew, and lit again
        await page.GetByLabel("Core length", new() { Exact = true }).FocusAsync();
        await Expect(height).ToHaveClassAsync("dimension");
        await Expect(page.Locator("[data-dimension='coils[0].bobbin.coreLength']")).ToHaveClassAsync("dimension lit");
    }

    /// <summary>Copper buttons in sight.</summary>
    private const string Copper = """
        () => [...document.querySelectorAll('main button, main a.button')].filter(one => one.checkVisibility()
          && getComputedStyle(one).backgroundColor === getComputedStyle(document.querySelector('.main-action')).backgroundColor).length
        """;
}
