using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Capability;

/// <summary>Capability of a run of normal values against one or two limits.</summary>
/// <param name="Count">Number of values, 2 or more.</param>
/// <param name="Mean">Their mean.</param>
/// <param name="Deviation">Their standard deviation (Pp, Ppk) or sigma within subgroups (Cp, Cpk).</param>
/// <param name="LowerLimit">Lowest accepted, or null.</param>
/// <param name="UpperLimit">Highest accepted, or null; one of both is needed.</param>
/// <remarks>
/// Cp = (USL − LSL)/6s with the χ² interval; Cpk = min(Cpu, Cpl) with the normal interval of Bissell 1990, ± z·√(1/(9n) + Cpk²/(2(n−1)))
/// (both from memory, checked against an outside computation).
/// </remarks>
public sealed record CapabilityStudy(int Count, double Mean, double Deviation, double? LowerLimit, double? UpperLimit)
{
    /// <summary>Overall study of the values: gives Pp and Ppk. Null for fewer than two values, none of them different, or no limit.</summary>
    public static CapabilityStudy? Overall(IReadOnlyList<double> values, double? lowerLimit, double? upperLimit)
    {
        if (values.Count < 2 || (lowerLimit is null && upperLimit is null))
        {
            return null;
        }

        double mean = values.Average(), deviation = Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1));
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

        double tail = (1 - confidence) / 2, freedom = Count - 1;
        return new CapabilityIndex(index, index * Math.Sqrt(ChiSquared.InvCDF(freedom, tail) / freedom), index * Math.Sqrt(ChiSquared.InvCDF(freedom, 1 - tail) / freedom));
    }

    /// <summary>Cpk or Ppk: the nearer of the two limits, or the only one.</summary>
    public CapabilityIndex Actual(double confidence = 0.95)
    {
        double index = Math.Min(Upper ?? double.PositiveInfinity, Lower ?? double.PositiveInfinity);
        double half = Normal.InvCDF(0, 1, 1 - (1 - confidence) / 2) * Math.Sqrt(1 / (9.0 * Count) + index * index / (2.0 * (Count - 1)));
        return new CapabilityIndex(index, index - half, index + half);
    }

    /// <summary>Cpm: the root mean square about the target in place of the deviation; null with one limit only.</summary>
    public double? AboutTarget(double target) => (UpperLimit - LowerLimit) / (6 * Math.Sqrt(Deviation * Deviation * (Count - 1) / Count + (Mean - target) * (Mean - target)));
}
