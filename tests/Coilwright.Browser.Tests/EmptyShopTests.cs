using System.Text.RegularExpressions;
using Coilwright.Browser.Tests.Ground;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Starting;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>Whoever opens an empty shop gets to the first verdict by what the pages say, without a file.</summary>
public sealed partial class EmptyShopTests(Chromium chromium)
{
    [Theory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task From_an_empty_shop_to_the_first_verdict_by_labels_alone(int width, int height)
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        IPage page = await chromium.PageAsync(shop.Url, width, height);
        await page.OpenAsync("/");
        await page.GetByLabel("Room temperature").FillAsync("20");
        await page.SendAsync("Set room temperature");
        await page.FollowAsync("New recipe");
        await page.FollowAsync("Single coil, narrow and tall");
        await page.SendAsync("Make the recipe");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("What is the recipe called?");
        await page.GetByLabel("Name of the recipe").FillAsync("Skerry");
        await page.SendAsync("Make the recipe");

        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Skerry revision A, draft");
        ILocator forecast = page.GetByRole(AriaRole.Region, new() { Name = "Five answers" });
        await Expect(forecast).ToContainTextAsync("kΩ");
        await Expect(forecast).ToContainTextAsync("kHz");
        await Expect(page.Locator(".field").Filter(new() { Has = page.GetByLabel("Turns", new() { Exact = true }) }))
            .ToContainTextAsync("common practice");
        await ScreenTests.CheckAsync(page, "recipe-of-a-shape", width);
        await page.GetByLabel("Released by").FillAsync("Mara");
        await page.SendAsync("Release revision A");

        await page.FollowAsync("Wind");
        await page.FollowAsync("Winders");
        await page.FollowAsync("Add winder");
        await page.GetByLabel("Name of the winder").FillAsync("Winder 1");
        await page.SendAsync("Keep the winder");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Winder 1" })).ToBeVisibleAsync();

        await page.FollowAsync("Spools");
        await page.GetByLabel("Label", new() { Exact = true }).FillAsync("0117");
        await page.GetByLabel("Gauge").FillAsync("AWG 42");
        await page.GetByLabel("Wire received").FillAsync("2270 g");
        await page.SendAsync("Add spool");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Spool 0117" })).ToBeVisibleAsync();

        await page.FollowAsync("Batches");
        await page.FollowAsync("Start a batch of Skerry");
        await page.GetByLabel("Name of the batch").FillAsync("S-1");
        await page.GetByLabel("Spool", new() { Exact = true }).SelectOptionAsync("0117");
        await page.GetByLabel("Winder", new() { Exact = true }).SelectOptionAsync("Winder 1");
        await page.SendAsync("Start the batch");

        await page.GetByLabel("Resistance", new() { Exact = true }).FillAsync("5.86 k");
        await page.GetByLabel("Resistance", new() { Exact = true }).PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("pass", new() { IgnoreCase = true });
        await ScreenTests.CheckAsync(page, "first-verdict", width);
    }

    [Fact]
    public async Task A_copy_is_made_from_the_recipe_page()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        RevisionRecord recipe = await shop.ReleasedAsync("harbour-bridge.json");
        IPage page = await chromium.PageAsync(shop.Url, 810, 1080);
        await page.OpenAsync($"/recipes/{recipe.RecipeId}");
        await page.GetByText("More", new() { Exact = true }).ClickAsync();
        await page.FollowAsync("Make a copy");
        await page.GetByLabel("Name of the recipe").FillAsync("Harbour bridge");
        await page.SendAsync("Make the recipe");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Another recipe of this shop has this name");
        await Expect(page.GetByLabel("Name of the recipe")).ToHaveValueAsync("Harbour bridge");
        await page.GetByLabel("Name of the recipe").FillAsync("Harbour neck");
        await page.SendAsync("Make the recipe");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Harbour neck revision A, draft");
        await Expect(page.GetByLabel("Turns", new() { Exact = true })).ToHaveValueAsync("8000");
    }

    [Fact]
    public async Task Each_page_of_the_start_fits_is_under_the_thumb_and_speaks_no_file()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await LookAsync(page, "start", "/");
        NewRecipe begun = new(shop.Services.Recipes, shop.Services.Records.Recipes);
        foreach (StartingRecipe shape in StartingRecipes.All)
        {
            await begun.FromShapeAsync(Guid.NewGuid(), shape.Key, shape.Title, "Joss", CancellationToken.None);
        }

        CancellationToken cancel = TestContext.Current.CancellationToken;
        string gears = await File.ReadAllTextAsync(Path.Combine(Ground.Demo.Root, "demo", "machines", "gear-winder.json"), cancel),
            rules = await File.ReadAllTextAsync(Path.Combine(Ground.Demo.Root, "demo", "rules", "lantern-quay.json"), cancel);
        Assert.Empty(await shop.Services.Machines.KeepAsync(Guid.NewGuid(), gears, "Mara", CancellationToken.None));
        Assert.Empty(await shop.Services.Pieces.Shelf.Rules.KeepAsync(Guid.NewGuid(), rules, "Mara", CancellationToken.None));
        foreach (
            (string name, string address) in new[]
            {
                ("new-recipe", "/recipes/new"),
                ("name-recipe", "/recipes/new?shape=bass-split"),
                ("batches", "/batches"),
                ("winders", "/machines"),
                ("add-winder", "/machines/new"),
                ("change-winder", "/machines/change?name=Winder%202"),
                ("customers", "/shop"),
                ("rules", "/shop/rules"),
                ("files", "/shop/files"),
            }
        )
        {
            await LookAsync(page, name, address);
        }
    }

    private static async Task LookAsync(IPage page, string name, string address)
    {
        await page.OpenAsync(address);
        string text = await page.InnerTextAsync("body");
        Assert.DoesNotMatch(FileWords(), text);
        ILocator places = page.GetByRole(AriaRole.Navigation, new() { Name = "Main" });
        Assert.Equal(["Today", "Design", "Wind", "Finish", "Shop"], await places.GetByRole(AriaRole.Link).AllInnerTextsAsync());
        foreach ((int width, int height) in ((int, int)[])[(390, 844), (810, 1080), (1280, 800)])
        {
            await page.SetViewportSizeAsync(width, height);
            await ScreenTests.CheckAsync(page, name, width, picture: name == "start");
            LocatorBoundingBoxResult box = (await places.BoundingBoxAsync())!;
            Assert.Equal(width <= 600, Math.Abs(box.Y + box.Height - height) < 1);
            await UnderTheThumbAsync(page, name);
        }
    }

    private static async Task UnderTheThumbAsync(IPage page, string name)
    {
        string[] small = await page.EvaluateAsync<string[]>(
            """
            () => [...document.querySelectorAll('main button, .button, nav a, main select, main input:not([type=checkbox], [type=hidden])')]
              .filter(one => one.checkVisibility() && one.getBoundingClientRect().height < 44)
              .map(one => `${one.tagName} ${one.textContent || one.id}`)
            """
        );
        Assert.True(small.Length == 0, $"{name}: {string.Join(", ", small)}");
    }

    /// <summary>Formats and keys of files, and what they are written in.</summary>
    [GeneratedRegex(@"(?i:\bjson\b)|coilwright\.\w+/|\b[a-z]{2,}[A-Z]\w*|\w+\[\d+\]")]
    private static partial Regex FileWords();
}
