using Coilwright.Browser.Tests.Ground;
using Coilwright.Workshop.Recipes;
using Microsoft.Playwright;

namespace Coilwright.Browser.Tests;

/// <summary>What is printed for a batch is what its winder's page says.</summary>
public sealed class SheetOfBatchTests(Chromium chromium) : IAsyncLifetime
{
    private readonly HttpClient _http = new();
    private HostedShop _shop = null!;

    public async ValueTask InitializeAsync()
    {
        _shop = await HostedShop.StartAsync();
        Assert.Empty(
            await _shop.Services.Machines.KeepAsync(
                Guid.NewGuid(),
                await File.ReadAllTextAsync(Path.Combine(Ground.Demo.Root, "demo", "machines", "gear-winder.json")),
                "Mara",
                CancellationToken.None
            )
        );
    }

    public async ValueTask DisposeAsync()
    {
        _http.Dispose();
        await _shop.DisposeAsync();
    }

    [Fact]
    public async Task Sheet_page_and_links_of_a_batch_hold_one_counter_stop()
    {
        RevisionRecord revision = await _shop.ReleasedAsync("harbour-bridge.json");
        Guid batch = await _shop.BatchAsync(revision, "H-12", Ground.Demo.FirstCoilOf("harbour-bridge.json"), "H-");
        string page = await TextAsync($"/batches/{batch}/wind"),
            sheet = await TextAsync($"/batches/{batch}/setup"),
            own = await TextAsync($"/recipes/{revision.RecipeId}/setup?revision=1");
        string chosen = await TextAsync($"/recipes/{revision.RecipeId}/setup?revision=1&machine=Winder%202");

        Assert.Contains(">7,952</p>", page, StringComparison.Ordinal);
        Assert.All(
            ["<p class=\"stop\">7,952</p>", "H-12", "4, H-001 to H-004", "Winder 2", "0117", $"href=\"/batches/{batch}/wind\""],
            wanted => Assert.Contains(wanted, sheet, StringComparison.Ordinal)
        );
        Assert.All(["For no winder", "<h2>Real turns</h2>", "machine=Winder%202"], wanted =>
            Assert.Contains(wanted, own, StringComparison.Ordinal)
        );
        Assert.Contains("<p class=\"stop\">7,952</p>", chosen, StringComparison.Ordinal);
        foreach (string from in (string[])[$"/batches/{batch}", $"/batches/{batch}/wind", $"/batches/{batch}/enter"])
        {
            Assert.Contains($"href=\"/batches/{batch}/setup", await TextAsync(from), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("A4")]
    [InlineData("letter")]
    public async Task The_sheet_of_a_batch_on_a_geared_winder_prints_on_one_page(string paper)
    {
        RevisionRecord revision = await _shop.ReleasedAsync("harbour-bridge.json");
        Guid batch = await _shop.BatchAsync(revision, "H-12", Ground.Demo.FirstCoilOf("harbour-bridge.json"), "H-");
        Assert.Empty(
            await _shop.Services.Stock.TakeInAsync(
                new()
                {
                    Id = Guid.NewGuid(),
                    Label = "0117",
                    Lot = "L-31",
                    Gauge = "AWG 42",
                    Insulation = "plain-enamel",
                    Build = "single",
                    TimeUtc = _shop.Clock.GetUtcNow(),
                },
                "",
                "",
                CancellationToken.None
            )
        );
        Assert.Empty(
            await _shop.Services.Stock.MeasureAsync(Guid.NewGuid(), "0117", "10.00 m", "55.4", "23.5 C", "Mara", CancellationToken.None)
        );
        foreach (string address in (string[])[$"/batches/{batch}/setup", $"/recipes/{revision.RecipeId}/setup"])
        {
            Assert.Equal(1, await PagesAsync(address, paper));
        }
    }

    private async Task<int> PagesAsync(string address, string paper)
    {
        IPage page = await chromium.PageAsync(_shop.Url);
        await page.SetContentAsync((await TextAsync(address)).Replace("size: auto", "size: " + paper, StringComparison.Ordinal));
        byte[] pdf = await page.PdfAsync(new PagePdfOptions { PreferCSSPageSize = true });
        return System.Text.RegularExpressions.Regex.Count(System.Text.Encoding.Latin1.GetString(pdf), @"/Type\s*/Page\b");
    }

    private Task<string> TextAsync(string address) => _http.GetStringAsync(new Uri(_shop.Url, address));
}
