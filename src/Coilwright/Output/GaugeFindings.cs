using Coilwright.Analysis.GaugeStudies;
using Coilwright.Commands;

namespace Coilwright.Output;

/// <summary>What a gauge study found; parts that the table does not allow are null.</summary>
/// <param name="Unit">Unit of the values, or empty.</param>
/// <param name="Tolerance">Width of the tolerance in that unit, or null.</param>
public sealed record GaugeFindings(string Unit, double? Tolerance)
{
    public GaugeAnova? Anova { get; init; }
    public AverageAndRange? AverageAndRange { get; init; }

    /// <summary>Bias against reference.</summary>
    public StraightLine? Linearity { get; init; }
    public TypeOneStudy? TypeOne { get; init; }

    /// <summary>Six sigma of the gauge over the tolerance; null without both.</summary>
    public double? ShareOfTolerance => Tolerance is { } width && Anova is { } anova ? 6 * anova.Variation.Gauge / width : null;

    /// <summary>False where the gauge takes more than 30 % of the tolerance (or, without one, of the spread), or Cgk lies below 1.33.</summary>
    public bool IsFit => (ShareOfTolerance ?? Anova?.Variation.GaugeShare ?? 0) <= GaugeCommand.LargestShare && (Tolerance is not { } width || TypeOne is not { } one || one.Cgk(width) >= 1.33);
}
