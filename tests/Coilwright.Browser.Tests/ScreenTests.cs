using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;

namespace Coilwright.Browser.Tests;

/// <summary>The pictures in docs/screens, of the demo's shop full of work; made by tests/make-screens and not in a usual run.</summary>
public sealed class ScreenTests(Chromium chromium, DemoShop demo)
{
    /// <summary>First screens that the README shows.</summary>
    private static readonly string[] s_tops = ["today", "recipe", "wind"];

    private static readonly (int Width, int Height)[] s_sizes = [(810, 1080), (1280, 800)];

    /// <summary>Name of the picture, and the kind of page.</summary>
    private static readonly (string Name, string Kind)[] s_pages =
    [
        ("today", "/?"),
        ("recipes", "/recipes?"),
        ("new-recipe", "/recipes/new?"),
        ("recipe", "/recipes/{id:guid}?"),
        ("setup", "/recipes/{id:guid}/setup?"),
        ("compare", "/compare?"),
        ("solve", "/recipes/{id:guid}/solve?"),
        ("spread", "/recipes/{id:guid}/spread?"),
        ("variants", "/recipes/{id:guid}/variants?"),
        ("batches", "/batches?"),
        ("batch", "/batches/{id:guid}?"),
        ("enter", "/batches/{id:guid}/enter?"),
        ("wind", "/batches/{id:guid}/wind?"),
        ("tags", "/batches/{id:guid}/tags?"),
        ("coil", "/batches/{id:guid}/coils/{tag}?"),
        ("spools", "/spools?"),
        ("winders", "/machines?"),
        ("charts", "/charts?"),
        ("assembly", "/assembly?"),
        ("sets", "/sets?"),
        ("clocks", "/clocks?"),
        ("magnets", "/magnets?"),
        ("final-test", "/test?"),
        ("pieces", "/pieces?"),
        ("piece", "/pieces/{serial}?"),
        ("find", "/find?code"),
        ("shop", "/shop?"),
        ("measure", "/measure?"),
        ("rules", "/shop/rules?"),
        ("help", "/help?"),
    ];

    [Fact(Explicit = true)]
    public async Task Pictures_of_a_shop_full_of_work()
    {
        Dictionary<string, string> addresses = (await demo.PagesAsync()).ToDictionary(
            address => EveryPage.KindOf(address, demo.Patterns),
            StringComparer.Ordinal
        );
        IPage page = await chromium.PageAsync(demo.Url);
        foreach ((string name, string kind) in s_pages)
        {
            await page.OpenAsync(addresses[kind]);
            foreach ((int width, int height) in s_sizes)
            {
                await page.SetViewportSizeAsync(width, height);
                await CheckAsync(page, name, width);
            }

            if (s_tops.Contains(name))
            {
                await page.SetViewportSizeAsync(1280, 1000);
                await page.ScreenshotAsync(new() { Path = PathOf($"{name}-top") });
            }
        }
    }

    /// <summary>Nothing stands wider than the window; a picture is kept when tests/make-screens asks for it.</summary>
    internal static async Task CheckAsync(IPage page, string name, int width, bool picture = true)
    {
        if (picture && Environment.GetEnvironmentVariable("COILWRIGHT_SCREENSHOTS") == "1")
        {
            await page.ScreenshotAsync(new() { Path = PathOf($"{name}-{width}"), FullPage = true });
        }

        Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth") <= width, $"{name} is wider than {width}");
    }

    private static string PathOf(string name) =>
        Path.Combine(Directory.CreateDirectory(Path.Combine(Ground.Demo.Root, "docs", "screens")).FullName, name + ".png");
}
