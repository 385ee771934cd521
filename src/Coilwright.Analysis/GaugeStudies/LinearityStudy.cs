using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.GaugeStudies;

/// <summary>
/// Does a meter read off, and by how much more at one end of its range than at the other? Bias (reading less reference) against reference,
/// as a straight line.
/// </summary>
/// <param name="Line">Bias as a line over the reference.</param>
/// <param name="Count">Readings, 3 or more.</param>
/// <param name="MeanReference">Middle of the references.</param>
/// <param name="LeastReference">Least reference that was read.</param>
/// <param name="GreatestReference">Greatest reference that was read.</param>
/// <remarks>
/// Slope and bias are tested with Student's distribution of n − 2 freedoms (AIAG Measurement Systems Analysis, 4th edition, from memory).
/// </remarks>
public sealed record LinearityStudy(StraightLine Line, int Count, double MeanReference, double LeastReference, double GreatestReference)
{
    /// <summary>A test calls what happens by chance less often than this significant. Common practice.</summary>
    public const double Significance = 0.05;

    /// <summary>
    /// A bias above this share of the tolerance is too large: half of the 20 % that a type 1 study grants. Common practice.
    /// </summary>
    public const double LargestShare = 0.1;

    /// <summary>Null for fewer than three readings or only one reference.</summary>
    /// <param name="readings">Reference and bias of each reading, in one unit.</param>
    public static LinearityStudy? Compute(IReadOnlyList<(double Reference, double Bias)> readings) =>
        StraightLine.Fit(readings) is { } line
            ? new LinearityStudy(
                line,
                readings.Count,
                readings.Average(one => one.Reference),
                readings.Min(one => one.Reference),
                readings.Max(one => one.Reference)
            )
            : null;

    /// <summary>Probability of such a slope or a steeper one by chance.</summary>
    public double SlopeChance => Chance(Line.Slope, Line.SlopeError);

    /// <summary>Half the 95 % interval of the slope.</summary>
    public double SlopeHalfWidth => Student95 * Line.SlopeError;

    /// <summary>Bias at the middle of the references: the mean of all of them.</summary>
    public double MeanBias => BiasAt(MeanReference);

    /// <summary>Half the 95 % interval of the mean bias.</summary>
    public double MeanBiasHalfWidth => Student95 * MeanBiasError;

    /// <summary>Probability of such a mean bias or a greater one by chance.</summary>
    public double MeanBiasChance => Chance(MeanBias, MeanBiasError);

    /// <summary>The end of the range where the line lies furthest from no bias.</summary>
    public double WorstReference =>
        Math.Abs(BiasAt(LeastReference)) > Math.Abs(BiasAt(GreatestReference)) ? LeastReference : GreatestReference;

    /// <summary>The bias there, by the line.</summary>
    public double WorstBias => BiasAt(WorstReference);

    /// <summary>Whether slope or mean bias is more than chance.</summary>
    public bool IsSignificant => SlopeChance < Significance || MeanBiasChance < Significance;

    /// <summary>Whether a bias that is more than chance is too large for the tolerance; without a tolerance every such bias is.</summary>
    /// <param name="tolerance">Width of the tolerance in the unit of the readings, above 0, or null.</param>
    public bool IsFit(double? tolerance) => !IsSignificant || (tolerance is { } width && Math.Abs(WorstBias) <= LargestShare * width);

    private double BiasAt(double reference) => Line.Intercept + Line.Slope * reference;

    private double MeanBiasError => Line.Residual / Math.Sqrt(Count);

    private double Student95 => StudentT.InvCDF(0, 1, Count - 2, 0.975);

    private double Chance(double value, double error)
    {
        if (error > 0)
        {
            return 2 * (1 - StudentT.CDF(0, 1, Count - 2, Math.Abs(value) / error));
        }

        return Math.Abs(value) > 0 ? 0 : 1;
    }
}
