using System.CommandLine;
using Coilwright.Analysis.Pairing;
using Coilwright.Analysis.Quantities;
using Coilwright.Application.Judging;
using Coilwright.Formats.Records;
using Coilwright.Formats.Tables;
using Coilwright.Input;
using Coilwright.Output;

namespace Coilwright.Commands;

/// <summary>coilwright pair COILS.csv: which coils go together. Exit 1 when no two do.</summary>
public static class PairCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> coils = new("COILS")
        {
            Description =
                "A table: tag,family,dcResistance [kΩ],turns,inductance [H]; one family is paired freely, two one of "
                + "each; - reads standard input",
        };
        Option<string> by = new("--by")
        {
            Description = "dcResistance, turns or inductance; a mix with commas, weighted if wanted: dcResistance=2,inductance=1",
            HelpName = "QUANTITY",
            DefaultValueFactory = _ => QuantityKey.DcResistance,
        };
        Option<string?> offset = new("--offset")
        {
            Description =
                "By how much the second family is meant to exceed the first: 150, \"50 Ω\", \"1 %\"; or the family named: screw=+150",
            HelpName = "OFFSET",
        };
        Option<bool> json = new("--json") { Description = "Write coilwright.pairing/1" };
        Command command = new("pair", "The best pairing of the coils at hand") { coils, by, offset, json };
        command.SetAction(
            async (parsed, cancel) =>
            {
                string path = parsed.GetRequiredValue(coils);
                PairingOptions options = PairingOptions.ReadBy(parsed.GetRequiredValue(by));
                string[] quantities = [.. options.By.Select(one => one.Quantity)];
                (Workshop.Entry.ReadOutcome<IReadOnlyList<CoilRow>> outcome, IReadOnlyDictionary<string, string> units) = CoilTable.Read(
                    await InputFile.ReadAsync(path, cancel).ConfigureAwait(false),
                    quantities
                );
                IReadOnlyList<CoilRow> rows = outcome.OrRefuse(path);
                PairCoils pair = desk.Use<PairCoils>();
                IReadOnlyList<string> families = pair.Families(rows).OrRefuse(path);
                IReadOnlyList<PairingPreference> wishes = options.Wishes(parsed.GetValue(offset), families, units);
                PairingAnswer answer = pair.Pair(rows, quantities, families, wishes).OrRefuse("");
                await WarnOfUnknownAsync(desk, rows, quantities).ConfigureAwait(false);
                if (parsed.GetValue(json))
                {
                    await desk.Output.WriteLineAsync(PairingJson.Write(rows, quantities, answer)).ConfigureAwait(false);
                }
                else
                {
                    PairingFormatter.Write(desk.Output, rows, quantities, answer);
                }

                return answer.Pairs.Count > 0 ? ExitCode.Done : ExitCode.AnswerIsNo;
            }
        );
        return command;
    }

    private static async Task WarnOfUnknownAsync(CommandContext desk, IReadOnlyList<CoilRow> rows, string[] quantities)
    {
        foreach (string quantity in quantities)
        {
            string[] tags = [.. rows.Where(row => !row.Values.ContainsKey(quantity)).Select(row => row.Tag)];
            if (tags.Length > 0)
            {
                await desk.Error.WriteLineAsync($"Not measured ({quantity}), so left: {string.Join(", ", tags)}").ConfigureAwait(false);
            }
        }
    }
}
