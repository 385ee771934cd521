using System.Net;
using Coilwright.Application.Shops;
using Coilwright.Commands;
using Coilwright.Input;

namespace Coilwright.Demo;

/// <summary>Makes the invented shop in a temporary file and serves it on a free port of this computer, until it is disposed.</summary>
internal sealed class DemoServer(CommandContext desk) : IDemoServer, IAsyncDisposable
{
    private readonly Lock _gate = new();
    private readonly CancellationTokenSource _stop = new();
    private DemoSteps _steps = new();
    private Task? _made;
    private DirectoryInfo? _folder;
    private OpenShop? _shop;
    private Pages.Served? _pages;

    public DemoProgress Progress
    {
        get
        {
            lock (_gate)
            {
                return _made switch
                {
                    null => DemoProgress.NotBegun,
                    { IsCompletedSuccessfully: true } => new("", 1, _pages?.Address, ""),
                    { IsCompleted: true } failed => new("", 0, null, failed.Exception?.InnerException?.Message ?? "it was stopped"),
                    _ => _steps.Progress,
                };
            }
        }
    }

    public void Begin()
    {
        lock (_gate)
        {
            if (_made is null or { IsCompleted: true, IsCompletedSuccessfully: false })
            {
                _steps = new DemoSteps();
                _made = Task.Run(MakeAsync);
            }
        }
    }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync().ConfigureAwait(false);
        if (_made is not null)
        {
            await _made.ContinueWith(_ => { }, TaskScheduler.Default).ConfigureAwait(false);
        }

        await TidyAsync().ConfigureAwait(false);
        await _steps.DisposeAsync().ConfigureAwait(false);
        _stop.Dispose();
    }

    private async Task MakeAsync()
    {
        try
        {
            _folder = Directory.CreateTempSubdirectory("coilwright-demo-");
            string file = Path.Combine(_folder.FullName, "demo.db");
            await DemoShop.MakeAsync(file, desk.Time.GetUtcNow(), _steps, _stop.Token).ConfigureAwait(false);
            _shop = await OpenShop.OpenAsync(file, desk, _stop.Token).ConfigureAwait(false);
            _pages = await Pages.StartAsync(_shop, new(IPAddress.Loopback, 0), new ServingOptions(), desk).ConfigureAwait(false);
        }
        catch
        {
            await TidyAsync().ConfigureAwait(false);
            throw;
        }
    }

    private async Task TidyAsync()
    {
        if (_pages is not null)
        {
            await _pages.DisposeAsync().ConfigureAwait(false);
        }

        if (_shop is not null)
        {
            await _shop.DisposeAsync().ConfigureAwait(false);
        }

        _folder?.Delete(recursive: true);
        (_pages, _shop, _folder) = (null, null, null);
    }
}
