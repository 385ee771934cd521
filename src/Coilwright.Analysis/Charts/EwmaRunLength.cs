using Coilwright.Physics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Coilwright.Analysis.Charts;

/// <summary>
/// Mean number of values to a signal of an exponentially weighted average, for normal values with known centre and sigma.
/// </summary>
public static class EwmaRunLength
{
    private const int States = 201;

    /// <summary>
    /// With limits as they are after many points, by a Markov chain on 201 states (Lucas and Saccucci 1990, from memory) [Ewma].
    /// </summary>
    /// <param name="lambda">Weight of the newest value, above 0, to 1.</param>
    /// <param name="width">Distance of the limits in standard deviations of a point.</param>
    /// <param name="shift">Shift of the mean in sigma.</param>
    public static double Compute(double lambda, double width, double shift = 0)
    {
        Require.InRange(lambda, 1e-3, 1);
        double limit = width * Math.Sqrt(lambda / (2 - lambda)),
            step = 2 * limit / States;
        Matrix<double> stay = Matrix<double>.Build.Dense(States, States, (from, to) =>
        {
            double start = -limit + (from + 0.5) * step,
                low = -limit + to * step,
                kept = (1 - lambda) * start;
            return Normal.CDF(0, 1, (low + step - kept) / lambda - shift) - Normal.CDF(0, 1, (low - kept) / lambda - shift);
        });
        return (Matrix<double>.Build.DenseIdentity(States) - stay).Solve(Vector<double>.Build.Dense(States, 1))[States / 2];
    }
}
