using System.CommandLine;
using Coilwright.Application.Backups;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Backups;

namespace Coilwright.Commands;

/// <summary>coilwright backup: a copy of the shop as it is now, read back, while it is served or not.</summary>
internal static class BackupCommand
{
    /// <summary>More would fill any disk before anybody counts them.</summary>
    private const int MostKept = 10_000;

    public static Command Build(CommandContext desk)
    {
        Option<string?> to = new("--to") { Description = "Folder; \"backups\" beside the shop's file unless said", HelpName = "FOLDER" },
            shop = ShopOptions.Shop();
        Option<int> keep = new Option<int>("--keep")
        {
            Description = "How many of the newest backups of this shop stay in the folder, 1 to 10,000",
            DefaultValueFactory = _ => BackupRules.UsualKeep,
        }.AsCount();
        Command command = new("backup", "Writes a backup of the shop, reads it back, and removes the oldest") { to, keep, shop };
        command.SetAction(
            async (parsed, cancel) =>
            {
                int stay = parsed.GetValue(keep);
                if (stay is < 1 or > MostKept)
                {
                    throw WrongInputException.About("--keep", FormattableString.Invariant($"{stay} backups cannot be kept"), "1 to 10,000");
                }

                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                BackUpShop backUp = open.Use<BackUpShop>();
                string folder = parsed.GetValue(to) ?? BackupPlan.UsualFolder(backUp.ShopPath);
                BackupOutcome outcome = await Guarded.RunAsync("--to", () => backUp.TakeAsync(folder, stay, cancel)).ConfigureAwait(false);
                BackupFormatter.Write(desk.Output, outcome);
                if (outcome.Complaint.Length > 0)
                {
                    await desk.Error.WriteLineAsync("coilwright: " + outcome.Complaint).ConfigureAwait(false);
                }

                return ExitCode.Done;
            }
        );
        return command;
    }
}
