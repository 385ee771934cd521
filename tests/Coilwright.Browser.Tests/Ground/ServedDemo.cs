using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace Coilwright.Browser.Tests.Ground;

/// <summary>The demo's shop, made once and served for all tests of a class that change nothing in it.</summary>
public sealed class ServedDemo : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("coilwright-demo-").FullName;
    private Process? _process;

    public Uri Url { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        int port = FreePort();
        Url = new Uri($"http://127.0.0.1:{port}");
        ProcessStartInfo start = new("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        string program = Path.Combine(AppContext.BaseDirectory, "coilwright.dll");
        foreach (string argument in (string[])[program, "demo", "--shop", Path.Combine(_folder, "demo.db"), "--port", $"{port}"])
        {
            start.ArgumentList.Add(argument);
        }

        _process = Process.Start(start)!;
        TaskCompletionSource served = new(TaskCreationOptions.RunContinuationsAsynchronously);
        _process.OutputDataReceived += (_, line) =>
        {
            if (line.Data is null || line.Data.Contains(Url.Authority, StringComparison.Ordinal))
            {
                served.TrySetResult(); // it serves, or it ended and the first page says so
            }
        };
        _process.ErrorDataReceived += (_, _) => { };
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
        await served.Task.WaitAsync(TimeSpan.FromMinutes(3));
    }

    public async ValueTask DisposeAsync()
    {
        _process!.Kill();
        await _process.WaitForExitAsync();
        _process.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
