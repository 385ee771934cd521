using System.CommandLine;
using System.Globalization;
using Coilwright.Analysis.Sampling;
using Coilwright.Input;

namespace Coilwright.Commands;

/// <summary>
/// coilwright sample LOT: how many pieces of a lot to look at where a customer asks for acceptance sampling, and when to accept it.
/// </summary>
public static class SampleCommand
{
    private const int MostPieces = 1_000_000;

    public static Command Build(CommandContext desk)
    {
        Argument<int> lot = new Argument<int>("LOT") { Description = "Pieces in the lot, 2 to 1,000,000" }.AsCount();
        Option<double> aql = new Option<double>("--aql")
        {
            Description = "Acceptable quality level, % defective, one of the tables'",
            DefaultValueFactory = _ => 1,
        }.AsNumber();
        Option<string> level = new("--level") { Description = "Inspection level", DefaultValueFactory = _ => "II" },
            how = new("--inspection") { Description = "normal, tightened or reduced", DefaultValueFactory = _ => "normal" };
        how.AcceptOnlyFromAmong("normal", "tightened", "reduced");
        Option<bool> variables = new("--variables")
        {
            Description = "Measure instead of counting: mean and spread against the limits, level II",
        };
        Command command = new("sample", "Acceptance sampling: how many pieces of a lot to look at, and when to accept it")
        {
            lot,
            aql,
            level,
            how,
            variables,
        };
        command.SetAction(parsed =>
        {
            (int pieces, double percent, string word) = (
                parsed.GetRequiredValue(lot),
                parsed.GetValue(aql),
                parsed.GetRequiredValue(level)
            );
            Inspection inspection = parsed.GetRequiredValue(how) switch
            {
                "tightened" => Inspection.Tightened,
                "reduced" => Inspection.Reduced,
                _ => Inspection.Normal,
            };
            bool measured = parsed.GetValue(variables);
            Check(pieces, percent, word, measured);
            if (measured)
            {
                TabulatedVariablesPlan plan = SamplingTables.Variables(pieces, percent, inspection);
                desk.Output.WriteLine(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"Measure {Math.Min(plan.Size, pieces)} of {pieces:#,##0} pieces. Accept when the part estimated beyond the "
                            + $"limits is at most {100 * plan.LargestBeyond:0.00} %; for one limit: when it lies at least "
                            + $"{plan.K:0.000} spreads from the mean."
                    )
                );
            }
            else
            {
                WriteCount(desk.Output, SamplingTables.Attribute(pieces, word, percent, inspection), pieces, percent);
            }

            desk.Output.WriteLine(
                $"Tables: {(measured ? "MIL-STD-414, level II" : "MIL-STD-105E")}, as read in an open statistics package; what a "
                    + $"customer agreed on goes before."
            );
            return ExitCode.Done;
        });
        return command;
    }

    private static void WriteCount(TextWriter output, AttributePlan plan, int pieces, double percent)
    {
        SampleStage stage = plan.Stages[0];
        bool all = stage.Size >= pieces;
        output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Look at {(all ? $"every one of the {pieces:#,##0}" : $"{stage.Size} of {pieces:#,##0}")} pieces. Accept with "
                    + $"{stage.Accept} defective or fewer, refuse with {stage.Reject} or more."
            )
        );
        output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"A lot with {percent:0.###} % defective is accepted {100 * plan.AcceptProbability(percent / 100):0.0} times in 100; "
                    + $"one with {100 * plan.DefectiveAt(0.10):0.0} % defective 10 times."
            )
        );
    }

    private static void Check(int pieces, double percent, string word, bool measured)
    {
        OptionReader typed = new();
        IReadOnlyList<double> levels = measured ? SamplingTables.VariablesLevels : SamplingTables.AttributeLevels;
        if (pieces is < 2 or > MostPieces)
        {
            typed.Add("LOT", "so many pieces are no lot", pieces.ToString(CultureInfo.InvariantCulture), "2 to 1,000,000");
        }

        if (!levels.Any(one => Math.Abs(one - percent) < 1e-9))
        {
            typed.Add(
                "--aql",
                "no level of the tables",
                percent.ToString(CultureInfo.InvariantCulture),
                string.Join(", ", levels.Select(one => one.ToString(CultureInfo.InvariantCulture)))
            );
        }

        if (!measured && !SamplingTables.InspectionLevels.Contains(word))
        {
            typed.Add("--level", "no level of the tables", word, string.Join(", ", SamplingTables.InspectionLevels));
        }

        typed.RefuseIfWrong();
    }
}
