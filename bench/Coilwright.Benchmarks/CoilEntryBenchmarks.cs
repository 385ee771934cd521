using BenchmarkDotNet.Attributes;
using Coilwright.Storage;
using Coilwright.Storage.Records;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Benchmarks;

/// <summary>Recording a coil, server side and durable, against one small write brought to the same disk in the same run.</summary>
[SimpleJob(launchCount: 1, warmupCount: 3, iterationCount: 10, invocationCount: 32)]
public class CoilEntryBenchmarks
{
    private readonly byte[] _bytes = new byte[4096];
    private string _folder = "";
    private ShopRecords _shop = null!;
    private WindingService _room = null!;
    private BatchRecord _batch = null!;
    private FileStream _file = null!;
    private int _coil;

    [GlobalSetup]
    public async Task Setup()
    {
        _folder = Directory.CreateTempSubdirectory("coilwright-bench-").FullName;
        _shop = await ShopFile.CreateAsync(Path.Combine(_folder, "shop.db"), "Bench");
        RecipeService book = new(_shop.Recipes, TimeProvider.System);
        Guid recipe = Guid.NewGuid();
        using StreamReader reader = new(typeof(Cli).Assembly.GetManifestResourceStream("demo/recipes/harbour-bridge.json")!);
        await book.SaveAsync(recipe, await reader.ReadToEndAsync(), "", "bench", 0, CancellationToken.None);
        await book.ReleaseAsync(recipe, 1, "bench", CancellationToken.None);
        _room = new WindingService(_shop, TimeProvider.System);
        _batch = new BatchRecord(Guid.NewGuid(), "B", recipe, 1, "main", 10_000, "C-", "", "", "bench", TimeProvider.System.GetUtcNow());
        if ((await _room.BeginBatchAsync(_batch, CancellationToken.None)).Count > 0)
        {
            throw new InvalidOperationException("The batch was refused.");
        }

        _file = new FileStream(Path.Combine(_folder, "raw"), FileMode.Create);
    }

    [GlobalCleanup]
    public async Task Cleanup()
    {
        await _file.DisposeAsync();
        await _shop.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [Benchmark(Baseline = true)]
    public void OneDurableWrite()
    {
        _file.Write(_bytes);
        _file.Flush(flushToDisk: true);
    }

    [Benchmark]
    public Task<CoilEntryOutcome> RecordCoil()
    {
        _coil++;
        return _room.RecordCoilAsync(
            new CoilEntry
            {
                Id = Guid.NewGuid(),
                BatchId = _batch.Id,
                Tag = BatchTags.Of(_batch, _coil),
                Resistance = "6.21 k",
                Temperature = "20 C",
            },
            CancellationToken.None
        );
    }
}
