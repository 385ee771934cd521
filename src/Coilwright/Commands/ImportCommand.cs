using System.CommandLine;
using Coilwright.Application.Exports;
using Coilwright.Application.Shops;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Exports;

namespace Coilwright.Commands;

/// <summary>
/// coilwright import FOLDER: an export into a shop that is new or empty. coilwright import FILE.csv: old notes of coils into a batch.
/// </summary>
internal static class ImportCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> from = new("FROM")
        {
            Description = "A folder that coilwright export wrote, or a table of old notes of coils (CSV)",
        };
        Option<bool> dryRun = new("--dry-run") { Description = "Reads and checks, says what it would do, and does nothing" };
        EntryOptions entry = new();
        ImportNotesOptions notes = new();
        Command command = new("import", "Fills a new or empty shop with an export, or brings old notes of coils into a batch")
        {
            from,
            dryRun,
        };
        entry.AddTo(command);
        notes.AddTo(command);
        command.SetAction(
            (parsed, cancel) =>
                File.Exists(parsed.GetRequiredValue(from))
                    ? notes.RunAsync(desk, parsed, entry, parsed.GetRequiredValue(from), parsed.GetValue(dryRun), cancel)
                    : FolderAsync(desk, parsed.GetRequiredValue(from), entry.Shop(parsed), parsed.GetValue(dryRun), cancel)
        );
        return command;
    }

    private static async Task<int> FolderAsync(CommandContext desk, string folder, string shop, bool dryRun, CancellationToken cancel)
    {
        if (!Directory.Exists(folder))
        {
            throw WrongInputException.About(
                "FROM",
                $"there is no folder or file {folder}",
                "a folder that coilwright export wrote, or a table of old notes"
            );
        }

        try
        {
            ImportOutcome outcome = await Progress
                .ShowCountAsync(
                    desk,
                    "Reading records, then working out batches:",
                    count => desk.Use<ImportShop>().RunAsync(folder, shop, dryRun, count, cancel),
                    cancel
                )
                .ConfigureAwait(false);
            ExportFormatter.Write(desk.Output, outcome, shop, dryRun);
            return outcome.Problems.Count == 0 ? ExitCode.Done : throw new WrongInputException(folder, outcome.Problems);
        }
        catch (ExportException refused)
        {
            throw WrongInputException.About("--shop", refused.Message);
        }
        catch (ShopRefusedException refused)
        {
            throw WrongInputException.About("--shop", refused.Message);
        }
    }
}
