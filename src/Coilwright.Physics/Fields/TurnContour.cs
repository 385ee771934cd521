using Coilwright.Physics.Winding;

namespace Coilwright.Physics.Fields;

/// <summary>One turn as a closed chain of straight chords, with points to integrate along it. Metres.</summary>
internal sealed class TurnContour
{
    private const int ChordsPerQuarter = 24;

    private static readonly double[] GaussAt = [-0.9602898564975363, -0.7966664774136267, -0.5255324099163290, -0.1834346424956498, 0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363];
    private static readonly double[] GaussWeight = [0.1012285362903763, 0.2223810344533745, 0.3137066458778873, 0.3626837833783620, 0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763];

    /// <summary>Builds the turn at a distance outside the former; the chords of all turns lie at the same angles.</summary>
    public TurnContour(Bobbin bobbin, double distanceM)
    {
        double a = bobbin.LongStraightM / 2, c = bobbin.ShortStraightM / 2, r = bobbin.EndRadiusM + distanceM;
        // Corners of the chain lie a little outside the arc so that its length equals the arc's to fourth order.
        double step = Math.PI / 2 / ChordsPerQuarter, outer = r * (step / 2) / Math.Sin(step / 2);
        List<(double X, double Y)> corners = [];
        (double X, double Y)[] centres = [(a, c), (-a, c), (-a, -c), (a, -c)];
        for (int quarter = 0; quarter < 4; quarter++)
        {
            for (int i = 0; i <= ChordsPerQuarter; i++)
            {
                double angle = quarter * Math.PI / 2 + i * step;
                corners.Add((centres[quarter].X + outer * Math.Cos(angle), centres[quarter].Y + outer * Math.Sin(angle)));
            }
        }

        (X, Y) = ([.. corners.Select(p => p.X)], [.. corners.Select(p => p.Y)]);
        Points = [.. PointsAlong()];
    }

    public double[] X { get; }
    public double[] Y { get; }

    /// <summary>Points with their vector line element.</summary>
    public IReadOnlyList<(double X, double Y, double Dx, double Dy)> Points { get; }

    /// <summary>Neumann's double integral with another turn shifted by (sx, sy, sz): mutual inductance, H.</summary>
    public double MutualH(TurnContour other, double sx, double sy, double sz)
    {
        double sum = 0;
        foreach ((double x, double y, double dx, double dy) in Points)
        {
            (double ax, double ay) = other.Potential(x - sx, y - sy, sz);
            sum += ax * dx + ay * dy;
        }

        return 1e-7 * sum;
    }

    /// <summary>z component of H per ampere at (x, y), a height z above the turn: law of Biot and Savart for each chord in closed form, 1/m.</summary>
    public double AxialFieldPerM(double x, double y, double z)
    {
        double sum = 0, zz = z * z;
        double px = X[^1] - x, py = Y[^1] - y, before = Math.Sqrt(px * px + py * py + zz);
        for (int i = 0; i < X.Length; i++)
        {
            double qx = X[i] - x, qy = Y[i] - y, after = Math.Sqrt(qx * qx + qy * qy + zz);
            double cross = px * qy - py * qx, product = before * after;
            double below = product * (product + px * qx + py * qy + zz);
            sum += below > 0 ? cross * (before + after) / below : 0;
            (px, py, before) = (qx, qy, after);
        }

        return sum / (4 * Math.PI);
    }

    /// <summary>Σ over chords of unit vector × ∫ ds/r: closed form ln((R1 + R2 + l)/(R1 + R2 − l)).</summary>
    private (double X, double Y) Potential(double x, double y, double z)
    {
        double ax = 0, ay = 0, zz = z * z;
        double px = X[^1] - x, py = Y[^1] - y, before = Math.Sqrt(px * px + py * py + zz);
        for (int i = 0; i < X.Length; i++)
        {
            double qx = X[i] - x, qy = Y[i] - y, after = Math.Sqrt(qx * qx + qy * qy + zz);
            double ex = qx - px, ey = qy - py, length = Math.Sqrt(ex * ex + ey * ey);
            if (length > 1e-12)
            {
                double log = Math.Log((before + after + length) / (before + after - length)) / length;
                ax += ex * log;
                ay += ey * log;
            }

            (px, py, before) = (qx, qy, after);
        }

        return (ax, ay);
    }

    /// <summary>Chords of the arcs by their middles, straights by Gauss on each half.</summary>
    private IEnumerable<(double X, double Y, double Dx, double Dy)> PointsAlong()
    {
        for (int i = 0; i < X.Length; i++)
        {
            int before = (i + X.Length - 1) % X.Length;
            double ex = X[i] - X[before], ey = Y[i] - Y[before];
            if (i % (ChordsPerQuarter + 1) != 0)
            {
                yield return (X[before] + ex / 2, Y[before] + ey / 2, ex, ey);
                continue;
            }

            for (int half = 0; half < 2 && ex * ex + ey * ey > 1e-24; half++)
            {
                for (int g = 0; g < GaussAt.Length; g++)
                {
                    double t = (half + (1 + GaussAt[g]) / 2) / 2;
                    yield return (X[before] + ex * t, Y[before] + ey * t, ex * GaussWeight[g] / 4, ey * GaussWeight[g] / 4);
                }
            }
        }
    }
}
