using System.Globalization;
using Coilwright.Analysis.GaugeStudies;
using Coilwright.Application.Measuring;
using Coilwright.Papers.Figures;
using Coilwright.Workshop.Entry;

namespace Coilwright.Web.Views.Measuring;

/// <summary>A gauge study as its page shows it.</summary>
/// <param name="Study">The study.</param>
/// <param name="Reference">What one part should read; null for nothing.</param>
public sealed record GaugeView(GaugeStudy Study, double? Reference)
{
    private GaugeFindings Found => Study.Found;

    /// <summary>True when nothing speaks against the gauge.</summary>
    public bool IsFit => Found.IsFit;

    /// <summary>Why it is not fit, a sentence each.</summary>
    public IReadOnlyList<string> Faults => [.. Found.Faults.Select(ProblemSentences.Sentence)];

    /// <summary>The figure that the answer rests on, largest on the page.</summary>
    public (string Value, string About) Headline
    {
        get
        {
            if (Found.ShareOfTolerance is { } share)
            {
                return (Percent(share), "of the tolerance is taken by six spreads of the gauge; up to 30 % will do (common practice)");
            }

            if (Found.Anova is { } anova)
            {
                return (Percent(anova.Variation.GaugeShare), "of the spread is the gauge; up to 30 % will do (common practice)");
            }

            return Found.TypeOne is { } one
                ? ($"{Number(one.Bias)} {Found.Unit}".Trim(), $"is the bias, ± {Number(one.BiasHalfWidth)} (95 %, measured)")
                : (
                    $"{Number(Found.Linearity!.MeanBias)} {Found.Unit}".Trim(),
                    $"is the mean bias, ± {Number(Found.Linearity.MeanBiasHalfWidth)} (95 %, measured)"
                );
        }
    }

    /// <summary>Every number with the method it comes from.</summary>
    public IReadOnlyList<MeasuredLine> Lines => [.. Variations(), .. OneType(), .. Linear()];

    /// <summary>The readings; nothing where no part has two places.</summary>
    public DrawingViewModel Figure
    {
        get
        {
            List<string> parts = [.. Study.Table.Readings.Select(one => one.Part).Distinct()],
                persons = [.. Study.Table.Readings.Select(one => one.Person).Distinct()];
            string shapes = persons.Count > 1 ? " Each person has a shape: " + string.Join(", ", persons.Select(Shape)) + "." : "";
            return new DrawingViewModel(
                "Every reading at its part. What lies apart at one part is the gauge; what lies apart along the page is the parts."
                    + shapes,
                MeasuredFigures.Gauge(
                    [
                        .. Study.Table.Readings.Select(one =>
                            (parts.IndexOf(one.Part) + 1, persons.IndexOf(one.Person), one.Value, one.Person)
                        ),
                    ],
                    Found.Unit,
                    Reference
                )
            );
        }
    }

    private static string Shape(string person, int place) =>
        $"{person} {((string[])["a triangle", "a square", "a diamond", "a ring", "a cross"])[place % 5]}";

    private IEnumerable<MeasuredLine> Variations()
    {
        if (Found is not { Anova: { } anova, AverageAndRange: { } range })
        {
            yield break;
        }

        foreach (
            (string name, GaugeVariation one) in new[] { ("analysis of variance", anova.Variation), ("average and range", range.Variation) }
        )
        {
            yield return Line("Repeatability", one.Repeatability, name);
            yield return Line("Reproducibility", one.Reproducibility, name);
            yield return Line("Gauge", one.Gauge, name);
            yield return Line("Part to part", one.PartToPart, name);
            string categories = one.DistinctCategories?.ToString(CultureInfo.InvariantCulture) ?? "any number";
            yield return new MeasuredLine("Classes of parts it can tell apart", categories, name);
        }
    }

    private IEnumerable<MeasuredLine> OneType()
    {
        if (Found.TypeOne is not { } one)
        {
            yield break;
        }

        yield return new MeasuredLine("Bias", $"{Number(one.Bias)} {Found.Unit}", $"± {Number(one.BiasHalfWidth)}, 95 %");
        yield return Line("Standard deviation", one.Deviation, "one part read again and again");
        if (Found.Tolerance is { } width)
        {
            yield return new MeasuredLine("Cg", Number(one.Cg(width)), "20 % of the tolerance over 6 spreads; 1.33 wanted");
            yield return new MeasuredLine("Cgk", Number(one.Cgk(width)), "the same with the bias; 1.33 wanted");
        }
    }

    private IEnumerable<MeasuredLine> Linear()
    {
        if (Found.Linearity is { } bias)
        {
            yield return new MeasuredLine(
                "Mean bias",
                $"{Number(bias.MeanBias)} {Found.Unit}",
                $"± {Number(bias.MeanBiasHalfWidth)}, 95 %"
            );
            yield return new MeasuredLine(
                "Bias grows by",
                $"{Number(bias.Line.Slope)} of the reference",
                $"± {Number(bias.SlopeHalfWidth)}, 95 %"
            );
        }
    }

    private MeasuredLine Line(string name, double value, string basis) => new(name, $"{Number(value)} {Found.Unit}".Trim(), basis);

    private static string Percent(double part) => string.Create(CultureInfo.InvariantCulture, $"{100 * part:0.0} %");

    private static string Number(double value) => value.ToString("G4", CultureInfo.InvariantCulture);
}
