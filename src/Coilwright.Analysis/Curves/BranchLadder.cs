using Coilwright.Physics.Circuit;
using MathNet.Numerics.LinearAlgebra;
using Complex = System.Numerics.Complex;

namespace Coilwright.Analysis.Curves;

/// <summary>Writes any series branch, also one given by tables, as R, L and eddy branches, for programs that know only parts.</summary>
/// <remarks>
/// Z ≈ R + jωL + Σ L_k·jωω_k/(ω_k + jω) with knees ω_k fixed on a logarithmic grid is linear in R, L and L_k, none of which may be
/// negative: nonnegative least squares
/// (Lawson and Hanson 1974, from memory) [Nonnegative] finds the one best answer. Weighted by what a change of the branch does to the
/// pickup's impedance.
/// </remarks>
public static class BranchLadder
{
    private const int Knees = 19;
    private const double FirstKneeHz = 60,
        LastKneeHz = 300_000;
    private const int Rounds = 200;

    /// <summary>The parts, and the largest relative difference of the impedance with the capacitance across it.</summary>
    /// <param name="branch">Series branch.</param>
    /// <param name="capacitanceF">Capacitance across it, F.</param>
    /// <param name="fromHz">Lower end, Hz.</param>
    /// <param name="toHz">Upper end, Hz.</param>
    public static (LumpedPickup Pickup, double Worst) Fit(
        ISeriesBranch branch,
        double capacitanceF,
        double fromHz = 20,
        double toHz = 20_000
    )
    {
        double[] hz = PickupResponse.LogFrequencies(fromHz, toHz, 200);
        double[] knee = [.. PickupResponse.LogFrequencies(FirstKneeHz, LastKneeHz, Knees).Select(f => 2 * Math.PI * f)];
        Matrix<double> matrix = Matrix<double>.Build.Dense(2 * hz.Length, Knees + 2);
        Vector<double> right = Vector<double>.Build.Dense(2 * hz.Length);
        for (int i = 0; i < hz.Length; i++)
        {
            Complex s = new(0, 2 * Math.PI * hz[i]),
                z = branch.ImpedanceOhm(hz[i]);
            double weight = 1 / (z.Magnitude * (1 + s * capacitanceF * z).Magnitude);
            void Put(int column, Complex value) =>
                (matrix[2 * i, column], matrix[2 * i + 1, column]) = (weight * value.Real, weight * value.Imaginary);
            Put(0, 1000);
            Put(1, s);
            for (int k = 0; k < Knees; k++)
            {
                Put(k + 2, s * knee[k] / (knee[k] + s));
            }

            (right[2 * i], right[2 * i + 1]) = (weight * z.Real, weight * z.Imaginary);
        }

        Vector<double> found = Nonnegative(matrix, right);
        LumpedPickup pickup = new(Math.Max(found[0] * 1000, 1e-3), found[1], capacitanceF)
        {
            Eddy =
            [
                .. Enumerable
                    .Range(0, Knees)
                    .Where(k => found[k + 2] > 0)
                    .Select(k => new EddyBranch(found[k + 2], found[k + 2] * knee[k])),
            ],
        };
        return (pickup, hz.Max(f => (With(pickup, f, capacitanceF) / With(branch, f, capacitanceF) - 1).Magnitude));
    }

    private static Complex With(ISeriesBranch branch, double hz, double capacitanceF)
    {
        Complex z = branch.ImpedanceOhm(hz);
        return z / (1 + new Complex(0, 2 * Math.PI * hz * capacitanceF) * z);
    }

    /// <summary>Least squares with no negative unknown.</summary>
    private static Vector<double> Nonnegative(Matrix<double> matrix, Vector<double> right)
    {
        int n = matrix.ColumnCount;
        Vector<double> x = Vector<double>.Build.Dense(n);
        bool[] free = new bool[n];
        for (int round = 0; round < Rounds; round++)
        {
            Vector<double> slope = matrix.TransposeThisAndMultiply(right - matrix * x);
            int best = Enumerable.Range(0, n).Where(j => !free[j]).DefaultIfEmpty(-1).MaxBy(j => j < 0 ? 0 : slope[j]);
            if (best < 0 || slope[best] <= 1e-12 * right.L2Norm())
            {
                break;
            }

            free[best] = true;
            while (Step(matrix, right, x, free)) { }
        }

        return x;
    }

    /// <summary>Solves for the free unknowns; true when one of them had to be held at 0 and the rest must be solved again.</summary>
    private static bool Step(Matrix<double> matrix, Vector<double> right, Vector<double> x, bool[] free)
    {
        int[] columns = [.. Enumerable.Range(0, free.Length).Where(j => free[j])];
        Vector<double> solved = Matrix<double>.Build.DenseOfColumnVectors(columns.Select(j => matrix.Column(j))).QR().Solve(right);
        double reach = 1;
        int stop = -1;
        for (int i = 0; i < columns.Length; i++)
        {
            double at = x[columns[i]];
            if (solved[i] <= 0 && at / (at - solved[i]) <= reach)
            {
                (reach, stop) = (at - solved[i] > 0 ? at / (at - solved[i]) : 0, columns[i]);
            }
        }

        for (int i = 0; i < columns.Length; i++)
        {
            x[columns[i]] += reach * (solved[i] - x[columns[i]]);
        }

        if (stop < 0)
        {
            return false;
        }

        (x[stop], free[stop]) = (0, false);
        return true;
    }
}
