using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Capability;

/// <summary>Capability of a run of normal values against one or two limits.</summary>
/// <param name="Count">Number of values, 2 or more.</param>
/// <param name="Mean">Their mean.</param>
/// <param name="Deviation">Their standard deviation (Pp, Ppk) or sigma within subgroups (Cp, Cpk).</param>
/// <param name="LowerLimit">Lowest accepted, or null.</param>
/// <param name="UpperLimit">Highest accepted, or null; one of both is needed.</param>
/// <remarks>
/// Cp = (USL − LSL)/6s with the χ² interval; Cpk = min(Cpu, Cpl) with the normal interval of Bissell 1990, ± z·√(1/(9n) + Cpk²/(2ν)), ν = n
/// − 1 for a standard deviation
/// (both from memory, checked against an outside computation) [Capability].
/// </remarks>
public sealed record CapabilityStudy(int Count, double Mean, double Deviation, double? LowerLimit, double? UpperLimit)
{
    /// <summary>
    /// How much less a moving range tells about sigma than the standard deviation of as many values: the ratio of their degrees of freedom.
    /// </summary>
    /// <remarks>Variance of MR̄/d₂ is 0.826·σ²/n against 0.5·σ²/n (from memory; held by simulation in the tests).</remarks>
    private const double MovingRangeWorth = 0.605;

    /// <summary>Degrees of freedom of the deviation; Count − 1 for a standard deviation.</summary>
    public double Freedom { get; init; } = Count - 1;

    /// <summary>
    /// Study with sigma from the mean moving range: gives Cp and Cpk. Null for fewer than three values, none of them different, or no
    /// limit.
    /// </summary>
    public static CapabilityStudy? OfMovingRange(int count, double mean, double sigma, double? lowerLimit, double? upperLimit) =>
        count < 3 || sigma <= 0 || (lowerLimit is null && upperLimit is null)
            ? null
            : new CapabilityStudy(count, mean, sigma, lowerLimit, upperLimit) { Freedom = MovingRangeWorth * (count - 1) };

    /// <summary>Study with sigma from within subgroups: gives Cp and Cpk.</summary>
    public static CapabilityStudy? OfSubgroups(int groups, int size, double mean, double sigma, double? lowerLimit, double? upperLimit) =>
        groups < 1 || size < 2 || sigma <= 0 || (lowerLimit is null && upperLimit is null)
            ? null
            : new CapabilityStudy(groups * size, mean, sigma, lowerLimit, upperLimit) { Freedom = groups * (size - 1) };

    /// <summary>
    /// Overall study of the values: gives Pp and Ppk. Null for fewer than two values, none of them different, or no limit.
    /// </summary>
    public static CapabilityStudy? Overall(IReadOnlyList<double> values, double? lowerLimit, double? upperLimit)
    {
        if (values.Count < 2 || (lowerLimit is null && upperLimit is null))
        {
            return null;
        }

        double mean = values.Average(),
            deviation = Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1));
        return deviation > 0 ? new CapabilityStudy(values.Count, mean, deviation, lowerLimit, upperLimit) : null;
    }

    /// <summary>Distance to the upper limit over 3 s; null without one.</summary>
    public double? Upper => (UpperLimit - Mean) / (3 * Deviation);

    /// <summary>Distance to the lower limit over 3 s; null without one.</summary>
    public double? Lower => (Mean - LowerLimit) / (3 * Deviation);

    /// <summary>Cp or Pp; null with one limit only.</summary>
    public CapabilityIndex? Potential(double confidence = 0.95)
    {
        if ((UpperLimit - LowerLimit) / (6 * Deviation) is not { } index)
        {
            return null;
        }

        double tail = (1 - confidence) / 2;
        return new CapabilityIndex(
            index,
            index * Math.Sqrt(ChiSquared.InvCDF(Freedom, tail) / Freedom),
            index * Math.Sqrt(ChiSquared.InvCDF(Freedom, 1 - tail) / Freedom)
        );
    }

    /// <summary>Cpk or Ppk: the nearer of the two limits, or the only one.</summary>
    public CapabilityIndex Actual(double confidence = 0.95)
    {
        double index = Math.Min(Upper ?? double.PositiveInfinity, Lower ?? double.PositiveInfinity);
        double half = Normal.InvCDF(0, 1, 1 - (1 - confidence) / 2) * Math.Sqrt(1 / (9.0 * Count) + index * index / (2 * Freedom));
        return new CapabilityIndex(index, index - half, index + half);
    }

    /// <summary>Cpm: the root mean square about the target in place of the deviation; null with one limit only.</summary>
    public double? AboutTarget(double target) =>
        (UpperLimit - LowerLimit) / (6 * Math.Sqrt(Deviation * Deviation * (Count - 1) / Count + (Mean - target) * (Mean - target)));
}
