using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.GaugeStudies;

/// <summary>Repeated readings of one reference: how far off and how unsteady is the meter?</summary>
/// <param name="Count">Readings, 2 or more.</param>
/// <param name="Mean">Their mean.</param>
/// <param name="Deviation">Their standard deviation, above 0.</param>
/// <param name="Reference">What the reference is.</param>
/// <remarks>
/// Cg = share·T/(spread·s), Cgk = (share·T/2 − |bias|)/(spread/2·s) ([JaspQc]; the usual pairs are 20 % with 6 s and 15 % with 4 s).
/// </remarks>
public sealed record TypeOneStudy(int Count, double Mean, double Deviation, double Reference)
{
    /// <summary>Null for fewer than two readings or none that differ.</summary>
    public static TypeOneStudy? Compute(IReadOnlyList<double> readings, double reference)
    {
        if (readings.Count < 2)
        {
            return null;
        }

        double mean = readings.Average(),
            deviation = Math.Sqrt(readings.Sum(value => (value - mean) * (value - mean)) / (readings.Count - 1));
        return deviation > 0 ? new TypeOneStudy(readings.Count, mean, deviation, reference) : null;
    }

    /// <summary>How far the mean lies above the reference.</summary>
    public double Bias => Mean - Reference;

    /// <summary>t of the bias.</summary>
    public double BiasT => Bias / (Deviation / Math.Sqrt(Count));

    /// <summary>Probability of such a bias or a greater one by chance.</summary>
    public double BiasChance => 2 * (1 - StudentT.CDF(0, 1, Count - 1, Math.Abs(BiasT)));

    /// <summary>Half the 95 % interval of the bias.</summary>
    public double BiasHalfWidth => StudentT.InvCDF(0, 1, Count - 1, 0.975) * Deviation / Math.Sqrt(Count);

    /// <summary>Capability of the meter by its spread alone.</summary>
    /// <param name="tolerance">Full width of the tolerance, above 0, in the unit of the readings.</param>
    /// <param name="share">Share of it that the meter may take, 0…1.</param>
    /// <param name="spread">Standard deviations that its spread is counted over, above 0.</param>
    public double Cg(double tolerance, double share = 0.2, double spread = 6) => share * tolerance / (spread * Deviation);

    /// <summary>The same with its bias; negative when the bias alone takes more than its share.</summary>
    /// <param name="tolerance">Full width of the tolerance, above 0, in the unit of the readings.</param>
    /// <param name="share">Share of it that the meter may take, 0…1.</param>
    /// <param name="spread">Standard deviations that its spread is counted over, above 0.</param>
    public double Cgk(double tolerance, double share = 0.2, double spread = 6) =>
        (share / 2 * tolerance - Math.Abs(Bias)) / (spread / 2 * Deviation);
}
