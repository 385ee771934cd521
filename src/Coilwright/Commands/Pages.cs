using System.Globalization;
using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using Coilwright.Application.Shops;
using Coilwright.Input;
using Coilwright.Web;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.People;
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

    /// <summary>The address to listen on.</summary>
    /// <exception cref="WrongInputException">It is no address.</exception>
    public static IPAddress ReadListen(string typed)
    {
        if (string.Equals(typed, "localhost", StringComparison.OrdinalIgnoreCase))
        {
            return IPAddress.Loopback;
        }

        return IPAddress.TryParse(typed, out IPAddress? address)
            ? address
            : throw WrongInputException.About(
                "--listen",
                $"{typed} is no address",
                "127.0.0.1, ::1, or an address of this computer in the shop's network; 0.0.0.0 for all of them"
            );
    }

    /// <summary>Refuses to serve a shop beyond this computer before it has an owner who lets others in.</summary>
    /// <exception cref="WrongInputException">The network can reach the address, and the shop has no accounts.</exception>
    public static async Task CheckReachAsync(OpenShop shop, IPAddress address, CancellationToken cancel)
    {
        if (!IPAddress.IsLoopback(address) && !await shop.Use<SignInService>().IsNeededAsync(cancel).ConfigureAwait(false))
        {
            throw NoAccounts(address);
        }
    }

    /// <summary>A shop that is not there yet is made for this computer alone: it has no accounts.</summary>
    /// <exception cref="WrongInputException">The network can reach the address, and there is no such shop.</exception>
    public static void CheckReach(string shop, IPAddress address)
    {
        if (!IPAddress.IsLoopback(address) && !File.Exists(shop))
        {
            throw NoAccounts(address);
        }
    }

    private static WrongInputException NoAccounts(IPAddress address) =>
        WrongInputException.About(
            "--listen",
            $"{address} can be reached over the network, and this shop has no accounts: anybody there could read and change it",
            "make an owner first, with coilwright user add NAME --role owner, or under Shop, People; or 127.0.0.1 or ::1"
        );

    /// <summary>Every name and address under which a server that listens there is reached.</summary>
    public static IReadOnlyList<string> NamesOf(IPAddress listen, IReadOnlyList<string> hosts)
    {
        bool isAny = listen.Equals(IPAddress.Any) || listen.Equals(IPAddress.IPv6Any);
        IEnumerable<string> own = isAny
            ? NetworkInterface
                .GetAllNetworkInterfaces()
                .SelectMany(one => one.GetIPProperties().UnicastAddresses)
                .Where(one => !one.Address.IsIPv6LinkLocal)
                .Select(one => one.Address.ToString())
            : [listen.ToString()];
        return [.. hosts.Concat(own).Append("localhost").Distinct(StringComparer.OrdinalIgnoreCase)];
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

    /// <summary>Serves a shop's pages.</summary>
    /// <param name="shop">The shop.</param>
    /// <param name="listen">Address and port of this computer; port 0 takes a free one.</param>
    /// <param name="options">What serving is told beside the shop.</param>
    /// <param name="desk">Where it is told.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="WrongInputException">The port is taken.</exception>
    public static async Task<int> ServeAsync(
        OpenShop shop,
        IPEndPoint listen,
        ServingOptions options,
        CommandContext desk,
        CancellationToken cancel
    )
    {
        await using Served served = await StartAsync(shop, listen, options, desk).ConfigureAwait(false);
        await desk.Output.WriteLineAsync($"The pages are at {served.Text} (stop with Ctrl+C)").ConfigureAwait(false);
        await desk.Output.FlushAsync(cancel).ConfigureAwait(false);
        try
        {
            await served.WaitAsync(cancel).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
            return ExitCode.Done; // stopping is how serving ends
        }

        return ExitCode.Done;
    }

    /// <summary>Begins to serve a shop's pages; whoever asked for it ends it.</summary>
    /// <param name="shop">The shop.</param>
    /// <param name="listen">Address and port of this computer; port 0 takes a free one.</param>
    /// <param name="options">What serving is told beside the shop.</param>
    /// <param name="desk">Whose clock it is.</param>
    /// <exception cref="WrongInputException">The port is taken.</exception>
    public static async Task<Served> StartAsync(OpenShop shop, IPEndPoint listen, ServingOptions options, CommandContext desk)
    {
        string scheme = options.Certificate is null ? Uri.UriSchemeHttp : Uri.UriSchemeHttps;
        WebApplication app = WebHost.Build([$"{scheme}://{listen}"], shop.Records, desk.Time, options);
        try
        {
            await app.StartAsync(CancellationToken.None).ConfigureAwait(false);
            return new Served(app);
        }
        catch (Exception refused)
            when (refused
                    is SocketException { SocketErrorCode: SocketError.AddressNotAvailable }
                        or IOException
                        {
                            InnerException.InnerException: SocketException { SocketErrorCode: SocketError.AddressNotAvailable }
                        }
            )
        {
            await app.DisposeAsync().ConfigureAwait(false);
            throw WrongInputException.About("--listen", $"{listen.Address} is no address of this computer", "one of its own, or 0.0.0.0");
        }
        catch (IOException)
        {
            await app.DisposeAsync().ConfigureAwait(false);
            throw WrongInputException.About(
                "--port",
                string.Create(CultureInfo.InvariantCulture, $"{listen.Port} is taken by another program"),
                "a free port, or 0 to take any"
            );
        }
    }

    /// <summary>Pages that are served until this is disposed.</summary>
    public sealed class Served(WebApplication app) : IAsyncDisposable
    {
        /// <summary>Where they are, as told to a person.</summary>
        public string Text => app.Urls.First();

        /// <summary>Where they are.</summary>
        public Uri Address => new(Text);

        /// <summary>Waits until serving ends.</summary>
        public Task WaitAsync(CancellationToken cancel) => app.WaitForShutdownAsync(cancel);

        public ValueTask DisposeAsync() => app.DisposeAsync();
    }
}
