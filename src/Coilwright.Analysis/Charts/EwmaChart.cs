using Coilwright.Physics;

namespace Coilwright.Analysis.Charts;

/// <summary>Exponentially weighted moving average: each point is λ of the newest value and 1 − λ of the point before.</summary>
/// <param name="Centre">Target or mean.</param>
/// <param name="Sigma">Standard deviation of the values charted; of a mean of n, σ/√n.</param>
/// <param name="Lambda">Weight of the newest value, above 0, to 1.</param>
/// <param name="Width">Distance of the limits in standard deviations of a point, usually 3.</param>
/// <remarks>
/// Roberts 1959; NIST/SEMATECH e-Handbook 6.3.2.4 (read in a reproduction), where the limits are those after many points.
/// </remarks>
public sealed record EwmaChart(double Centre, double Sigma, double Lambda = 0.2, double Width = 3)
{
    /// <summary>The points, one for each value; the first starts from the centre.</summary>
    public IReadOnlyList<double> Points(IReadOnlyList<double> values)
    {
        Require.InRange(Lambda, 1e-6, 1);
        double last = Centre;
        double[] points = new double[values.Count];
        for (int n = 0; n < points.Length; n++)
        {
            points[n] = last += Lambda * (values[n] - last);
        }

        return points;
    }

    /// <summary>Half the distance of the limits at the n-th point, from 1; without a number, after many points.</summary>
    public double HalfWidth(int? point = null) =>
        Width * Sigma * Math.Sqrt(Lambda / (2 - Lambda) * (point is { } n ? 1 - Math.Pow(1 - Lambda, 2 * n) : 1));

    /// <summary>Places where the average is outside its limits.</summary>
    public IReadOnlyList<RunSignal> Signals(IReadOnlyList<double> values) =>
        [
            .. Points(values)
                .Select((point, n) => (Off: point - Centre, Place: n))
                .Where(one => Math.Abs(one.Off) > HalfWidth(one.Place + 1) * (1 + 1e-12))
                .Select(one => new RunSignal(one.Place, one.Off > 0 ? "moving average above its limit" : "moving average below its limit")),
        ];
}
