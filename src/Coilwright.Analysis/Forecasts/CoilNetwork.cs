using System.Numerics;
using Coilwright.Physics;

namespace Coilwright.Analysis.Forecasts;

/// <summary>Joins coupled coils: each finish to the next start (series), or like ends together (parallel).</summary>
internal static class CoilNetwork
{
    /// <summary>Impedance of the joined coils, Ω. Series: the sum of the whole matrix. Parallel: 1/(1ᵀ Z⁻¹ 1).</summary>
    public static Complex Join(Connection connection, int coils, Func<int, int, Complex> z)
    {
        if (connection == Connection.Single || coils == 1)
        {
            return z(0, 0);
        }

        if (connection == Connection.Series)
        {
            Complex sum = Complex.Zero;
            for (int i = 0; i < coils; i++)
            {
                for (int j = 0; j < coils; j++)
                {
                    sum += z(i, j);
                }
            }

            return sum;
        }

        Complex admittance = Complex.Zero;
        foreach (Complex share in ParallelCurrents(coils, z))
        {
            admittance += share;
        }

        return Complex.One / admittance;
    }

    /// <summary>
    /// Share of each coil in the pickup's flux linkage: 1 each in series, by current in parallel, the first alone when single.
    /// </summary>
    public static double[] Weights(Connection connection, int coils, Func<int, int, Complex> z)
    {
        double[] weights = new double[coils];
        if (connection == Connection.Single || coils == 1)
        {
            weights[0] = 1;
            return weights;
        }

        if (connection == Connection.Series)
        {
            Array.Fill(weights, 1);
            return weights;
        }

        Complex[] currents = ParallelCurrents(coils, z);
        Complex total = currents.Aggregate(Complex.Zero, (sum, current) => sum + current);
        return [.. currents.Select(current => (current / total).Real)];
    }

    /// <summary>Current of each coil at one volt across all: Z⁻¹·1, by elimination with pivoting.</summary>
    private static Complex[] ParallelCurrents(int coils, Func<int, int, Complex> z)
    {
        MathNet.Numerics.LinearAlgebra.Matrix<Complex> matrix = MathNet.Numerics.LinearAlgebra.Matrix<Complex>.Build.Dense(coils, coils, z);
        return [.. matrix.Solve(MathNet.Numerics.LinearAlgebra.Vector<Complex>.Build.Dense(coils, Complex.One))];
    }
}
