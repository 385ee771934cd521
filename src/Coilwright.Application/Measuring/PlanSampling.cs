using System.Globalization;
using Coilwright.Analysis.Sampling;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Measuring;

/// <summary>A person asks how many pieces of a lot to look at, and when to accept it.</summary>
public sealed class PlanSampling
{
    /// <summary>The plan, or every problem by its field: "lot", "aql", "level".</summary>
    public ReadOutcome<SamplingAnswer> Plan(SamplingQuestion asked)
    {
        Problem[] problems = [.. Problems(asked)];
        if (problems.Length > 0)
        {
            return new ReadOutcome<SamplingAnswer>(null, problems);
        }

        SamplingAnswer answer = asked.Measured
            ? new(asked, null, SamplingTables.Variables(asked.Lot, asked.AqlPercent, asked.Inspection))
            : new(asked, SamplingTables.Attribute(asked.Lot, asked.Level, asked.AqlPercent, asked.Inspection), null);
        return new ReadOutcome<SamplingAnswer>(answer, []);
    }

    private static IEnumerable<Problem> Problems(SamplingQuestion asked)
    {
        if (asked.Lot is < 2 or > SamplingQuestion.MostPieces)
        {
            yield return new Problem(
                "lot",
                "so many pieces are no lot",
                asked.Lot.ToString(CultureInfo.InvariantCulture),
                CountParser.Range(2, SamplingQuestion.MostPieces)
            );
        }

        IReadOnlyList<double> levels = asked.Measured ? SamplingTables.VariablesLevels : SamplingTables.AttributeLevels;
        if (!levels.Any(one => Math.Abs(one - asked.AqlPercent) < 1e-9))
        {
            yield return new Problem(
                "aql",
                "no level of the tables",
                asked.AqlPercent.ToString(CultureInfo.InvariantCulture),
                string.Join(", ", levels.Select(one => one.ToString(CultureInfo.InvariantCulture)))
            );
        }

        if (!asked.Measured && !SamplingTables.InspectionLevels.Contains(asked.Level))
        {
            yield return new Problem("level", "no level of the tables", asked.Level, string.Join(", ", SamplingTables.InspectionLevels));
        }
    }
}
