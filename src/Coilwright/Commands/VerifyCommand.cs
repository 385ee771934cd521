using System.CommandLine;
using Coilwright.Application.Backups;
using Coilwright.Application.Shops;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Backups;

namespace Coilwright.Commands;

/// <summary>coilwright verify: whether the shop's file can be trusted. Exit 1 when it cannot.</summary>
internal static class VerifyCommand
{
    public static Command Build(CommandContext desk)
    {
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("verify", "Says whether the shop's file can be trusted; changes nothing") { shop };
        command.SetAction(
            async (parsed, cancel) =>
            {
                ShopCheck check = await CheckAsync(desk, parsed.GetValue(shop) ?? OpenShop.UsualPath, cancel).ConfigureAwait(false);
                BackupFormatter.Write(desk.Output, check, desk.Time.LocalTimeZone);
                return check.IsSound ? ExitCode.Done : ExitCode.AnswerIsNo;
            }
        );
        return command;
    }

    private static async Task<ShopCheck> CheckAsync(CommandContext desk, string path, CancellationToken cancel)
    {
        try
        {
            return await desk.Use<VerifyShop>().CheckAsync(path, cancel).ConfigureAwait(false);
        }
        catch (ShopRefusedException refused)
        {
            throw WrongInputException.About("--shop", refused.Message);
        }
    }
}
