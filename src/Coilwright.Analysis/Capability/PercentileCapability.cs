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
    public static PercentileCapability Of(Func<double, double> quantile) =>
        new(quantile(LowPart), quantile(MedianPart), quantile(HighPart));

    public double Potential(double lowerLimit, double upperLimit) => (upperLimit - lowerLimit) / (High - Low);

    public double Upper(double upperLimit) => (upperLimit - Median) / (High - Median);

    public double Lower(double lowerLimit) => (Median - lowerLimit) / (Median - Low);

    public double Actual(double? lowerLimit, double? upperLimit) =>
        Math.Min(
            upperLimit is { } upper ? Upper(upper) : double.PositiveInfinity,
            lowerLimit is { } lower ? Lower(lower) : double.PositiveInfinity
        );
}
