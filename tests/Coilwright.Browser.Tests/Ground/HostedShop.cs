using Coilwright.Application.Composition;
using Coilwright.Storage;
using Coilwright.Storage.Records;
using Coilwright.Web;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Coilwright.Browser.Tests.Ground;

/// <summary>The pages served from this process, on a clock that the test moves.</summary>
internal sealed class HostedShop : IAsyncDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("coilwright-hosted-").FullName;
    private ShopRecords _records = null!;
    private WebApplication _app = null!;

    private HostedShop() { }

    public MovedClock Clock { get; } = new();
    public ShopServices Services { get; private set; } = null!;
    public Uri Url { get; private set; } = null!;

    public static async Task<HostedShop> StartAsync()
    {
        HostedShop shop = new();
        shop._records = await ShopFile.CreateAsync(Path.Combine(shop._folder, "shop.db"), "Lantern Quay workshop", shop.Clock);
        shop._app = WebHost.Build(["http://127.0.0.1:0"], shop._records, shop.Clock);
        shop.Services = shop._app.Services.GetRequiredService<ShopServices>();
        await shop._app.StartAsync();
        shop.Url = new Uri(shop._app.Urls.Single());
        return shop;
    }

    /// <summary>A released demo recipe.</summary>
    public async Task<RevisionRecord> ReleasedAsync(string file)
    {
        Guid id = Guid.NewGuid();
        Assert.Empty(
            (
                await Services.Recipes.SaveAsync(id, await File.ReadAllTextAsync(Demo.Recipe(file)), "", "Joss", 0, CancellationToken.None)
            ).Problems
        );
        return (await Services.Recipes.ReleaseAsync(id, 1, "Joss", CancellationToken.None)).Revision!;
    }

    /// <summary>A batch of one of its coils.</summary>
    public async Task<Guid> BatchAsync(RevisionRecord revision, string name, string coil, string prefix)
    {
        BatchRecord batch = new(
            Guid.NewGuid(),
            name,
            revision.RecipeId,
            revision.Number,
            coil,
            4,
            prefix,
            "0117",
            "Winder 2",
            "Mara",
            Clock.GetUtcNow()
        );
        await Services.Records.Batches.AddAsync(batch, CancellationToken.None);
        // its limits are forecast once, here and not in the first page
        Assert.NotNull(await Services.Winding.StatusAsync(batch.Id, CancellationToken.None));
        return batch.Id;
    }

    /// <summary>A released two-coil recipe, its coils wound, and pieces of them, done with their magnets where asked for.</summary>
    public async Task<IReadOnlyList<string>> PiecesAsync(int count, bool magnets = true)
    {
        RevisionRecord revision = await ReleasedAsync("breakwater-twin.json");
        Assert.Empty(await Services.Winding.SetRoomTemperatureAsync("20 °C", "Mara", CancellationToken.None));
        foreach ((string name, string coil, string prefix) in new[] { ("B-7", "slug", "BS-"), ("B-8", "screw", "BC-") })
        {
            Guid batch = await BatchAsync(revision, name, coil, prefix);
            for (int at = 1; at <= count; at++)
            {
                Assert.Empty(
                    (
                        await Services.Winding.RecordCoilAsync(
                            new()
                            {
                                Id = Guid.NewGuid(),
                                BatchId = batch,
                                Tag = $"{prefix}{at:000}",
                                Resistance = "3.93 k",
                            },
                            CancellationToken.None
                        )
                    ).Problems
                );
            }
        }

        List<string> serials = [];
        for (int at = 1; at <= count; at++)
        {
            serials.Add((
                    await Services.Pieces.Assembly.MakeAsync(
                        new()
                        {
                            Id = Guid.NewGuid(),
                            Coils = [$"B-7/{at}", $"B-8/{at}"],
                            MagnetLot = "M-5",
                        },
                        CancellationToken.None
                    )
                ).Piece!.Serial);
        }

        Assert.Empty(
            magnets ? await Services.Pieces.Steps.BeginAsync(Guid.NewGuid(), "magnets", serials, "", "Ines", CancellationToken.None) : []
        );
        return serials;
    }

    public async ValueTask DisposeAsync()
    {
        await _app.DisposeAsync();
        await _records.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>A clock that stands until it is moved.</summary>
    internal sealed class MovedClock : TimeProvider
    {
        private DateTimeOffset _now = new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => _now;

        public void Advance(TimeSpan by) => _now += by;
    }
}
