using System.Collections.Concurrent;
using Coilwright.Browser.Tests.Checks;
using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;

namespace Coilwright.Browser.Tests;

/// <summary>
/// Every kind of page, of the demo's shop full of work and of a shop that begins, at the width of a phone, a tablet, a laptop and a laptop
/// at 200 %: one walk, and one visit to a page, for all that must hold of it.
/// </summary>
public sealed class EveryPageTests(Chromium chromium, DemoShop demo)
{
    /// <summary>Two screens of a tablet held upright: as long as a page of the day may be.</summary>
    private const int LongestPx = 2160;

    [Fact]
    public async Task Every_page_of_a_shop_full_of_work_fits_its_window_and_can_be_read_and_touched()
    {
        IReadOnlyList<string> pages = await demo.PagesAsync();
        Assert.True(pages.Count > 50, $"only {pages.Count} pages");
        await WalkAsync(demo.Url, pages);
    }

    [Fact]
    public async Task Every_page_of_a_shop_that_begins_fits_its_window_and_can_be_read_and_touched()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        IReadOnlyList<string> pages = await EveryPage.OfAsync(shop.Url, demo.Patterns);
        Assert.True(pages.Count > 15, $"only {pages.Count} pages");
        await WalkAsync(shop.Url, pages);
    }

    /// <summary>The walk asks for each page that the program gives: none is left out because no link leads to it.</summary>
    [Fact]
    public async Task No_page_of_the_program_is_left_out_of_the_walk()
    {
        IReadOnlyList<string> pages = await demo.PagesAsync();
        HashSet<string> walked =
        [
            .. pages.Select(page => EveryPage.KindOf(page, demo.Patterns).Split('?')[0]),
            .. PeopleDayTests.PagesOfAccounts,
        ];
        string[] left =
        [
            .. demo.Patterns.Select(one => one.Text).Where(one => !walked.Contains(one) && !s_noPages.Contains(one)).Distinct(),
        ];
        Assert.True(left.Length == 0, string.Join('\n', left));
    }

    [Fact]
    public async Task Every_page_can_be_read_without_scripts_and_its_figures_are_pictures()
    {
        IReadOnlyList<string> pages = await demo.PagesAsync();
        await EachAsync(
            pages,
            () => chromium.PageAsync(demo.Url, 810, 1080, scripts: false),
            async page => [.. await PageChecks.SidewaysAsync(page), .. await PageChecks.EmptyFiguresAsync(page)]
        );
    }

    private Task WalkAsync(Uri url, IReadOnlyList<string> pages) => EachAsync(pages, () => chromium.PageAsync(url, 390, 844), BrokenAsync);

    /// <summary>All checks at each width, on one visit; those that do not depend on it are made at one width alone.</summary>
    private static async Task<IReadOnlyList<string>> BrokenAsync(IPage page) =>
        [
            .. await AtAsync(page, 390, 844, PageChecks.SmallAsync, PageChecks.WordsOfProgramsAsync),
            .. await AtAsync(page, 810, 1080, PageChecks.SmallAsync, PageChecks.BarriersAsync, LongAsync),
            .. await AtAsync(page, 640, 400), // a laptop's window at 200 % has half as many points each way
            .. await AtAsync(
                page,
                1280,
                800,
                PageChecks.SmallAsync,
                PageChecks.MainActionsAsync,
                PageChecks.OutOfReachAsync,
                PageChecks.FaintAsync
            ),
        ];

    private static Task<string[]> LongAsync(IPage page) => PageChecks.TooLongAsync(page, longestPx: LongestPx);

    private static async Task<IReadOnlyList<string>> AtAsync(IPage page, int width, int height, params Func<IPage, Task<string[]>>[] checks)
    {
        await page.SetViewportSizeAsync(width, height);
        List<string> broken = [];
        foreach (
            Func<IPage, Task<string[]>> check in (Func<IPage, Task<string[]>>[])
                [PageChecks.SidewaysAsync, PageChecks.CrowdedAsync, .. checks]
        )
        {
            broken.AddRange(await check(page));
        }

        return [.. broken.Select(what => $"at {width}: {what}")];
    }

    private static async Task EachAsync(IReadOnlyList<string> pages, Func<Task<IPage>> open, Func<IPage, Task<IReadOnlyList<string>>> check)
    {
        ConcurrentQueue<string> left = new(pages);
        ConcurrentBag<string> broken = [];
        await Task.WhenAll(
            Enumerable
                .Range(0, 2)
                .Select(async _ =>
                {
                    IPage page = await open();
                    page.SetDefaultTimeout(90_000); // the first page of its kind is compiled as it is served
                    while (left.TryDequeue(out string? address))
                    {
                        await page.OpenAsync(address);
                        foreach (string what in await check(page))
                        {
                            broken.Add($"{address} {what}");
                        }
                    }

                    await page.Context.CloseAsync();
                })
        );
        Assert.True(broken.IsEmpty, string.Join('\n', broken.Order()));
    }

    /// <summary>Addresses that give a file, a picture or an answer to a program.</summary>
    private static readonly string[] s_noPages =
    [
        "/built/{name}",
        "/recipes/{id:guid}/{number:int}/section-{coil:int}.svg",
        "/charts/coils.csv",
        "/understood",
        "/listen/{place:int}.wav",
        "/listen/blind/{sound}.wav",
        "/listen/recording/{which}.wav",
        "/api/now",
        "/api/health",
        "/api/meters/{name}",
        "/api/counts/{batch}",
        "/pieces/{serial}/label.pdf",
        "/recipes/{id:guid}/papers/parts.pdf",
        "/clocks/baskets/{id:guid}/tag.pdf",
        "/clocks/inks/{label}/tag.pdf",
        "/recall.csv",
        "/recipes/{id:guid}/setup.pdf",
        "/batches/{id:guid}/setup.pdf",
        "/labels.pdf",
        "/labels.html",
    ];
}
