using System.CommandLine;
using Coilwright.Formats.Records;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Commands;

/// <summary>
/// coilwright trace NAME: from a serial, batch, coil, spool, winder, lot, basket, ink, customer or recipe, or a part of its name, to every
/// piece. Exit 1 when nothing has that name.
/// </summary>
public static class TraceCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> name = new("NAME")
        {
            Description = "A serial, batch, coil (batch/tag), spool, winder, lot, basket, ink, customer or recipe, or a part of its name",
        };
        Option<bool> json = ShopOptions.Json();
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("trace", "Every piece that holds of something, with its state") { name, json, shop };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                string asked = parsed.GetRequiredValue(name);
                SearchAnswer answer = await open.Services.Pieces.Search.FindAsync(asked, cancel).ConfigureAwait(false);
                if (parsed.GetValue(json))
                {
                    await desk.Output.WriteLineAsync(TraceJson.Write(answer)).ConfigureAwait(false);
                }
                else
                {
                    await PieceFormatter.WriteTraceAsync(desk.Output, answer, open, cancel).ConfigureAwait(false);
                }

                return answer.Hits.Count > 0 ? ExitCode.Done : ExitCode.AnswerIsNo;
            }
        );
        return command;
    }
}
