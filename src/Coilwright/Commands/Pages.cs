using System.Globalization;
using Coilwright.Input;
using Coilwright.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Hosting;

namespace Coilwright.Commands;

/// <summary>Serves pages until the person stops it.</summary>
internal static class Pages
{
    /// <summary>Refuses what is no port; asked before a shop is opened or made.</summary>
    public static void CheckPort(int port)
    {
        if (port is < 0 or > 65535)
        {
            throw WrongInputException.About("--port", string.Create(CultureInfo.InvariantCulture, $"{port} is no port"), "0 to 65535");
        }
    }

    public static async Task<int> ServeAsync(OpenShop shop, int port, Desk desk, CancellationToken cancel)
    {
        await using WebApplication app = WebHost.Build([string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}")], shop.Services);
        try
        {
            await app.StartAsync(cancel).ConfigureAwait(false);
        }
        catch (IOException)
        {
            throw WrongInputException.About("--port", string.Create(CultureInfo.InvariantCulture, $"{port} is taken by another program"), "a free port, or 0 to take any");
        }

        await desk.Output.WriteLineAsync($"The pages are at {app.Urls.First()} (stop with Ctrl+C)").ConfigureAwait(false);
        await desk.Output.FlushAsync(cancel).ConfigureAwait(false);
        await app.WaitForShutdownAsync(cancel).ConfigureAwait(false);
        return ExitCode.Done;
    }
}
