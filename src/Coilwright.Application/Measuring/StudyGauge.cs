using Coilwright.Analysis.GaugeStudies;
using Coilwright.Formats.Tables;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Measuring;

/// <summary>A gauge study with the readings it rests on.</summary>
public sealed record GaugeStudy(GaugeTable Table, GaugeFindings Found);

/// <summary>A person asks how good a meter and its users are.</summary>
public sealed class StudyGauge
{
    /// <summary>
    /// The study, or every problem: of an option by its name ("tolerance", "reference"), of a cell by its line and column.
    /// </summary>
    /// <param name="readings">The table.</param>
    /// <param name="tolerance">Width of the tolerance in the unit of the values, or null.</param>
    /// <param name="reference">What one part read again and again should read, or null.</param>
    public ReadOutcome<GaugeStudy> Study(string readings, double? tolerance, double? reference)
    {
        ReadOutcome<GaugeTable> read = GaugeTable.Read(readings);
        Problem[] problems = [.. Options(tolerance, reference), .. read.Problems];
        if (problems.Length > 0 || read.Value is not { } table)
        {
            return new ReadOutcome<GaugeStudy>(null, problems);
        }

        GaugeFindings? found = GaugeFindings.TryStudy(table.Readings, table.References, table.Unit, tolerance, reference);
        return found is null ? new ReadOutcome<GaugeStudy>(null, [NoStudy]) : new ReadOutcome<GaugeStudy>(new GaugeStudy(table, found), []);
    }

    private static Problem NoStudy { get; } =
        new(
            "table",
            "it holds no study",
            null,
            "two or more parts read by each of two or more persons equally often, twice or more; or a reference and two or more "
                + "readings that differ; or three or more readings with a column \"reference\" of different values"
        );

    private static IEnumerable<Problem> Options(double? tolerance, double? reference)
    {
        if (tolerance is not null and not (> 0 and <= GaugeTable.LargestValue))
        {
            yield return new Problem("tolerance", "a tolerance has a width", null, "above 0, up to 1,000,000,000,000");
        }

        if (reference is { } shown && !(Math.Abs(shown) <= GaugeTable.LargestValue))
        {
            yield return new Problem("reference", "no gauge shows this", null, GaugeTable.AllowedValues);
        }
    }
}
