using Coilwright.Storage.Records;
using Coilwright.Storage.Tests.Postgres;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Storage.Tests;

/// <summary>A shop in a folder of its own that goes away with the test.</summary>
internal sealed class TempShop : IAsyncDisposable
{
    public static readonly DateTimeOffset Noon = new(2026, 3, 2, 12, 0, 0, TimeSpan.Zero);

    private readonly string _folder = Directory.CreateTempSubdirectory("coilwright-storage-").FullName;

    public string PathOfShop => PathOf("shop.db");

    /// <summary>Its file, or where it is on a server.</summary>
    public string Connection { get; private set; } = "";

    public ShopRecords Shop { get; private set; } = null!;

    public static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static async Task<TempShop> StartAsync()
    {
        TempShop temp = new();
        temp.Connection = temp.PathOfShop;
        temp.Shop = await ShopFile.CreateAsync(temp.PathOfShop, "Lantern Quay workshop", cancel: Cancel);
        return temp;
    }

    /// <summary>The same on a server, in a database of its own.</summary>
    public static async Task<TempShop> OnServerAsync()
    {
        TempShop temp = new() { Connection = await PostgresServer.Current.NewDatabaseAsync() };
        temp.Shop = await ShopConnection.CreateAsync(temp.Connection, "Lantern Quay workshop", cancel: Cancel);
        return temp;
    }

    public string PathOf(string name) => Path.Combine(_folder, name);

    public async Task ReopenAsync()
    {
        await Shop.DisposeAsync();
        Shop = await ShopConnection.OpenAsync(Connection, Cancel);
    }

    public static RevisionRecord Revision(
        Guid recipe,
        int number,
        RevisionState state = RevisionState.Draft,
        string json = "{ \"turns\": 8000 }"
    ) => new(recipe, "Harbour bridge", number, json, state, number > 1 ? "hotter" : "", "Joss", Noon);

    /// <summary>A released recipe and a batch begun on it.</summary>
    public async Task<BatchRecord> BatchAsync(string name = "H-12")
    {
        RevisionRecord revision = Revision(Guid.NewGuid(), 1, RevisionState.Released);
        Assert.True(await Shop.Recipes.SaveRevisionAsync(revision, 0, Cancel));
        BatchRecord batch = new(Guid.NewGuid(), name, revision.RecipeId, 1, "main", 24, "C-", "0117", "Winder 2", "Mara", Noon);
        await Shop.Batches.AddAsync(batch, Cancel);
        return batch;
    }

    public static ReadingRecord Reading(BatchRecord batch, string tag = "C-001", string typed = "6.30 k", double? ohm = 6300) =>
        new()
        {
            Id = Guid.NewGuid(),
            BatchId = batch.Id,
            Tag = tag,
            Quantity = "dcResistance",
            Typed = typed,
            Unit = "kΩ",
            Si = ohm,
            TemperatureC = 23.5,
            Turns = 8000,
            Instrument = "bench meter",
            Person = "Mara",
            TimeUtc = Noon.AddTicks(1),
        };

    public async ValueTask DisposeAsync()
    {
        if (Shop is not null)
        {
            await Shop.DisposeAsync();
        }

        Directory.Delete(_folder, recursive: true);
    }
}
