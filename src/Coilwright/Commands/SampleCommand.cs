using System.CommandLine;
using Coilwright.Analysis.Sampling;
using Coilwright.Application.Measuring;
using Coilwright.Input;
using Coilwright.Papers.Formatting;

namespace Coilwright.Commands;

/// <summary>
/// coilwright sample LOT: how many pieces of a lot to look at where a customer asks for acceptance sampling, and when to accept it.
/// </summary>
public static class SampleCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<int> lot = new Argument<int>("LOT") { Description = "Pieces in the lot, 2 to 1,000,000" }.AsCount();
        Option<double> aql = new Option<double>("--aql")
        {
            Description = "Acceptable quality level, % defective, one of the tables'",
            DefaultValueFactory = _ => SamplingQuestion.UsualAqlPercent,
        }.AsNumber();
        Option<string> level = new("--level") { Description = "Inspection level", DefaultValueFactory = _ => SamplingQuestion.UsualLevel },
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
            SamplingAnswer answer = desk.Use<PlanSampling>()
                .Plan(new SamplingQuestion(pieces, percent, word, inspection, measured))
                .OrRefuseOptions(field => field == "lot" ? "LOT" : "--" + field);
            foreach (string line in Lines(answer))
            {
                desk.Output.WriteLine(line);
            }

            return ExitCode.Done;
        });
        return command;
    }

    private static IEnumerable<string> Lines(SamplingAnswer answer)
    {
        if (answer.ByMeasuring is { } measured)
        {
            yield return SamplingFormatter.Measure(measured, answer.Asked.Lot);
        }

        if (answer.Counted is { } counted)
        {
            yield return SamplingFormatter.Count(counted, answer.Asked.Lot);
            yield return SamplingFormatter.Chances(counted, answer.Asked.AqlPercent);
        }

        yield return SamplingFormatter.Tables(answer.Asked.Measured);
    }
}
