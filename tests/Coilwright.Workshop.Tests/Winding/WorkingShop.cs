using Coilwright.Storage;
using Coilwright.Storage.Records;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Stock;

namespace Coilwright.Workshop.Tests.Winding;

/// <summary>A shop on a file of its own, with a clock that is set by hand.</summary>
internal sealed class WorkingShop : IAsyncDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("coilwright-workshop-").FullName;

    private WorkingShop() { }

    public static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public HandSetClock Clock { get; } = new();

    public ShopRecords Records { get; private set; } = null!;

    public RecipeService Book { get; private set; } = null!;

    public WindingService Room { get; private set; } = null!;

    public MachineService Machines { get; private set; } = null!;

    public StockService Stock { get; private set; } = null!;

    public BatchEventService Run { get; private set; } = null!;

    public static async Task<WorkingShop> StartAsync()
    {
        WorkingShop shop = new();
        shop.Records = await ShopFile.CreateAsync(Path.Combine(shop._folder, "shop.db"), "Lantern Quay workshop", shop.Clock, Cancel);
        shop.Book = new RecipeService(shop.Records.Recipes, shop.Clock);
        shop.Hire();
        return shop;
    }

    /// <summary>Closes the file and opens it again, as after a power cut.</summary>
    public async Task ReopenAsync()
    {
        await Records.DisposeAsync();
        Records = await ShopFile.OpenAsync(Path.Combine(_folder, "shop.db"), Cancel);
        Hire();
    }

    private void Hire()
    {
        Room = new WindingService(Records, Clock);
        Machines = new MachineService(Records.Machines, Clock);
        Stock = new StockService(Records, Clock, Room.Dossiers);
        Run = new BatchEventService(Records, Room, Machines, Clock);
    }

    /// <summary>An invented recipe: 6.18 kΩ ± 4 % and 2.4 H ± 6 % at 1 kHz, unless turns say otherwise.</summary>
    public static string Harbour(
        int turns = 8000,
        string name = "Harbour bridge",
        string targets =
            """{ "dcResistance": { "nominal": "6.18 kΩ", "tolerance": "4 %" }, "inductance": { "nominal": "2.4 """
            + """H", "tolerance": "6 %", "at": "1 kHz" } }"""
    ) =>
        $$"""
            {
              "format": "coilwright.recipe/1",
              "name": "{{name}}",
              "coils": [ {
                "name": "main",
                "bobbin": { "coreLength": "61 mm", "coreWidth": "6.2 mm", "windingHeight": "11 mm", "maxBuild": "4.3 mm" },
                "wire": { "gauge": "AWG 42", "insulation": "plain-enamel", "build": "single" },
                "winding": { "turns": {{turns}}, "direction": "counter-clockwise", "lay": "scattered", "pitch": "0.19 mm",
                  "tension": "14 gf", "speed": "1200 rpm" },
                "poles": [ { "shape": "rod", "material": "alnico-5", "diameter": "4.75 mm", "length": "17 mm", "count": 6,
                  "spacing": "10.4 mm", "top": "9 mm", "magnetised": "north-up" } ]
              } ],
              "targets": {{targets}}
            }
            """;

    /// <summary>Saves and releases a recipe, as many revisions as wanted; returns the newest.</summary>
    public async Task<RevisionRecord> ReleasedAsync(string? json = null, int revisions = 1)
    {
        Guid id = Guid.NewGuid();
        RevisionRecord? newest = null;
        for (int number = 1; number <= revisions; number++)
        {
            string text = (json ?? Harbour()) + new string(' ', revisions - number);
            RecipeOutcome saved = await Book.SaveAsync(id, text, number == 1 ? "" : "spacing of the text", "Joss", number - 1, Cancel);
            Assert.Empty(saved.Problems);
            newest = (await Book.ReleaseAsync(id, number, "Joss", Cancel)).Revision;
        }

        return newest!;
    }

    public async Task<BatchRecord> BatchAsync(RevisionRecord? revision = null, int quantity = 24)
    {
        revision ??= await ReleasedAsync();
        BatchRecord batch = new(
            Guid.NewGuid(),
            "H-12",
            revision.RecipeId,
            revision.Number,
            "main",
            quantity,
            "C-",
            "0117",
            "Winder 2",
            "Mara",
            Clock.GetUtcNow()
        );
        await Records.Batches.AddAsync(batch, Cancel); // its winder and spool need not be on record, as in an old shop
        return batch;
    }

    /// <summary>Takes a spool in when there is none of that label.</summary>
    public async Task EnsureSpoolAsync(string label)
    {
        if ((await Records.Stock.SpoolsAsync(Cancel)).All(spool => spool.Label != label))
        {
            SpoolRecord spool = new()
            {
                Id = Guid.NewGuid(),
                Label = label,
                Gauge = "AWG 42",
                Insulation = "plain-enamel",
                Build = "single",
                TimeUtc = Clock.GetUtcNow(),
            };
            Assert.Empty(await Stock.TakeInAsync(spool, "", "", Cancel));
        }
    }

    /// <summary>An entry for a coil; temperature 20 °C unless said.</summary>
    public static CoilEntry Entry(BatchRecord batch, string tag, string resistance, string temperature = "20 °C") =>
        new()
        {
            Id = Guid.NewGuid(),
            BatchId = batch.Id,
            Tag = tag,
            Resistance = resistance,
            Temperature = temperature,
            Person = "Mara",
        };

    /// <summary>Records an entry that must be accepted.</summary>
    public async Task<CoilDossier> KeptAsync(CoilEntry entry)
    {
        CoilEntryOutcome outcome = await Room.RecordCoilAsync(entry, Cancel);
        Assert.Empty(outcome.Problems);
        Clock.Advance(TimeSpan.FromSeconds(30));
        return outcome.Coil!;
    }

    public async Task<BatchStatus> StatusAsync(BatchRecord batch) => (await Room.StatusAsync(batch.Id, Cancel))!;

    public async Task<IReadOnlyList<ReadingRecord>> ReadingsAsync(BatchRecord batch) =>
        await Records.Readings.OfBatchAsync(batch.Id, Cancel);

    /// <summary>Runs a statement on the file itself, past the program.</summary>
    public async Task ExecuteAsync(string statement)
    {
        await using Microsoft.Data.Sqlite.SqliteConnection connection = new(
            $"Data Source={Path.Combine(_folder, "shop.db")};Foreign Keys=True"
        );
        await connection.OpenAsync(Cancel);
        await using Microsoft.Data.Sqlite.SqliteCommand command = connection.CreateCommand();
#pragma warning disable CA2100 // constants of the tests
        command.CommandText = statement;
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync(Cancel);
    }

    /// <summary>True when a text stands anywhere in the shop's files, its log included.</summary>
    public async Task<bool> FileHoldsAsync(string text)
    {
        byte[] sought = System.Text.Encoding.UTF8.GetBytes(text);
        foreach (string path in Directory.GetFiles(_folder))
        {
            await using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            using MemoryStream copy = new();
            await file.CopyToAsync(copy, Cancel);
            if (copy.ToArray().AsSpan().IndexOf(sought) >= 0)
            {
                return true;
            }
        }

        return false;
    }

    public async ValueTask DisposeAsync()
    {
        await Records.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>A clock that moves when told to.</summary>
    internal sealed class HandSetClock : TimeProvider
    {
        private DateTimeOffset _now = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => _now;

        public void Advance(TimeSpan time) => _now += time;
    }
}
