namespace Coilwright.Physics.Strings;

/// <summary>Places along a string where its magnetisation is solved: close together over the coils, wide apart away from them.</summary>
public sealed class StringGrid
{
    private const double ReachM = 0.020;
    private const double WidthM = 0.004;

    private StringGrid(double[] yM, bool isHalf)
    {
        (YM, IsHalf) = (yM, isHalf);
        WeightM = new double[yM.Length];
        for (int i = 0; i < yM.Length; i++)
        {
            WeightM[i] = (yM[Math.Min(i + 1, yM.Length - 1)] - yM[Math.Max(i - 1, 0)]) / (isHalf ? 1 : 2);
        }
    }

    /// <summary>Places along y, ascending, m; the magnetisation is zero at both ends.</summary>
    public double[] YM { get; }

    /// <summary>Length of string that each place stands for, m; its mirror image included on a half grid.</summary>
    public double[] WeightM { get; }

    /// <summary>True when the first place is a plane of symmetry: the magnetisation at −y is minus that at y.</summary>
    public bool IsHalf { get; }

    /// <summary>A grid over coils whose middles lie at these y, reaching 20 mm beyond them.</summary>
    /// <param name="coilsYM">y of each coil's middle, m, at least one.</param>
    /// <param name="segments">Number of segments, 10…400; 60 over one coil come within 0.3 % of many more.</param>
    /// <param name="symmetric">True when windings and magnets are mirror images of themselves in the plane y of the one coil: half the
    /// work.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of segments lies outside its range.</exception>
    public static StringGrid Over(IReadOnlyList<double> coilsYM, int segments, bool symmetric = false)
    {
        Require.InRange(segments, 10, 400);
        double from = symmetric ? coilsYM[0] : coilsYM.Min() - ReachM,
            to = coilsYM.Max() + ReachM;
        double[] y = new double[(symmetric ? (segments + 1) / 2 : segments) + 1];
        int last = y.Length - 1;
        (y[0], y[last]) = (from, to);
        double whole = Crowd(coilsYM, from, to);
        for (int i = 1; i < last; i++)
        {
            double wanted = whole * i / last,
                low = from,
                high = to;
            for (int step = 0; step < 50; step++)
            {
                double middle = (low + high) / 2;
                (low, high) = Crowd(coilsYM, from, middle) < wanted ? (middle, high) : (low, middle);
            }

            y[i] = (low + high) / 2;
        }

        return new StringGrid(y, symmetric);
    }

    /// <summary>Integral of the wanted density: a Lorentz curve 4 mm wide over each coil on a low floor.</summary>
    private static double Crowd(IReadOnlyList<double> coilsYM, double from, double to) =>
        0.15 * (to - from) + coilsYM.Sum(y => WidthM * (Math.Atan((to - y) / WidthM) - Math.Atan((from - y) / WidthM)));
}
