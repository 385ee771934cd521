using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;

namespace Coilwright.Browser.Tests;

/// <summary>
/// Every page at the sizes of a laptop and of a tablet held upright: nothing wider than the window; pictures kept when asked for.
/// </summary>
public sealed class ScreenTests(Chromium chromium)
{
    private static readonly (int Width, int Height)[] s_sizes = [(810, 1080), (1280, 800)];

    [Fact]
    public async Task No_page_is_wider_than_its_window()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        Guid batch = await shop.BatchAsync(recipe, 20);
        await shop.RoomAsync("23.5 C");
        IPage page = await chromium.PageAsync(shop.Url);
        EntryPageDriver entry = new(page, batch);
        await entry.OpenAsync();
        foreach (string typed in new[] { "6.25 k", "6.31 k", "6.22 k", "6.28 k", "7k2", "6.24 k", "6.9 k", "6.27 k" })
        {
            await entry.TypeAsync(typed);
        }

        await entry.AllSavedAsync();
        await CheckAsync(page, "enter");
        foreach (
            (string name, string address) in new[]
            {
                ("today", "/"),
                ("recipes", "/recipes"),
                ("recipe", $"/recipes/{recipe}"),
                ("setup", $"/recipes/{recipe}/setup"),
                ("batch", $"/batches/{batch}"),
                ("wind", $"/batches/{batch}/wind"),
                ("spools", "/spools"),
                ("winders", "/machines"),
                ("coil", $"/batches/{batch}/coils/C-003"),
                ("tags", $"/batches/{batch}/tags"),
                ("compare", "/compare"),
                ("solve", $"/recipes/{recipe}/solve?want=dcResistance%3D8.2k%CE%A9&vary=turns,gauge"),
                ("spread", $"/recipes/{recipe}/spread"),
                ("hold", $"/recipes/{recipe}/hold?ohmPerM=5.544"),
                ("variants", $"/recipes/{recipe}/variants?ask=longerCore"),
                ("help", "/help"),
                ("help-guide", "/help/assembly-day"),
                ("help-sources", "/help/sources"),
                ("labels", "/labels?kind=spool&name=0117"),
                ("nothing", "/no-such-page"),
            }
        )
        {
            await page.OpenAsync(address);
            await CheckAsync(page, name);
        }
    }

    private static async Task CheckAsync(IPage page, string name)
    {
        foreach ((int width, int height) in s_sizes)
        {
            await page.SetViewportSizeAsync(width, height);
            await CheckAsync(page, name, width);
        }
    }

    internal static async Task CheckAsync(IPage page, string name, int width)
    {
        if (Environment.GetEnvironmentVariable("COILWRIGHT_SCREENSHOTS") == "1")
        {
            string folder = Directory.CreateDirectory(Path.Combine(Ground.Demo.Root, "docs", "screens")).FullName;
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}-{width}.png"), FullPage = true });
        }

        Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth") <= width, $"{name} is wider than {width}");
    }
}
