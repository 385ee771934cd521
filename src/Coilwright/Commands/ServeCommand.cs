using System.CommandLine;
using Coilwright.Input;

namespace Coilwright.Commands;

/// <summary>coilwright serve: the pages of a shop, on this computer only.</summary>
public static class ServeCommand
{
    public const int UsualPort = 5210;

    public static Command Build(Desk desk)
    {
        Option<string?> shop = ShopOptions.Shop();
        Option<int> port = new("--port") { Description = "Port on this computer, 0 to take a free one", DefaultValueFactory = _ => UsualPort };
        Command command = new("serve", "Serves the shop's pages on this computer until stopped with Ctrl+C") { shop, port };
        command.SetAction(async (parsed, cancel) =>
        {
            Pages.CheckPort(parsed.GetValue(port));
            await using OpenShop open = await OpenShop.OpenOrCreateAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
            return await Pages.ServeAsync(open, parsed.GetValue(port), desk, cancel).ConfigureAwait(false);
        });
        return command;
    }
}
