using System.Globalization;
using Coilwright.Analysis.GaugeStudies;
using Coilwright.Commands;

namespace Coilwright.Output;

/// <summary>What a gauge study found; parts that the table does not allow are null.</summary>
/// <param name="Unit">Unit of the values, or empty.</param>
/// <param name="Tolerance">Width of the tolerance in that unit, or null.</param>
public sealed record GaugeFindings(string Unit, double? Tolerance)
{
    /// <summary>Least Cgk of a type 1 study. Common practice.</summary>
    public const double LeastCgk = 1.33;

    public GaugeAnova? Anova { get; init; }
    public AverageAndRange? AverageAndRange { get; init; }

    /// <summary>Bias against reference.</summary>
    public LinearityStudy? Linearity { get; init; }
    public TypeOneStudy? TypeOne { get; init; }

    /// <summary>Six sigma of the gauge over the tolerance; null without both.</summary>
    public double? ShareOfTolerance => Tolerance is { } width && Anova is { } anova ? 6 * anova.Variation.Gauge / width : null;

    /// <summary>Every reason why the gauge is not fit, in words; empty when it is.</summary>
    public IReadOnlyList<string> Faults => [.. FindFaults()];

    public bool IsFit => Faults.Count == 0;

    private IEnumerable<string> FindFaults()
    {
        if ((ShareOfTolerance ?? Anova?.Variation.GaugeShare) is { } share && share > GaugeCommand.LargestShare)
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"it takes {100 * share:0.0} % of the {(ShareOfTolerance is null ? "spread" : "tolerance")}, more than "
                    + $"{100 * GaugeCommand.LargestShare:0} %"
            );
        }

        if (TypeOne is { } one)
        {
            if (Tolerance is { } width && one.Cgk(width) < LeastCgk)
            {
                yield return FormattableString.Invariant($"Cgk {one.Cgk(width):0.00} lies below {LeastCgk}");
            }

            if (Tolerance is null && one.BiasChance < LinearityStudy.Significance)
            {
                yield return FormattableString.Invariant(
                    $"its bias of {one.Bias:G3} {Unit} is more than chance; --tolerance tells whether it matters"
                );
            }
        }

        if (Linearity is { } linearity && !linearity.IsFit(Tolerance))
        {
            string what =
                linearity.SlopeChance < LinearityStudy.Significance ? "its bias changes along the range" : "it reads off everywhere";
            string size = Tolerance is { } width
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"{100 * Math.Abs(linearity.WorstBias) / width:0.0} % of the tolerance, more than "
                        + $"{100 * LinearityStudy.LargestShare:0} %"
                )
                : "more than chance; --tolerance tells whether it matters";
            yield return FormattableString.Invariant($"{what}: {linearity.WorstBias:G3} {Unit} at {linearity.WorstReference:G4}, {size}");
        }
    }
}
