using System.CommandLine;
using Coilwright.Application.Backups;
using Coilwright.Application.Shops;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Backups;

namespace Coilwright.Commands;

/// <summary>
/// coilwright verify: whether the shop's file can be trusted. Exit 1 when it cannot. With --repair what follows from records is made again.
/// </summary>
internal static class VerifyCommand
{
    private const string What = "Comparing batches";

    public static Command Build(CommandContext desk)
    {
        Option<string?> shop = ShopOptions.Shop();
        Option<bool> repair = new("--repair")
        {
            Description = "Makes again what follows from records and is wrong (summaries of batches, the list of pieces in the shop)",
        };
        Command command = new("verify", "Says whether the shop's file can be trusted; changes nothing without --repair") { shop, repair };
        command.SetAction(
            async (parsed, cancel) =>
            {
                string path = parsed.GetValue(shop) ?? OpenShop.UsualPath;
                try
                {
                    VerifyShop verify = desk.Use<VerifyShop>();
                    ShopCheck check = await CheckAsync(desk, verify, path, cancel).ConfigureAwait(false);
                    if (parsed.GetValue(repair))
                    {
                        check = await RepairAsync(desk, verify, check, cancel).ConfigureAwait(false);
                    }

                    BackupFormatter.Write(desk.Output, check, desk.Time.LocalTimeZone);
                    return check.IsSound ? ExitCode.Done : ExitCode.AnswerIsNo;
                }
                catch (ShopRefusedException refused)
                {
                    throw WrongInputException.About("--shop", refused.Message);
                }
            }
        );
        return command;
    }

    private static Task<ShopCheck> CheckAsync(CommandContext desk, VerifyShop verify, string path, CancellationToken cancel) =>
        Progress.ShowCountAsync(desk, What, count => verify.CheckAsync(path, count, cancel), cancel);

    /// <summary>A damaged file is left alone: what follows from records that are damaged is damaged too.</summary>
    private static async Task<ShopCheck> RepairAsync(CommandContext desk, VerifyShop verify, ShopCheck check, CancellationToken cancel)
    {
        if (check.IsDamaged)
        {
            await desk
                .Output.WriteLineAsync("Nothing was repaired: the file itself is not sound, and records are never mended.")
                .ConfigureAwait(false);
            return check;
        }

        IReadOnlyList<string> done = await Progress
            .ShowCountAsync(desk, What, count => verify.RepairAsync(check.Path, count, cancel), cancel)
            .ConfigureAwait(false);
        foreach (string one in done.DefaultIfEmpty("nothing had to be made again"))
        {
            await desk.Output.WriteLineAsync("Repair: " + one).ConfigureAwait(false);
        }

        return await CheckAsync(desk, verify, check.Path, cancel).ConfigureAwait(false);
    }
}
