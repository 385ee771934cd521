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

    private ServedShop() { }

    private static readonly SocketsHttpHandler s_handler = new() { AllowAutoRedirect = false, UseCookies = false };

    public ShopServices Services { get; private set; } = null!;
    public HttpClient Client { get; private set; } = null!;
    public Uri Url => Client.BaseAddress!;
    public string File => Path.Combine(_folder, "shop.db");

    public static async Task<ServedShop> StartAsync(TimeProvider? clock = null, params string[] hosts)
    {
        ServedShop shop = new();
        TimeProvider time = clock ?? TimeProvider.System;
        shop._records = await ShopFile.CreateAsync(shop.File, "Lantern Quay workshop", time);
        shop._app = WebHost.Build(["http://127.0.0.1:0"], shop._records, time, new() { Hosts = hosts });
        shop.Services = shop._app.Services.GetRequiredService<ShopServices>();
        await shop._app.StartAsync();
        shop.Client = new HttpClient(s_handler, disposeHandler: false) { BaseAddress = new Uri(shop._app.Urls.Single()) };
        return shop;
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
