using System.CommandLine;
using Coilwright.Analysis.Pairing;
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
            DefaultValueFactory = _ => "dcResistance",
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
                string[] families = Families(rows, path);
                IReadOnlyList<PairingPreference> wishes = options.Wishes(parsed.GetValue(offset), families, units);
                RefuseTooMany(rows, families, wishes);
                PairingAnswer answer = CoilPairing.Best(
                    [.. rows.Select(row => new PairingCoil(row.Tag, row.Family, [.. quantities.Select(row.Value)]))],
                    wishes
                );
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

    private static string[] Families(IReadOnlyList<CoilRow> rows, string path)
    {
        string[] families = [.. rows.Select(row => row.Family).Distinct(StringComparer.Ordinal)];
        return families.Length <= 2
            ? families
            : throw new WrongInputException(
                path,
                [
                    new Workshop.Entry.Problem(
                        "family",
                        "coils of more than two families cannot be paired in one table",
                        string.Join(", ", families),
                        "one family, paired freely, or two, one of each"
                    ),
                ]
            );
    }

    private static void RefuseTooMany(IReadOnlyList<CoilRow> rows, string[] families, IReadOnlyList<PairingPreference> wishes)
    {
        int most = families.Length == 2 ? CoilPairing.MostInTwoFamilies : CoilPairing.MostSearchedFreely;
        bool searched = families.Length == 2 || wishes.Count > 1 || wishes[0].HasOffset;
        if (searched && rows.Count > most)
        {
            throw WrongInputException.About("COILS", $"{rows.Count} coils are too many for one search", $"up to {most}");
        }
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
