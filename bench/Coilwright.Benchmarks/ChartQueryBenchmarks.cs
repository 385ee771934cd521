using BenchmarkDotNet.Attributes;
using Coilwright.Storage;
using Coilwright.Storage.Records;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Microsoft.Data.Sqlite;

namespace Coilwright.Benchmarks;

/// <summary>
/// The last 10,000 coils of one recipe out of a million readings, against reading every row of the table in the same run.
/// </summary>
[MemoryDiagnoser]
[SimpleJob(launchCount: 1, warmupCount: 2, iterationCount: 8, invocationCount: 4)]
public class ChartQueryBenchmarks
{
    private const int Readings = 1_000_000,
        CoilsOfBatch = 2_000,
        Recipes = 5,
        Drawn = 10_000;
    private readonly List<Guid> _ofOneRecipe = [];
    private string _folder = "",
        _path = "";
    private ShopRecords _shop = null!;

    [GlobalSetup]
    public async Task Setup()
    {
        _folder = Directory.CreateTempSubdirectory("coilwright-bench-").FullName;
        _path = Path.Combine(_folder, "shop.db");
        _shop = await ShopFile.CreateAsync(_path, "Bench");
        Guid[] recipes = [.. Enumerable.Range(0, Recipes).Select(_ => Guid.NewGuid())];
        foreach (Guid recipe in recipes)
        {
            await _shop.Recipes.SaveRevisionAsync(
                new RevisionRecord(recipe, "R", 1, "{}", RevisionState.Released, "", "bench", TimeProvider.System.GetUtcNow()),
                0,
                CancellationToken.None
            );
        }

        List<Guid> batches = [];
        for (int n = 0; n < Readings / CoilsOfBatch / 2; n++) // each coil has its ohms and its inductance
        {
            Guid batch = Guid.NewGuid(),
                recipe = recipes[n % Recipes];
            await _shop.Batches.AddAsync(
                new BatchRecord(
                    batch,
                    $"B-{n}",
                    recipe,
                    1,
                    "main",
                    CoilsOfBatch,
                    "C-",
                    "",
                    "",
                    "bench",
                    TimeProvider.System.GetUtcNow().AddHours(n)
                ),
                CancellationToken.None
            );
            batches.Add(batch);
            if (n % Recipes == 0)
            {
                _ofOneRecipe.Add(batch);
            }
        }

        Fill(batches);
        await _shop.DisposeAsync();
        _shop = await ShopFile.OpenAsync(_path, CancellationToken.None);
    }

    [GlobalCleanup]
    public async Task Cleanup()
    {
        await _shop.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [Benchmark(Baseline = true)]
    public long EveryRow()
    {
        using SqliteConnection connection = new($"Data Source={_path};Mode=ReadOnly");
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = """SELECT "EntryOrder", "BatchId", "Quantity", "Tag", "Si", "TemperatureC" FROM "Readings" """;
        using SqliteDataReader reader = command.ExecuteReader();
        long rows = 0;
        while (reader.Read())
        {
            rows += reader.GetString(2).Length > 0 ? 1 : 0;
        }

        return rows;
    }

    [Benchmark]
    public async Task<int> LastTenThousand() => (await _shop.Readings.ForChartAsync(Query, CancellationToken.None)).Count;

    /// <summary>The same with all the charts, rules and capability.</summary>
    [Benchmark]
    public async Task<int> LastTenThousandWithCharts()
    {
        IReadOnlyList<ChartReading> readings = await _shop.Readings.ForChartAsync(Query, CancellationToken.None);
        return ControlChartBuilder
            .Build(
                new ChartSettings(),
                [.. readings.Select(reading => new ChartedCoil(reading.Tag, reading.Si))],
                new Band(6180, 6000, 6400, IsTarget: true)
            )!
            .Signals.Count;
    }

    private ChartQuery Query =>
        new()
        {
            Batches = _ofOneRecipe,
            Quantity = "dcResistance",
            Coils = Drawn,
        };

    /// <summary>Written past the store, a million rows one by one would take an hour of durable commits.</summary>
    private void Fill(List<Guid> batches)
    {
        using SqliteConnection connection = new($"Data Source={_path}");
        connection.Open();
        using SqliteTransaction alone = connection.BeginTransaction();
        using SqliteCommand command = connection.CreateCommand();
        command.Transaction = alone;
        command.CommandText = """
            INSERT INTO "Readings" (
              "Id", "BatchId", "Tag", "Quantity", "Typed", "Unit", "Si", "TemperatureC", "AtHz",
              "Turns", "Instrument", "Person", "TimeUtc", "Flag", "Supersedes", "Reason", "Withdraws"
            )
            VALUES ($id, $batch, $tag, $quantity, '6.21 k', 'kΩ', $si, 23.5, $hz, 8000, 'bench meter', 'Ada', $time, '', NULL, '', 0)
            """;
        SqliteParameter[] values =
        [
            .. new[] { "$id", "$batch", "$tag", "$quantity", "$si", "$hz", "$time" }.Select(name =>
                command.Parameters.AddWithValue(name, "")
            ),
        ];
        Random random = new(1);
        DateTimeOffset time = new(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);
        foreach (Guid batch in batches)
        {
            for (int reading = 0; reading < 2 * CoilsOfBatch; reading++)
            {
                bool ohms = reading % 2 == 0;
                time = time.AddSeconds(5);
                object[] row =
                [
                    Guid.NewGuid().ToString().ToUpperInvariant(),
                    batch.ToString().ToUpperInvariant(),
                    $"C-{reading / 2 + 1:0000}",
                    ohms ? "dcResistance" : "inductance",
                    ohms ? 6180 + 40 * (random.NextDouble() + random.NextDouble() - 1) : 2.45,
                    ohms ? DBNull.Value : 1000.0,
                    time.UtcDateTime.ToString("O"),
                ];
                for (int n = 0; n < row.Length; n++)
                {
                    values[n].Value = row[n];
                }

                command.ExecuteNonQuery();
            }
        }

        alone.Commit();
    }
}
