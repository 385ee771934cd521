namespace Coilwright.Analysis.Capability;

/// <summary>Capability of values that are not normal, from three percentiles of their distribution.</summary>
/// <param name="Low">0.135 % point.</param>
/// <param name="Median">50 % point.</param>
/// <param name="High">99.865 % point.</param>
/// <remarks>
/// The percentile method: Pp = (USL − LSL)/(X₉₉.₈₆₅ − X₀.₁₃₅), one-sided from the median (formulas read in a secondary source). It gives
/// the usual indices for normal values.
/// </remarks>
public sealed record PercentileCapability(double Low, double Median, double High)
{
    /// <summary>Probabilities of the three points.</summary>
    public const double LowPart = 0.00135,
        MedianPart = 0.5,
        HighPart = 0.99865;

    /// <summary>From a distribution's quantile function.</summary>
    public static PercentileCapability FromQuantiles(Func<double, double> quantile) =>
        new(quantile(LowPart), quantile(MedianPart), quantile(HighPart));

    /// <summary>Pp: width of the limits over that of the middle 99.73 % of the values.</summary>
    /// <param name="lowerLimit">Lower limit, in the unit of the values.</param>
    /// <param name="upperLimit">Upper limit, above the lower one.</param>
    public double Potential(double lowerLimit, double upperLimit) => (upperLimit - lowerLimit) / (High - Low);

    /// <summary>Room above the median over the half spread there.</summary>
    /// <param name="upperLimit">Upper limit, in the unit of the values.</param>
    public double Upper(double upperLimit) => (upperLimit - Median) / (High - Median);

    /// <summary>Room below the median over the half spread there.</summary>
    /// <param name="lowerLimit">Lower limit, in the unit of the values.</param>
    public double Lower(double lowerLimit) => (Median - lowerLimit) / (Median - Low);

    /// <summary>Ppk: the smaller of both sides; infinite without any limit.</summary>
    /// <param name="lowerLimit">Lower limit; null for none.</param>
    /// <param name="upperLimit">Upper limit; null for none.</param>
    public double Actual(double? lowerLimit, double? upperLimit) =>
        Math.Min(
            upperLimit is { } upper ? Upper(upper) : double.PositiveInfinity,
            lowerLimit is { } lower ? Lower(lower) : double.PositiveInfinity
        );
}
