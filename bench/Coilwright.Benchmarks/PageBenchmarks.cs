using BenchmarkDotNet.Attributes;

namespace Coilwright.Benchmarks;

/// <summary>The first page of the demo shop over loopback, against the bare health answer of the same server in the same run.</summary>
[SimpleJob(launchCount: 1, warmupCount: 4, iterationCount: 12)]
public class PageBenchmarks
{
    private readonly CancellationTokenSource _stop = new();
    private readonly HttpClient _client = new();
    private readonly StringWriter _served = new();
    private Task _serving = Task.CompletedTask;
    private string _folder = "";

    [GlobalSetup]
    public async Task Setup()
    {
        _folder = Directory.CreateTempSubdirectory("coilwright-bench-").FullName;
        string shop = Path.Combine(_folder, "demo.db");
        await using StringWriter error = new();
        if (await Cli.RunAsync(["demo", "--no-serve", "--shop", shop], TextWriter.Null, error) != 0)
        {
            throw new InvalidOperationException(error.ToString());
        }

        _serving = Cli.RunAsync(
            ["serve", "--shop", shop, "--port", "0"],
            TextWriter.Synchronized(_served),
            TextWriter.Null,
            cancel: _stop.Token
        );
        while (!_served.ToString().Contains("(stop with", StringComparison.Ordinal))
        {
            await Task.Delay(50);
        }

        string line = _served.ToString();
        int start = line.IndexOf("http", StringComparison.Ordinal);
        _client.BaseAddress = new Uri(line[start..line.IndexOf(" (stop", StringComparison.Ordinal)]);
    }

    [GlobalCleanup]
    public async Task Cleanup()
    {
        await _stop.CancelAsync();
        await _serving;
        Directory.Delete(_folder, recursive: true);
        _stop.Dispose();
        _client.Dispose();
        await _served.DisposeAsync();
    }

    [Benchmark(Baseline = true)]
    public Task<string> Health() => _client.GetStringAsync(new Uri("/api/health", UriKind.Relative));

    [Benchmark]
    public Task<string> FirstPage() => _client.GetStringAsync(new Uri("/", UriKind.Relative));
}
