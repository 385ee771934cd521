namespace Coilwright.Analysis.Spread;

/// <summary>How a production run of one recipe will scatter.</summary>
/// <param name="Samples">Pieces drawn.</param>
/// <param name="Seed">Seed of the draw.</param>
/// <param name="Quantities">One by one.</param>
/// <param name="Remedies">What would narrow it, and what would widen it.</param>
/// <param name="FieldModelError">Largest difference of the inductance used here from a full field solution, as a part of it, over pieces at
/// the edge of the draw.</param>
public sealed record RunSpread(
    int Samples,
    int Seed,
    IReadOnlyList<QuantitySpread> Quantities,
    IReadOnlyList<SpreadRemedy> Remedies,
    double FieldModelError
)
{
    /// <summary>Part of the pieces that lie outside one or another of the recipe's targets; null without targets.</summary>
    public double? OutsideAny { get; init; }

    /// <summary>Pieces of this run that were solved in full, and how far its model was off at them.</summary>
    public FieldCheck FieldCheck { get; init; } = new(0, []);

    /// <summary>True when it was stopped: fewer pieces than asked for, or causes and remedies that were not reached.</summary>
    public bool Stopped { get; init; }
}

/// <summary>One quantity over the run.</summary>
public sealed record QuantitySpread
{
    /// <summary>Name of the file formats, for example "dcResistance".</summary>
    public required string Name { get; init; }

    /// <summary>SI unit as printed.</summary>
    public required string Unit { get; init; }

    /// <summary>Mean over the draws in which the quantity exists, in <see cref="Unit"/>.</summary>
    public required double Mean { get; init; }

    /// <summary>Standard deviation over the same.</summary>
    public required double StandardDeviation { get; init; }

    /// <summary>2.5 % point.</summary>
    public required double Low { get; init; }

    /// <summary>97.5 % point.</summary>
    public required double High { get; init; }

    /// <summary>Standard deviation between pieces of one run: what is common to the run (spool, magnet lot, film) left out.</summary>
    public required double WithinRun { get; init; }

    /// <summary>Part of the pieces outside the recipe's target; null without one.</summary>
    public double? OutsideTarget { get; init; }

    /// <summary>The recipe's target; null without one.</summary>
    public SpreadTarget? Target { get; init; }

    /// <summary>Part of the draws in which the quantity does not exist, for example without a peak.</summary>
    public double Missing { get; init; }

    /// <summary>By total effect, largest first.</summary>
    public required IReadOnlyList<SpreadCause> Causes { get; init; }

    /// <summary>Counts in equal steps from <see cref="HistogramLow"/> to <see cref="HistogramHigh"/>.</summary>
    public required IReadOnlyList<int> Histogram { get; init; }

    /// <summary>Lower edge of the first step.</summary>
    public double HistogramLow { get; init; }

    /// <summary>Upper edge of the last step.</summary>
    public double HistogramHigh { get; init; }
}

/// <summary>A wanted value and its limits, SI, in the quantity's unit at 20 °C and 1 kHz.</summary>
/// <param name="Nominal">Wanted value.</param>
/// <param name="Low">Smallest that is allowed.</param>
/// <param name="High">Largest that is allowed.</param>
public sealed record SpreadTarget(double Nominal, double Low, double High);

/// <summary>A cause and its share of a quantity's variance.</summary>
/// <param name="Cause">Key, for example "bareDiameter".</param>
/// <param name="FirstOrder">Share by itself.</param>
/// <param name="Total">Share with all interplay.</param>
public sealed record SpreadCause(string Cause, double FirstOrder, double Total);

/// <summary>Something that could be done, and what would come of it.</summary>
/// <param name="Remedy">Key, for example "measured-spool".</param>
/// <param name="Words">What it is, in workshop words.</param>
/// <param name="StandardDeviation">Of each quantity then, by name.</param>
/// <param name="OutsideTarget">Part outside the target then, by name, where there is a target.</param>
public sealed record SpreadRemedy(
    string Remedy,
    string Words,
    IReadOnlyDictionary<string, double> StandardDeviation,
    IReadOnlyDictionary<string, double> OutsideTarget
)
{
    /// <summary>Part of the pieces that would lie outside one or another of the targets; null without targets.</summary>
    public double? OutsideAny { get; init; }
}
