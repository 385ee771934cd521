using System.Globalization;
using System.Net;
using Coilwright.Application.Backups;
using Coilwright.Input;
using Coilwright.Web;
using Coilwright.Workshop.Entry;
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

    /// <summary>The address to listen on; one that the network can reach is refused.</summary>
    public static IPAddress ReadListen(string typed)
    {
        if (string.Equals(typed, "localhost", StringComparison.OrdinalIgnoreCase))
        {
            return IPAddress.Loopback;
        }

        const string Allowed = "127.0.0.1, another 127.x.x.x, or ::1";
        if (!IPAddress.TryParse(typed, out IPAddress? address))
        {
            throw WrongInputException.About("--listen", $"{typed} is no address", Allowed);
        }

        return IPAddress.IsLoopback(address)
            ? address
            : throw WrongInputException.About(
                "--listen",
                $"{typed} can be reached over the network, and this shop has no users yet: anybody there could read and change it",
                Allowed
            );
    }

    /// <summary>Names under which the pages answer besides this computer's own.</summary>
    public static IReadOnlyList<string> ReadHosts(IReadOnlyList<string> typed)
    {
        Problem[] wrong =
        [
            .. typed
                .Where(name => Uri.CheckHostName(name) == UriHostNameType.Unknown)
                .Select(name => new Problem(
                    "--host",
                    $"\"{name}\" is no computer's name",
                    null,
                    "a name alone, without http:// and port, for example winding-room.local"
                )),
        ];
        return wrong.Length == 0 ? [.. typed.Select(name => name.TrimEnd('.'))] : throw new WrongInputException("", wrong);
    }

    public static async Task<int> ServeAsync(
        OpenShop shop,
        IPAddress listen,
        int port,
        IReadOnlyList<string> hosts,
        CommandContext desk,
        CancellationToken cancel,
        BackupPlan? backups = null
    )
    {
        await using WebApplication app = WebHost.Build(
            [$"{Uri.UriSchemeHttp}://{new IPEndPoint(listen, port)}"],
            shop.Records,
            desk.Time,
            hosts,
            backups
        );
        try
        {
            await app.StartAsync(CancellationToken.None).ConfigureAwait(false);
        }
        catch (IOException)
        {
            throw WrongInputException.About(
                "--port",
                string.Create(CultureInfo.InvariantCulture, $"{port} is taken by another program"),
                "a free port, or 0 to take any"
            );
        }

        await desk.Output.WriteLineAsync($"The pages are at {app.Urls.First()} (stop with Ctrl+C)").ConfigureAwait(false);
        await desk.Output.FlushAsync(cancel).ConfigureAwait(false);
        try
        {
            await app.WaitForShutdownAsync(cancel).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
            return ExitCode.Done; // stopping is how serving ends
        }

        return ExitCode.Done;
    }
}
