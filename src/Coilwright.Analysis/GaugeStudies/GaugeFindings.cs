using System.Globalization;

namespace Coilwright.Analysis.GaugeStudies;

/// <summary>What a gauge study found; parts that the table does not allow are null.</summary>
/// <param name="Unit">Unit of the values, or empty.</param>
/// <param name="Tolerance">Width of the tolerance in that unit, or null.</param>
public sealed record GaugeFindings(string Unit, double? Tolerance)
{
    /// <summary>Above this share of the tolerance or of the spread a gauge is not fit. Common practice: AIAG, 30 %.</summary>
    public const double LargestShare = 0.3;

    /// <summary>Least Cgk of a type 1 study. Common practice.</summary>
    public const double LeastCgk = 1.33;

    /// <summary>Crossed readings by analysis of variance.</summary>
    public GaugeAnova? Anova { get; init; }

    /// <summary>Crossed readings by averages and ranges.</summary>
    public AverageAndRange? AverageAndRange { get; init; }

    /// <summary>Bias against reference.</summary>
    public LinearityStudy? Linearity { get; init; }

    /// <summary>One part read again and again.</summary>
    public TypeOneStudy? TypeOne { get; init; }

    /// <summary>Six sigma of the gauge over the tolerance; null without both.</summary>
    public double? ShareOfTolerance => Tolerance is { } width && Anova is { } anova ? 6 * anova.Variation.Gauge / width : null;

    /// <summary>Every reason why the gauge is not fit, in words; empty when it is.</summary>
    public IReadOnlyList<string> Faults => [.. FindFaults()];

    /// <summary>True when nothing speaks against the gauge.</summary>
    public bool IsFit => Faults.Count == 0;

    /// <summary>Every study that a table of readings allows; null when it allows none.</summary>
    /// <param name="readings">The readings.</param>
    /// <param name="references">What each should have been, or none.</param>
    /// <param name="unit">Their unit, or empty.</param>
    /// <param name="tolerance">Width of the tolerance, or null.</param>
    /// <param name="reference">What one part read again and again should read, or null.</param>
    public static GaugeFindings? TryStudy(
        IReadOnlyList<GaugeReading> readings,
        IReadOnlyList<double> references,
        string unit,
        double? tolerance,
        double? reference
    )
    {
        CrossedReadings? crossed = CrossedReadings.TryArrange(readings);
        (double X, double Y)[] biases = [.. references.Zip(readings, (wanted, reading) => (wanted, reading.Value - wanted))];
        GaugeFindings found = new(unit, tolerance)
        {
            Anova = crossed is null ? null : GaugeAnova.Compute(crossed),
            AverageAndRange = crossed is null ? null : AverageAndRange.Compute(crossed),
            Linearity = LinearityStudy.Compute(biases),
            TypeOne = reference is { } wanted ? TypeOneStudy.Compute([.. readings.Select(reading => reading.Value)], wanted) : null,
        };
        return found is { Anova: null, Linearity: null, TypeOne: null } ? null : found;
    }

    private IEnumerable<string> FindFaults()
    {
        if ((ShareOfTolerance ?? Anova?.Variation.GaugeShare) is { } share && share > LargestShare)
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"it takes {100 * share:0.0} % of the {(ShareOfTolerance is null ? "spread" : "tolerance")}, more than "
                    + $"{100 * LargestShare:0} %"
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
                    $"its bias of {one.Bias:G3} {Unit} is more than chance; the width of the tolerance tells whether it matters"
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
                : "more than chance; the width of the tolerance tells whether it matters";
            yield return FormattableString.Invariant($"{what}: {linearity.WorstBias:G3} {Unit} at {linearity.WorstReference:G4}, {size}");
        }
    }
}
