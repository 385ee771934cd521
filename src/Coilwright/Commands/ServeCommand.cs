using System.CommandLine;
using System.Net;
using System.Security.Cryptography.X509Certificates;
using Coilwright.Application.Backups;
using Coilwright.Application.Shops;
using Coilwright.Demo;
using Coilwright.Input;

namespace Coilwright.Commands;

/// <summary>coilwright serve: the pages of a shop, on this computer, and beyond it once the shop has accounts.</summary>
public static class ServeCommand
{
    public const int UsualPort = 5210;

    public static Command Build(CommandContext desk)
    {
        Option<string?> shop = ShopOptions.Shop();
        Option<int> port = new Option<int>("--port")
        {
            Description = "Port on this computer, 0 to take a free one",
            DefaultValueFactory = _ => UsualPort,
        }.AsCount();
        Option<string> listen = new("--listen")
        {
            Description = "Address of this computer to listen on",
            HelpName = "ADDRESS",
            DefaultValueFactory = _ => "127.0.0.1",
        };
        Option<string[]> host = new("--host")
        {
            Description = "A name besides localhost under which the pages answer; may be given several times",
            HelpName = "NAME",
            DefaultValueFactory = _ => [],
        };
        Option<string[]> backups = new("--backups")
        {
            Description = "Folder for the backup of each day, \"backups\" beside the shop's file unless said; may be given several times",
            HelpName = "FOLDER",
            DefaultValueFactory = _ => [],
        };
        Option<string?> certificate = new("--certificate")
        {
            Description = "A certificate of the shop's own for HTTPS, as PEM; one is made beside the shop's file unless said",
            HelpName = "FILE",
        };
        Option<string?> key = new("--certificate-key") { Description = "The certificate's key, as PEM", HelpName = "FILE" };
        Command command = new("serve", "Serves the shop's pages on this computer until stopped with Ctrl+C")
        {
            shop,
            listen,
            host,
            port,
            backups,
            certificate,
            key,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                Pages.CheckPort(parsed.GetValue(port));
                IPAddress address = Pages.ReadListen(parsed.GetRequiredValue(listen));
                IReadOnlyList<string> hosts = Pages.ReadHosts(parsed.GetRequiredValue(host));
                Pages.CheckReach(parsed.GetValue(shop) ?? OpenShop.UsualPath, address);
                await using OpenShop open = await OpenShop.OpenOrCreateAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                await Pages.CheckReachAsync(open, address, cancel).ConfigureAwait(false);
                IReadOnlyList<string> names = Pages.NamesOf(address, hosts);
                using X509Certificate2? https = ReadCertificate(
                    parsed.GetValue(certificate),
                    parsed.GetValue(key),
                    address,
                    names,
                    open,
                    desk
                );
                BackUpShop backUp = open.Use<BackUpShop>();
                if (backUp.Instead.Length > 0)
                {
                    await desk.Output.WriteLineAsync("No daily backup is made here. " + backUp.Instead).ConfigureAwait(false);
                }

                await using DemoServer demo = new(desk);
                ServingOptions options = new()
                {
                    Hosts = IPAddress.IsLoopback(address) ? hosts : names,
                    Certificate = https,
                    Demo = demo,
                    Backups = BackupPlan.Of(backUp.ShopPath, parsed.GetRequiredValue(backups), isDaily: backUp.Instead.Length == 0),
                };
                return await Pages.ServeAsync(open, new(address, parsed.GetValue(port)), options, desk, cancel).ConfigureAwait(false);
            }
        );
        return command;
    }

    /// <summary>The certificate that was named; beyond this computer one that is made; null on this computer alone.</summary>
    private static X509Certificate2? ReadCertificate(
        string? certificate,
        string? key,
        IPAddress listen,
        IReadOnlyList<string> names,
        OpenShop shop,
        CommandContext desk
    )
    {
        if (certificate is null != key is null)
        {
            throw WrongInputException.About(
                certificate is null ? "--certificate" : "--certificate-key",
                "a certificate and its key go together",
                "both --certificate and --certificate-key, or neither"
            );
        }

        DateTimeOffset now = desk.Time.GetUtcNow();
        if (certificate is not null && key is not null)
        {
            return ShopCertificate.Read(certificate, key, now);
        }

        if (IPAddress.IsLoopback(listen))
        {
            return null;
        }

        X509Certificate2 made = ShopCertificate.OfShop(BackupPlan.FileOf(shop.Use<BackUpShop>().ShopPath), names, now);
        desk.Output.WriteLine(
            "The browser asks once whether to trust this certificate of the shop's own. It is the right one if its SHA-256 is"
        );
        desk.Output.WriteLine("  " + ShopCertificate.Fingerprint(made));
        return made;
    }
}
