using BenchmarkDotNet.Attributes;

namespace Coilwright.Benchmarks;

/// <summary>The first page of the demo shop over loopback, against the bare health answer of the same server in the same run.</summary>
[SimpleJob(launchCount: 1, warmupCount: 4, iterationCount: 12)]
public class PageBenchmarks
{
    private readonly BenchmarkShop _shop = new();

    [GlobalSetup]
    public Task Setup() => _shop.StartAsync();

    [GlobalCleanup]
    public async Task Cleanup() => await _shop.DisposeAsync();

    [Benchmark(Baseline = true)]
    public Task<string> Health() => _shop.Client.GetStringAsync(new Uri("/api/health", UriKind.Relative));

    [Benchmark]
    public Task<string> FirstPage() => _shop.Client.GetStringAsync(new Uri("/", UriKind.Relative));
}
