namespace Coilwright.Physics.Fields;

/// <summary>What the fast engine misses, as ratios to the accurate one at one design; carried over to designs nearby.</summary>
/// <remarks>One ratio for the air's share and one for the cores' share of each inductance, and one for each area. Nearly real, so losses take the cores' ratio too.</remarks>
public sealed record FieldCalibration
{
    /// <summary>A ratio beyond this is no small correction: the two solutions are not of one design.</summary>
    private const double MostRatio = 1.3;

    /// <summary>Accurate over fast, by coil.</summary>
    public required double[,] Air { get; init; }
    public required double[,] Cores { get; init; }
    public required double[] Area { get; init; }

    /// <summary>Ratios of two solutions of the same problem; null if they differ in coils or too far in value.</summary>
    public static FieldCalibration? Of(FieldSolution accurate, FieldSolution fast)
    {
        int n = fast.EffectiveAreaM2.Length;
        if (accurate.EffectiveAreaM2.Length != n)
        {
            return null;
        }

        FieldCalibration made = new()
        {
            Air = Each(n, (i, j) => Ratio(accurate.AirInductanceH[i, j], fast.AirInductanceH[i, j], 0)),
            Cores = Each(n, (i, j) => Ratio(CoresOf(accurate, i, j), CoresOf(fast, i, j), Math.Abs(fast.AirInductanceH[i, j]))),
            Area = [.. accurate.EffectiveAreaM2.Zip(fast.EffectiveAreaM2, (a, f) => Ratio(a, f, 0))],
        };
        bool Near(double ratio) => ratio is < MostRatio and > 1 / MostRatio;
        return made.Air.Cast<double>().Concat(made.Cores.Cast<double>()).Concat(made.Area).All(Near) ? made : null;
    }

    /// <summary>A fast solution of a design nearby, corrected; with another number of coils it stays as it is.</summary>
    public FieldSolution Correct(FieldSolution fast)
    {
        int n = fast.EffectiveAreaM2.Length;
        if (n != Area.Length)
        {
            return fast;
        }

        return fast with
        {
            AirInductanceH = Each(n, (i, j) => Air[i, j] * fast.AirInductanceH[i, j]),
            StaticInductanceH = Each(n, (i, j) => Air[i, j] * fast.AirInductanceH[i, j] + Cores[i, j] * CoresOf(fast, i, j)),
            SpectrumH = [.. fast.SpectrumH.Select(matrix => Each(n, (i, j) => Air[i, j] * fast.AirInductanceH[i, j] + Cores[i, j] * (matrix[i, j] - fast.AirInductanceH[i, j])))],
            Gradient = fast.Gradient is { } slope ? slope with { M3 = Scaled(slope.M3) } : null,
            EffectiveAreaM2 = [.. fast.EffectiveAreaM2.Zip(Area, (area, ratio) => area * ratio)],
        };
    }

    private double[,] Scaled(double[,] byCoil)
    {
        double[,] scaled = new double[byCoil.GetLength(0), byCoil.GetLength(1)];
        for (int k = 0; k < scaled.Length; k++)
        {
            (int coil, int axis) = (k / byCoil.GetLength(1), k % byCoil.GetLength(1));
            scaled[coil, axis] = Area[coil] * byCoil[coil, axis];
        }

        return scaled;
    }

    private static double CoresOf(FieldSolution solution, int i, int j) => solution.StaticInductanceH[i, j] - solution.AirInductanceH[i, j];

    /// <summary>1 where there is next to nothing to correct.</summary>
    private static double Ratio(double accurate, double fast, double beside) => Math.Abs(fast) > 1e-6 * beside && Math.Abs(fast) > 0 ? accurate / fast : 1;

    private static T[,] Each<T>(int n, Func<int, int, T> value)
    {
        T[,] made = new T[n, n];
        for (int k = 0; k < n * n; k++)
        {
            made[k / n, k % n] = value(k / n, k % n);
        }

        return made;
    }
}
