using System.Diagnostics;
using Coilwright.Storage;
using Coilwright.Storage.Records;
using Coilwright.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Coilwright.Browser.Tests.Ground;

/// <summary>
/// The demo's shop, full of work: made once by the real command and served from this process to all tests that change nothing in it.
/// </summary>
public sealed class DemoShop : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("coilwright-demo-").FullName;
    private ShopRecords _records = null!;
    private WebApplication _app = null!;
    private readonly Lock _gate = new();
    private Task<IReadOnlyList<string>>? _pages;

    public Uri Url { get; private set; } = null!;

    /// <summary>Patterns of all addresses that answer to being opened.</summary>
    public IReadOnlyList<RoutePatternOf> Patterns =>
        [
            .. _app
                .Services.GetRequiredService<EndpointDataSource>()
                .Endpoints.OfType<RouteEndpoint>()
                .Where(one => one.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods.Contains("GET") == true)
                .Select(one => new RoutePatternOf(one.RoutePattern)),
        ];

    /// <summary>One address of every kind of page; looked for once for all tests.</summary>
    public Task<IReadOnlyList<string>> PagesAsync()
    {
        lock (_gate)
        {
            return _pages ??= EveryPage.OfAsync(Url, Patterns);
        }
    }

    public async ValueTask InitializeAsync()
    {
        string file = Path.Combine(_folder, "demo.db");
        ProcessStartInfo start = new("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (
            string argument in (string[])[Path.Combine(AppContext.BaseDirectory, "coilwright.dll"), "demo", "--no-serve", "--shop", file]
        )
        {
            start.ArgumentList.Add(argument);
        }

        using (Process made = Process.Start(start)!)
        {
            Task<string> said = made.StandardOutput.ReadToEndAsync(),
                error = made.StandardError.ReadToEndAsync();
            await made.WaitForExitAsync();
            Assert.True(made.ExitCode == 0, await said + await error);
        }

        _records = await ShopFile.OpenAsync(file);
        _app = WebHost.Build(["http://127.0.0.1:0"], _records, TimeProvider.System);
        await _app.StartAsync();
        Url = new Uri(_app.Urls.Single());
    }

    public async ValueTask DisposeAsync()
    {
        await _app.DisposeAsync();
        await _records.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }
}
