using System.CommandLine;
using Coilwright.Application.Exports;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Exports;

namespace Coilwright.Commands;

/// <summary>coilwright export FOLDER: everything the shop holds, as JSON and CSV.</summary>
internal static class ExportCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> folder = new("FOLDER") { Description = "A folder that is empty or not there yet" };
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("export", "Writes everything the shop holds as JSON and CSV, for other programs and for import")
        {
            folder,
            shop,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                ExportShop export = open.Use<ExportShop>();
                try
                {
                    ExportOutcome outcome = await Progress
                        .ShowCountAsync(
                            desk,
                            "Writing records",
                            count => export.RunAsync(parsed.GetRequiredValue(folder), count, cancel),
                            cancel
                        )
                        .ConfigureAwait(false);
                    ExportFormatter.Write(desk.Output, outcome);
                    return ExitCode.Done;
                }
                catch (ExportException refused)
                {
                    throw WrongInputException.About("FOLDER", refused.Message);
                }
            }
        );
        return command;
    }
}
