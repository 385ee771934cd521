using System.CommandLine;
using Coilwright.Analysis.Lots;
using Coilwright.Application.Lots;
using Coilwright.Formats.Lots;
using Coilwright.Input;
using Coilwright.Output;

namespace Coilwright.Commands;

/// <summary>coilwright lots DEMAND: what to order when.</summary>
public static class LotsCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> demand = new("DEMAND") { Description = "Use and costs (coilwright.demand/1); - reads standard input" };
        Option<bool> json = new("--json") { Description = "Write coilwright.lots/1" };
        Command command = new("lots", "What to order when: economic lot, price breaks, needs by period, one purchase, reorder point")
        {
            demand,
            json,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                string path = parsed.GetRequiredValue(demand);
                Demand asked = DemandReader.Read(await InputFile.ReadAsync(path, cancel).ConfigureAwait(false)).OrRefuse(path);
                LotAnswer answer = desk.Use<ChooseLots>().Choose(asked);
                if (parsed.GetValue(json))
                {
                    await desk.Output.WriteLineAsync(LotsJson.Write(answer)).ConfigureAwait(false);
                }
                else
                {
                    LotFormatter.Write(desk.Output, asked, answer);
                }

                return ExitCode.Done;
            }
        );
        return command;
    }
}
