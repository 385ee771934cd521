namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// One turn about its own centre: half straights a (along x) and c (along y), corner radius r, m; arcs as points with their vector line
/// elements.
/// </summary>
internal sealed class LoopFilament
{
    public LoopFilament(double a, double c, double r, int nodesPerQuarter)
    {
        (A, C, R) = (a, c, r);
        ArcRule rule = ArcNodes.WithNodes(nodesPerQuarter).Quarter;
        int n = 4 * nodesPerQuarter;
        (X, Y, Dx, Dy) = (new double[n], new double[n], new double[n], new double[n]);
        for (int quarter = 0, k = 0; quarter < 4; quarter++)
        {
            double centreX = quarter is 0 or 3 ? a : -a,
                centreY = quarter < 2 ? c : -c;
            (double turnCos, double turnSin) = quarter switch
            {
                0 => (1.0, 0.0),
                1 => (0.0, 1.0),
                2 => (-1.0, 0.0),
                _ => (0.0, -1.0),
            };
            for (int i = 0; i < nodesPerQuarter; i++, k++)
            {
                double cos = turnCos * rule.Cos[i] - turnSin * rule.Sin[i],
                    sin = turnSin * rule.Cos[i] + turnCos * rule.Sin[i];
                (X[k], Y[k]) = (centreX + r * cos, centreY + r * sin);
                (Dx[k], Dy[k]) = (-r * sin * rule.Weight[i], r * cos * rule.Weight[i]);
            }
        }
    }

    public double A { get; }
    public double C { get; }
    public double R { get; }
    public double[] X { get; }
    public double[] Y { get; }
    public double[] Dx { get; }
    public double[] Dy { get; }
}

/// <summary>
/// Neumann's integral between two turns whose centres lie apart by (sx, sy, sz); times µ0/4π it is the mutual inductance.
/// </summary>
internal static class ApartLoops
{
    public static double Integral(LoopFilament one, LoopFilament other, double sx, double sy, double sz) =>
        Bars(one.A, one.C + one.R, other.A, other.C + other.R, sx, sy, sz)
        + Bars(one.C, one.A + one.R, other.C, other.A + other.R, sy, sx, sz)
        + ArcsInBars(one, other, sx, sy, sz)
        + ArcsInBars(other, one, -sx, -sy, -sz)
        + Arcs(one, other, sx, sy, sz);

    /// <summary>Parallel straights of half lengths l1 and l2 at ±w1 and ±w2, shifted by s along and t across.</summary>
    private static double Bars(double l1, double w1, double l2, double w2, double s, double t, double z)
    {
        if (l1 <= 0 || l2 <= 0)
        {
            return 0;
        }

        double sum = 0;
        for (int sides = 0; sides < 4; sides++)
        {
            int first = sides < 2 ? 1 : -1,
                second = sides % 2 == 0 ? 1 : -1;
            double across = t + second * w2 - first * w1,
                square = across * across + z * z;
            sum +=
                first
                * second
                * (Edge(s + l2 + l1, square) - Edge(s + l2 - l1, square) - Edge(s - l2 + l1, square) + Edge(s - l2 - l1, square));
        }

        return sum;
    }

    /// <summary>Twofold integral of 1/√(x² + ρ²).</summary>
    private static double Edge(double x, double square) =>
        (square > 0 ? x * Math.Asinh(x / Math.Sqrt(square)) : 0) - Math.Sqrt(x * x + square);

    private static double ArcsInBars(LoopFilament arcs, LoopFilament bars, double sx, double sy, double sz)
    {
        double sum = 0,
            zz = sz * sz,
            wide = bars.C + bars.R,
            tall = bars.A + bars.R;
        for (int i = 0; i < arcs.X.Length; i++)
        {
            double x = arcs.X[i] - sx,
                y = arcs.Y[i] - sy;
            if (bars.A > 0)
            {
                // The straight at +w runs toward −x.
                sum -= arcs.Dx[i] * (Line(bars.A, x, (y - wide) * (y - wide) + zz) - Line(bars.A, x, (y + wide) * (y + wide) + zz));
            }

            if (bars.C > 0)
            {
                sum += arcs.Dy[i] * (Line(bars.C, y, (x - tall) * (x - tall) + zz) - Line(bars.C, y, (x + tall) * (x + tall) + zz));
            }
        }

        return sum;
    }

    /// <summary>∫ ds/R along a bar of half length l, seen from x along it and the squared distance from its line.</summary>
    private static double Line(double l, double x, double square)
    {
        double from = l + Math.Abs(x),
            to = Math.Abs(x) - l,
            far = Math.Sqrt(from * from + square),
            near = Math.Sqrt(to * to + square);
        return to >= 0 ? Math.Log((from + far) / (to + near)) : Math.Log((from + far) * (near - to) / square);
    }

    private static double Arcs(LoopFilament one, LoopFilament other, double sx, double sy, double sz)
    {
        double sum = 0,
            zz = sz * sz;
        double[] x = other.X,
            y = other.Y,
            dx = other.Dx,
            dy = other.Dy;
        for (int i = 0; i < one.X.Length; i++)
        {
            double px = one.X[i] - sx,
                py = one.Y[i] - sy,
                rowX = 0,
                rowY = 0;
            for (int j = 0; j < x.Length; j++)
            {
                double ex = px - x[j],
                    ey = py - y[j],
                    inverse = 1 / Math.Sqrt(ex * ex + ey * ey + zz);
                rowX += dx[j] * inverse;
                rowY += dy[j] * inverse;
            }

            sum += one.Dx[i] * rowX + one.Dy[i] * rowY;
        }

        return sum;
    }
}
