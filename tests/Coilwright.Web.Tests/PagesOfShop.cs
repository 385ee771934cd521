using Coilwright.Application.Composition;
using Coilwright.Storage;
using Coilwright.Storage.Records;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Coilwright.Web.Tests;

/// <summary>The pages of a shop on a file of its own, served from this process.</summary>
internal sealed class PagesOfShop : IAsyncDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("coilwright-pages-").FullName;
    private WebApplication _app = null!;

    private PagesOfShop() { }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public ShopRecords Records { get; private set; } = null!;
    public ShopServices Services { get; private set; } = null!;
    public HttpClient Client { get; } = new();

    public static async Task<PagesOfShop> StartAsync()
    {
        PagesOfShop shop = new();
        shop.Records = await ShopFile.CreateAsync(
            Path.Combine(shop._folder, "shop.db"),
            "Lantern Quay workshop",
            TimeProvider.System,
            Cancel
        );
        shop._app = WebHost.Build(["http://127.0.0.1:0"], shop.Records, TimeProvider.System);
        shop.Services = shop._app.Services.GetRequiredService<ShopServices>();
        await shop._app.StartAsync(Cancel);
        shop.Client.BaseAddress = new Uri(shop._app.Urls.Single());
        return shop;
    }

    /// <summary>A released recipe, saved with its checks.</summary>
    public async Task<RevisionRecord> ReleasedAsync(string json)
    {
        Guid id = Guid.NewGuid();
        Assert.Empty((await Services.Recipes.SaveAsync(id, json, "", "Joss", 0, Cancel)).Problems);
        RecipeOutcome released = await Services.Recipes.ReleaseAsync(id, 1, "Joss", Cancel);
        Assert.Empty(released.Problems);
        return released.Revision!;
    }

    /// <summary>A batch of a revision's first coil, written past the checks.</summary>
    public async Task<BatchRecord> PlantedAsync(RevisionRecord revision, string name, string coil)
    {
        BatchRecord batch = new(
            Guid.NewGuid(),
            name,
            revision.RecipeId,
            revision.Number,
            coil,
            4,
            "C-",
            "0117",
            "",
            "Mara",
            TimeProvider.System.GetUtcNow()
        );
        await Records.Batches.AddAsync(batch, Cancel);
        return batch;
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await _app.DisposeAsync();
        await Records.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }
}
