namespace Coilwright.Benchmarks;

/// <summary>The demo shop, made and served by the real commands on a free port of this computer.</summary>
internal sealed class BenchmarkShop : IAsyncDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly StringWriter _served = new();
    private TextWriter _told = TextWriter.Null;
    private Task _serving = Task.CompletedTask;
    private string _folder = "";

    /// <summary>Asks it.</summary>
    public HttpClient Client { get; } = new();

    public async Task StartAsync()
    {
        _folder = Directory.CreateTempSubdirectory("coilwright-bench-").FullName;
        string shop = Path.Combine(_folder, "demo.db");
        await using StringWriter error = new();
        if (await Cli.RunAsync(["demo", "--no-serve", "--shop", shop], TextWriter.Null, error) != 0)
        {
            throw new InvalidOperationException(error.ToString());
        }

        _told = TextWriter.Synchronized(_served);
        _serving = Cli.RunAsync(["serve", "--shop", shop, "--port", "0"], _told, TextWriter.Null, cancel: _stop.Token);
        while (!_served.ToString().Contains("(stop with", StringComparison.Ordinal))
        {
            await Task.Delay(50);
        }

        string line = _served.ToString();
        int start = line.IndexOf("http", StringComparison.Ordinal);
        Client.BaseAddress = new Uri(line[start..line.IndexOf(" (stop", StringComparison.Ordinal)]);
    }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        await _serving;
        Directory.Delete(_folder, recursive: true);
        _stop.Dispose();
        Client.Dispose();
        await _told.DisposeAsync();
        await _served.DisposeAsync();
    }
}
