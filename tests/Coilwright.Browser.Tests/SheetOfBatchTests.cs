using Coilwright.Browser.Tests.Ground;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Browser.Tests;

/// <summary>What is printed for a batch is what its winder's page says.</summary>
public sealed class SheetOfBatchTests : IAsyncLifetime
{
    private const string Tested = """{ "format": "coilwright.machine/1", "name": "Winder 2", "kind": "hand-guided", "counter": { "turns": 100.6, "counted": 100 } }""";

    private readonly HttpClient _http = new();
    private HostedShop _shop = null!;

    public async ValueTask InitializeAsync()
    {
        _shop = await HostedShop.StartAsync();
        Assert.Empty(await _shop.Services.Machines.KeepAsync(Guid.NewGuid(), Tested, "Mara", CancellationToken.None));
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
        string page = await TextAsync($"/batches/{batch}/wind"), sheet = await TextAsync($"/batches/{batch}/setup"), own = await TextAsync($"/recipes/{revision.RecipeId}/setup?revision=1");
        string chosen = await TextAsync($"/recipes/{revision.RecipeId}/setup?revision=1&machine=Winder%202");

        Assert.Contains(">7,952</p>", page, StringComparison.Ordinal);
        Assert.All(["<p class=\"stop\">7,952</p>", "H-12", "4, H-001 to H-004", "Winder 2", "0117", $"href=\"/batches/{batch}/wind\""], wanted => Assert.Contains(wanted, sheet, StringComparison.Ordinal));
        Assert.All(["For no winder", "<h2>Real turns</h2>", "machine=Winder%202"], wanted => Assert.Contains(wanted, own, StringComparison.Ordinal));
        Assert.Contains("<p class=\"stop\">7,952</p>", chosen, StringComparison.Ordinal);
        foreach (string from in (string[])[$"/batches/{batch}", $"/batches/{batch}/wind", $"/batches/{batch}/enter"])
        {
            Assert.Contains($"href=\"/batches/{batch}/setup", await TextAsync(from), StringComparison.Ordinal);
        }
    }

    private Task<string> TextAsync(string address) => _http.GetStringAsync(new Uri(_shop.Url, address));
}
