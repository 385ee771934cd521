using BenchmarkDotNet.Attributes;
using Coilwright.Storage;
using Coilwright.Storage.Records;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Stock;
using Coilwright.Workshop.Tracing;
using Microsoft.Data.Sqlite;

namespace Coilwright.Benchmarks;

/// <summary>One spool traced over 200,000 pieces of two coils, against reading every coil of every piece once, in the same run.</summary>
[SimpleJob(launchCount: 1, warmupCount: 1, iterationCount: 5, invocationCount: 1)]
public class TraceBenchmarks
{
    private const int Pieces = 200_000,
        CoilsOfASpool = 100;

    private string _folder = "";
    private ShopRecords _shop = null!;
    private TraceService _desk = null!;

    [GlobalSetup]
    public async Task Setup()
    {
        _folder = Directory.CreateTempSubdirectory("coilwright-bench-").FullName;
        string path = Path.Combine(_folder, "shop.db");
        _shop = await ShopFile.CreateAsync(path, "Bench");
        RecipeService book = new(_shop.Recipes, TimeProvider.System);
        Guid recipe = Guid.NewGuid();
        using StreamReader reader = new(typeof(Cli).Assembly.GetManifestResourceStream("demo/recipes/breakwater-twin.json")!);
        await book.SaveAsync(recipe, await reader.ReadToEndAsync(), "", "bench", 0, CancellationToken.None);
        await book.ReleaseAsync(recipe, 1, "bench", CancellationToken.None);
        for (int spool = 0; spool < 2 * Pieces / CoilsOfASpool; spool++)
        {
            await _shop.Stock.AddSpoolAsync(
                new SpoolRecord
                {
                    Id = Guid.NewGuid(),
                    Label = $"S{spool}",
                    Gauge = "AWG 42",
                    Insulation = "plain-enamel",
                    Build = "single",
                    TimeUtc = TimeProvider.System.GetUtcNow(),
                },
                CancellationToken.None
            );
        }

        Fill(path, recipe);
        _desk = new TraceService(_shop, new PieceService(_shop, TimeProvider.System), new BatchDossiers(_shop, TimeProvider.System));
    }

    [GlobalCleanup]
    public async Task Cleanup()
    {
        await _shop.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>Every coil of every piece read once.</summary>
    [Benchmark(Baseline = true)]
    public long EveryPart()
    {
        using SqliteConnection connection = new($"Data Source={Path.Combine(_folder, "shop.db")};Mode=ReadOnly");
        connection.Open();
        using SqliteCommand command = new("SELECT COUNT(*) FROM PieceParts WHERE Tag || Lot = 'none'", connection);
        return (long)command.ExecuteScalar()!;
    }

    /// <summary>The spool's pieces with the state of each.</summary>
    [Benchmark]
    public async Task<int> TraceSpool()
    {
        IReadOnlyList<TraceHit> hits = await _desk.FindAsync("S2345", CancellationToken.None);
        return hits.Single().Pieces.Count == CoilsOfASpool / 2
            ? CoilsOfASpool / 2
            : throw new InvalidOperationException("The spool's pieces are not all there.");
    }

    /// <summary>Rows straight into the file, in one transaction: the benchmark is about reading.</summary>
    private static void Fill(string path, Guid recipe)
    {
        using SqliteConnection connection = new($"Data Source={path}");
        connection.Open();
        using SqliteTransaction alone = connection.BeginTransaction();
        string time = "2026-03-02T12:00:00.0000000Z";
        using SqliteCommand batch = Prepared(
            connection,
            "INSERT INTO Batches (Id, Name, RecipeId, RevisionNumber, CoilName, Quantity, TagPrefix, Spool, Machine, Person, BegunUtc) "
                + "VALUES ($id, $name, $recipe, 1, $coil, 100, 'C-', $spool, '', '', $time)",
            "$id",
            "$name",
            "$recipe",
            "$coil",
            "$spool",
            "$time"
        );
        using SqliteCommand reading = Prepared(
            connection,
            "INSERT INTO Readings (Id, BatchId, Tag, Quantity, Typed, Unit, Si, Instrument, Person, TimeUtc, Flag, Reason, Withdraws) "
                + "VALUES ($id, $batch, $tag, 'dcResistance', '3.9 k', 'kΩ', 3900, '', '', $time, '', '', 0)",
            "$id",
            "$batch",
            "$tag",
            "$time"
        );
        using SqliteCommand piece = Prepared(
            connection,
            "INSERT INTO Pieces (Id, Serial, RecipeId, RevisionNumber, Options, Overruled, Person, TimeUtc) VALUES ($id, $serial, "
                + "$recipe, 1, '', '', '', $time)",
            "$id",
            "$serial",
            "$recipe",
            "$time"
        );
        using SqliteCommand part = Prepared(
            connection,
            "INSERT INTO PieceParts (Id, PieceId, Kind, Place, BatchId, Tag, Lot, TimeUtc) VALUES ($id, $piece, 'Coil', $place, "
                + "$batch, $tag, '', $time)",
            "$id",
            "$piece",
            "$place",
            "$batch",
            "$tag",
            "$time"
        );
        using SqliteCommand happened = Prepared(
            connection,
            "INSERT INTO PieceEvents (Id, PieceId, Kind, Step, Words, Cost, Answer, Person, TimeUtc) VALUES ($id, $piece, 'Noted', '', "
                + "'packed', '', '', '', $time)",
            "$id",
            "$piece",
            "$time"
        );
        string[] batches = new string[2];
        for (int at = 0; at < Pieces; at++)
        {
            int place = at % (CoilsOfASpool / 2),
                spool = at / (CoilsOfASpool / 2);
            string id = NewId();
            if (place == 0)
            {
                for (int coil = 0; coil < 2; coil++)
                {
                    batches[coil] = NewId();
                    Run(
                        batch,
                        batches[coil],
                        $"B{spool}-{coil}",
                        recipe.ToString().ToUpperInvariant(),
                        coil == 0 ? "slug" : "screw",
                        $"S{spool}",
                        time
                    );
                }
            }

            Run(piece, id, $"P{at:000000}", recipe.ToString().ToUpperInvariant(), time);
            for (int coil = 0; coil < 2; coil++)
            {
                Run(reading, NewId(), batches[coil], $"C-{place + 1:000}", time);
                Run(part, NewId(), id, coil == 0 ? "slug" : "screw", batches[coil], $"C-{place + 1:000}", time);
            }

            Run(happened, NewId(), id, time);
        }

        alone.Commit();
    }

    private static string NewId() => Guid.NewGuid().ToString().ToUpperInvariant();

    private static SqliteCommand Prepared(SqliteConnection connection, string text, params string[] names)
    {
        SqliteCommand command = connection.CreateCommand();
#pragma warning disable CA2100 // constants of this file
        command.CommandText = text;
#pragma warning restore CA2100
        foreach (string name in names)
        {
            command.Parameters.Add(name, SqliteType.Text);
        }

        return command;
    }

    private static void Run(SqliteCommand command, params string[] values)
    {
        for (int at = 0; at < values.Length; at++)
        {
            command.Parameters[at].Value = values[at];
        }

        command.ExecuteNonQuery();
    }
}
