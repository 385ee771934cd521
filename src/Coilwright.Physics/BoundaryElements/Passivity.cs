using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>What every pickup of coils and passive parts holds to, and the nearest solution that does.</summary>
/// <remarks>
/// Permeable parts only add to what a current stores: L − L(air) has no negative eigenvalue at rest. Eddy currents only take power: neither
/// has the
/// resistance that they add, −ω·Im. And a current always stores something: Re L(f) has none. Collocation on coarse surfaces does not hold
/// these by itself.
/// All shares are of the windings' own air inductances, so that turns do not weigh.
/// </remarks>
internal static class Passivity
{
    /// <summary>Least part of an air inductance that eddy currents leave of it.</summary>
    private const double LeastLeft = 1e-4;

    /// <summary>
    /// The worst breach as a share of what the cores do; 0 for a passive solution, infinite for one that is not even finite.
    /// </summary>
    public static double Breach(FieldSolution solution)
    {
        if (!IsFinite(solution))
        {
            return double.PositiveInfinity;
        }

        double worst = 0;
        foreach ((Matrix<double> share, double least) in Shares(solution))
        {
            MathNet.Numerics.LinearAlgebra.Vector<double> eigen = share.Evd(Symmetricity.Symmetric).EigenValues.Real();
            worst = Math.Max(worst, (least - eigen.Minimum()) / Math.Max(CoresShare(solution), 1e-3));
        }

        return worst;
    }

    /// <summary>The nearest passive solution; what had to be moved is laid on the half-widths of the intervals.</summary>
    public static FieldSolution Nearest(FieldSolution solution)
    {
        double[] scale = Scale(solution);
        double[,] cores = Moved(Normal(scale, (i, j) => solution.StaticInductanceH[i, j] - solution.AirInductanceH[i, j]), 0);
        int n = scale.Length;
        double[,] still = new double[n, n],
            spread = (double[,])solution.InductanceSpreadH.Clone();
        Each(n, (i, j) =>
        {
            still[i, j] = solution.AirInductanceH[i, j] + cores[i, j] * scale[i] * scale[j];
            spread[i, j] = Wider(spread[i, j], still[i, j] - solution.StaticInductanceH[i, j]);
        });
        Complex[][,] spectrum = new Complex[solution.SpectrumH.Count][,],
            spreads = new Complex[spectrum.Length][,];
        for (int k = 0; k < spectrum.Length; k++)
        {
            Complex[,] before = solution.SpectrumH[k],
                now = spectrum[k] = new Complex[n, n];
            Complex[,] wide = spreads[k] =
                solution.SpectrumSpreadH.Count > 0 ? (Complex[,])solution.SpectrumSpreadH[k].Clone() : new Complex[n, n];
            double[,] loss = Moved(Normal(scale, (i, j) => -before[i, j].Imaginary), 0),
                stored = Moved(Normal(scale, (i, j) => before[i, j].Real), LeastLeft);
            Each(n, (i, j) =>
            {
                now[i, j] = new Complex(stored[i, j], -loss[i, j]) * scale[i] * scale[j];
                Complex moved = now[i, j] - before[i, j];
                wide[i, j] = new Complex(Wider(wide[i, j].Real, moved.Real), Wider(wide[i, j].Imaginary, moved.Imaginary));
            });
        }

        return solution with
        {
            StaticInductanceH = still,
            InductanceSpreadH = spread,
            SpectrumH = spectrum,
            SpectrumSpreadH = spreads,
        };
    }

    public static bool IsFinite(FieldSolution solution) =>
        solution
            .StaticInductanceH.Cast<double>()
            .Concat(solution.AirInductanceH.Cast<double>())
            .Concat(solution.EffectiveAreaM2)
            .All(double.IsFinite) && solution.SpectrumH.All(matrix => matrix.Cast<Complex>().All(Complex.IsFinite));

    private static IEnumerable<(Matrix<double> Share, double Least)> Shares(FieldSolution solution)
    {
        double[] scale = Scale(solution);
        yield return (Normal(scale, (i, j) => solution.StaticInductanceH[i, j] - solution.AirInductanceH[i, j]), 0);
        foreach (Complex[,] matrix in solution.SpectrumH)
        {
            yield return (Normal(scale, (i, j) => -matrix[i, j].Imaginary), 0);
            yield return (Normal(scale, (i, j) => matrix[i, j].Real), LeastLeft);
        }
    }

    private static double CoresShare(FieldSolution solution)
    {
        double[] scale = Scale(solution);
        return Enumerable
            .Range(0, scale.Length)
            .Max(i => Math.Abs(solution.StaticInductanceH[i, i] - solution.AirInductanceH[i, i]) / (scale[i] * scale[i]));
    }

    private static double[] Scale(FieldSolution solution) =>
        [.. Enumerable.Range(0, solution.EffectiveAreaM2.Length).Select(i => Math.Sqrt(solution.AirInductanceH[i, i]))];

    /// <summary>The even part of a matrix over the windings' own air inductances.</summary>
    private static Matrix<double> Normal(double[] scale, Func<int, int, double> element) =>
        Matrix<double>.Build.Dense(scale.Length, scale.Length, (i, j) => (element(i, j) + element(j, i)) / (2 * scale[i] * scale[j]));

    /// <summary>The nearest symmetric matrix without an eigenvalue below the least.</summary>
    private static double[,] Moved(Matrix<double> matrix, double least)
    {
        Evd<double> evd = matrix.Evd(Symmetricity.Symmetric);
        MathNet.Numerics.LinearAlgebra.Vector<double> eigen = evd.EigenValues.Real();
        if (eigen.Minimum() >= least)
        {
            return matrix.ToArray();
        }

        Matrix<double> held = Matrix<double>.Build.DenseOfDiagonalVector(eigen.Map(value => Math.Max(least, value)));
        return (evd.EigenVectors * held * evd.EigenVectors.Transpose()).ToArray();
    }

    private static double Wider(double half, double moved)
    {
        double sign = Math.Abs(half) > 0 ? half : moved;
        return Math.Abs(moved) > 0 ? Math.CopySign(Math.Sqrt(half * half + moved * moved), sign) : half;
    }

    private static void Each(int n, Action<int, int> each)
    {
        for (int k = 0; k < n * n; k++)
        {
            each(k / n, k % n);
        }
    }
}
