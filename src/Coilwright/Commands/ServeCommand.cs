using System.CommandLine;
using System.Net;
using Coilwright.Application.Backups;
using Coilwright.Application.Shops;
using Coilwright.Demo;
using Coilwright.Input;

namespace Coilwright.Commands;

/// <summary>coilwright serve: the pages of a shop, on this computer only.</summary>
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
        Command command = new("serve", "Serves the shop's pages on this computer until stopped with Ctrl+C")
        {
            shop,
            listen,
            host,
            port,
            backups,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                Pages.CheckPort(parsed.GetValue(port));
                IPAddress address = Pages.ReadListen(parsed.GetRequiredValue(listen));
                IReadOnlyList<string> hosts = Pages.ReadHosts(parsed.GetRequiredValue(host));
                await using OpenShop open = await OpenShop.OpenOrCreateAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                await using DemoServer demo = new(desk);
                ServingOptions options = new()
                {
                    Hosts = hosts,
                    Demo = demo,
                    Backups = BackupPlan.Of(open.Use<BackUpShop>().ShopPath, parsed.GetRequiredValue(backups), isDaily: true),
                };
                return await Pages.ServeAsync(open, new(address, parsed.GetValue(port)), options, desk, cancel).ConfigureAwait(false);
            }
        );
        return command;
    }
}
