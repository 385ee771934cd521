using System.Globalization;
using Coilwright.Application.Shops;

namespace Coilwright.Application.Tests;

/// <summary>The demo's shop in a file of its own; gone with it.</summary>
internal sealed class DemoShop : IAsyncDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("coilwright-application-");

    private DemoShop() { }

    public string File => Path.Combine(_folder.FullName, "shop.db");

    public OpenedShop Opened { get; private set; } = null!;

    public static string Root { get; } = FindRoot(AppContext.BaseDirectory);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static async Task<DemoShop> MakeAsync()
    {
        DemoShop shop = new();
        (int exit, _, string error) = await RunAsync("demo", "--no-serve", "--shop", shop.File);
        Assert.True(exit == 0, error);
        shop.Opened = await OpenedShop.OpenAsync(shop.File, TimeProvider.System, Cancel);
        return shop;
    }

    /// <summary>Writes a file beside the shop and tells its path.</summary>
    public string Write(string name, string text)
    {
        string path = Path.Combine(_folder.FullName, name);
        System.IO.File.WriteAllText(path, text);
        return path;
    }

    /// <summary>Runs a command in this process.</summary>
    public static async Task<(int Exit, string Output, string Error)> RunAsync(params string[] words)
    {
        using StringWriter output = new(CultureInfo.InvariantCulture),
            error = new(CultureInfo.InvariantCulture);
        int exit = await Cli.RunAsync(words, output, error, cancel: Cancel);
        return (exit, output.ToString(), error.ToString());
    }

    public async ValueTask DisposeAsync()
    {
        await Opened.DisposeAsync();
        _folder.Delete(recursive: true);
    }

    private static string FindRoot(string start)
    {
        string? folder = start;
        while (folder is not null && !System.IO.File.Exists(Path.Combine(folder, "Coilwright.slnx")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return folder ?? throw new DirectoryNotFoundException("Coilwright.slnx stands nowhere above " + start);
    }
}
