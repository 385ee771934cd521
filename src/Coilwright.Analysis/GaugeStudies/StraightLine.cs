namespace Coilwright.Analysis.GaugeStudies;

/// <summary>A least-squares line, for the linearity of a meter: bias against reference.</summary>
/// <param name="Intercept">Value at nought.</param>
/// <param name="Slope">Change per unit.</param>
/// <param name="InterceptError">Standard deviation of the intercept.</param>
/// <param name="SlopeError">Standard deviation of the slope.</param>
/// <param name="Residual">Standard deviation about the line.</param>
/// <param name="RSquared">Share of the variation that the line explains, 0…1.</param>
public sealed record StraightLine(
    double Intercept,
    double Slope,
    double InterceptError,
    double SlopeError,
    double Residual,
    double RSquared
)
{
    /// <summary>Null for fewer than three points or only one place.</summary>
    public static StraightLine? Fit(IReadOnlyList<(double X, double Y)> points)
    {
        if (points.Count < 3)
        {
            return null;
        }

        double meanX = points.Average(p => p.X),
            meanY = points.Average(p => p.Y),
            xx = points.Sum(p => (p.X - meanX) * (p.X - meanX));
        if (!(xx > 0))
        {
            return null;
        }

        double slope = points.Sum(p => (p.X - meanX) * (p.Y - meanY)) / xx,
            intercept = meanY - slope * meanX;
        double left = points.Sum(p => Square(p.Y - meanY - slope * (p.X - meanX))),
            all = points.Sum(p => Square(p.Y - meanY)),
            residual = Math.Sqrt(left / (points.Count - 2));
        return new StraightLine(
            intercept,
            slope,
            residual * Math.Sqrt(1.0 / points.Count + meanX * meanX / xx),
            residual / Math.Sqrt(xx),
            residual,
            all > 0 ? 1 - left / all : 1
        );
    }

    private static double Square(double x) => x * x;
}
