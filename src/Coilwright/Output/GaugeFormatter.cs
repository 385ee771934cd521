using System.Globalization;
using System.Text;
using Coilwright.Analysis.GaugeStudies;
using Coilwright.Papers;

namespace Coilwright.Output;

/// <summary>A gauge study for people.</summary>
internal static class GaugeFormatter
{
    public static string Write(GaugeFindings found)
    {
        StringBuilder text = new();
        void Line(InvariantText line) => text.AppendLine(line.ToText());
        foreach ((string name, GaugeVariation variation) in Variations(found))
        {
            Line(
                $"{name}: repeatability {variation.Repeatability:G4} {found.Unit}, reproducibility {variation.Reproducibility:G4}, "
                    + $"gauge {variation.Gauge:G4}, part to part {variation.PartToPart:G4} (standard deviations)"
            );
            Line(
                $"  the gauge is {100 * variation.GaugeShare:0.0} % of the spread; it tells "
                    + $"{variation.DistinctCategories?.ToString(CultureInfo.InvariantCulture) ?? "any number of"} categories apart"
            );
        }

        if (found.ShareOfTolerance is { } share)
        {
            Line($"six sigma of the gauge take {100 * share:0.0} % of the tolerance");
        }

        if (found.TypeOne is { } one)
        {
            Line(
                $"bias {one.Bias:G4} ± {one.BiasHalfWidth:G3} {found.Unit} (95 %), standard deviation {one.Deviation:G4}, by chance "
                    + $"{100 * one.BiasChance:0.#} %"
            );
            if (found.Tolerance is { } width)
            {
                Line($"Cg {one.Cg(width):0.00}, Cgk {one.Cgk(width):0.00} (20 % of the tolerance over 6 s; 1.33 wanted)");
            }
        }

        if (found.Linearity is { } bias)
        {
            Line(
                $"linearity: bias = {bias.Line.Intercept:G4} + {bias.Line.Slope:G4} × reference, slope ± {bias.SlopeHalfWidth:G3} (95 "
                    + $"%), by chance {100 * bias.SlopeChance:0.#} %, R² {bias.Line.RSquared:0.000}"
            );
            Line(
                $"  mean bias {bias.MeanBias:G4} ± {bias.MeanBiasHalfWidth:G3} {found.Unit} (95 %), by chance "
                    + $"{100 * bias.MeanBiasChance:0.#} %; at the worst end, {bias.WorstReference:G4}, {bias.WorstBias:G4} {found.Unit}"
            );
        }

        return text.Append(
                found.IsFit
                    ? "fit"
                    : $"not fit: {string.Join("; ", found.Faults)}. Mend the meter, its leads or the way it is read "
                        + $"before judging coils by it"
            )
            .ToString();
    }

    private static IEnumerable<(string, GaugeVariation)> Variations(GaugeFindings found)
    {
        if (found is { Anova: { } anova, AverageAndRange: { } range })
        {
            yield return ("analysis of variance", anova.Variation);
            yield return ("average and range", range.Variation);
        }
    }
}
