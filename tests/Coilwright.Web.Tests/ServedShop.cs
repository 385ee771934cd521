using Coilwright.Application.Composition;
using Coilwright.Storage;
using Coilwright.Storage.Records;
using Coilwright.Workshop;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Coilwright.Web.Tests;

/// <summary>An empty shop served from this process on a free port of this computer, and a client that follows no redirect.</summary>
internal sealed class ServedShop : IAsyncDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("coilwright-served-").FullName;
    private ShopRecords _records = null!;
    private WebApplication _app = null!;
    private TimeProvider _time = TimeProvider.System;

    private ServedShop() { }

    private static readonly SocketsHttpHandler s_handler = new() { AllowAutoRedirect = false, UseCookies = false };

    public ShopServices Services { get; private set; } = null!;
    public HttpClient Client { get; private set; } = null!;
    public Uri Url => Client.BaseAddress!;
    public string File => Path.Combine(_folder, "shop.db");

    public static async Task<ServedShop> StartAsync(TimeProvider? clock = null, params string[] hosts)
    {
        ServedShop shop = new();
        shop._time = clock ?? TimeProvider.System;
        shop._records = await ShopFile.CreateAsync(shop.File, "Lantern Quay workshop", shop._time);
        await shop.ServeAsync(hosts);
        return shop;
    }

    private async Task ServeAsync(string[] hosts)
    {
        _app = WebHost.Build(["http://127.0.0.1:0"], _records, _time, new() { Hosts = hosts });
        Services = _app.Services.GetRequiredService<ShopServices>();
        await _app.StartAsync();
        Client = new HttpClient(s_handler, disposeHandler: false) { BaseAddress = new Uri(_app.Urls.Single()) };
    }

    /// <summary>Stops the server, and serves the same file anew, at another port.</summary>
    public async Task RestartAsync()
    {
        Client.Dispose();
        await _app.DisposeAsync();
        await _records.DisposeAsync();
        _records = await ShopFile.OpenAsync(File);
        await ServeAsync([]);
    }

    /// <summary>A part of the program that serves it.</summary>
    public T Use<T>()
        where T : notnull => _app.Services.GetRequiredService<T>();

    /// <summary>A browser of its own, with the key of a session; with none it is signed in nowhere.</summary>
    public HttpClient Browser(string? key = null)
    {
        HttpClient browser = new(s_handler, disposeHandler: false) { BaseAddress = Url };
        if (key is not null)
        {
            browser.DefaultRequestHeaders.Add("Cookie", "coilwright-session=" + key);
        }

        return browser;
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await _app.DisposeAsync();
        await _records.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }
}
