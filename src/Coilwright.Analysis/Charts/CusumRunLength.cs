using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Coilwright.Analysis.Charts;

/// <summary>Mean number of values to a cumulative sum's signal.</summary>
public static class CusumRunLength
{
    private const int States = 201;

    /// <summary>Both sides together, by 1/ARL = 1/ARL⁺ + 1/ARL⁻ (exact when both cannot be above nought together; from memory).</summary>
    /// <param name="allowance">k in sigma.</param>
    /// <param name="decision">h in sigma, above 0.</param>
    /// <param name="shift">Shift of the mean in sigma.</param>
    public static double TwoSided(double allowance, double decision, double shift = 0) =>
        1 / (1 / OneSided(allowance, decision, shift) + 1 / OneSided(allowance, decision, -shift));

    /// <summary>Upper sum alone, by the Markov chain of Brook and Evans 1972 (from memory) [Cusum] on 201 states.</summary>
    public static double OneSided(double allowance, double decision, double shift)
    {
        double width = 2 * decision / (2 * States - 1);
        Matrix<double> stay = Matrix<double>.Build.Dense(States, States, (from, to) =>
        {
            double upper = (to - from) * width + width / 2 + allowance - shift;
            return to == 0 ? Normal.CDF(0, 1, upper) : Normal.CDF(0, 1, upper) - Normal.CDF(0, 1, upper - width);
        });
        return (Matrix<double>.Build.DenseIdentity(States) - stay).Solve(Vector<double>.Build.Dense(States, 1))[0];
    }
}
