using System.CommandLine;
using Coilwright.Application.Backups;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Backups;

namespace Coilwright.Commands;

/// <summary>
/// coilwright restore FILE --to SHOPFILE: a shop from a backup. Never over another file: with --put-aside that gets a dated name first.
/// Exit 1 when a dry run finds that it would be refused.
/// </summary>
internal static class RestoreCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> file = new("FILE") { Description = "The backup" };
        Option<string> to = new("--to")
        {
            Description = "The shop's file to be",
            HelpName = "SHOPFILE",
            Required = true,
        };
        Option<bool> dryRun = new("--dry-run") { Description = "Says what it would do and does nothing" },
            putAside = new("--put-aside") { Description = "Gives the file that stands there another, dated name first" };
        Command command = new("restore", "Makes a shop's file from a backup") { file, to, dryRun, putAside };
        command.SetAction(
            async (parsed, cancel) =>
            {
                if (Directory.Exists(parsed.GetRequiredValue(to)))
                {
                    throw WrongInputException.About("--to", $"{parsed.GetRequiredValue(to)} is a folder", "the shop's file to be");
                }

                RestoreShop restore = desk.Use<RestoreShop>();
                RestorePlan plan = await Guarded
                    .RunAsync("FILE", () => restore.PlanAsync(parsed.GetRequiredValue(file), parsed.GetRequiredValue(to), cancel))
                    .ConfigureAwait(false);
                bool refused = plan.IsTaken && !parsed.GetValue(putAside);
                BackupFormatter.Write(desk.Output, plan, desk.Time.LocalTimeZone);
                if (parsed.GetValue(dryRun))
                {
                    BackupFormatter.WriteWouldDo(desk.Output, plan, refused);
                    return refused ? ExitCode.AnswerIsNo : ExitCode.Done;
                }

                if (refused)
                {
                    throw WrongInputException.About(
                        "--to",
                        $"{plan.Target} exists, and nothing is ever written over a file",
                        "a file that does not exist yet, or --put-aside to give the one there another name first"
                    );
                }

                IReadOnlyList<string> aside = await Guarded.RunAsync("--to", () => restore.RunAsync(plan, cancel)).ConfigureAwait(false);
                BackupFormatter.WriteDone(desk.Output, plan, aside);
                return ExitCode.Done;
            }
        );
        return command;
    }
}
