namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>Mean of 1/R between two panels of thin sheets, each as thick as its sheet, 1/m.</summary>
/// <remarks>
/// Near ones by the closed form of a flat rectangle, averaged over Gauss points of the other and over the distance of two depths; far ones
/// by their middles
/// and second moments, which a mean by the middles alone would lack: that lost 2 % of a plate's loss at 20 kHz.
/// </remarks>
internal static class PanelPotential
{
    /// <summary>Panels farther apart than this many sizes act by their middles and second moments.</summary>
    private const double NearSizes = 1.75;

    /// <summary>
    /// Points of the distance u of two depths in a thickness 0…1, whose density is 2(1 − u); u = s³, since the potential has a logarithm at
    /// 0.
    /// </summary>
    private static readonly (double At, double Weight)[] Depths = [.. Enumerable.Range(0, 4).Select(k => Depth(GaussRule.WithNodes(4), k))];

    /// <summary>
    /// Points of a panel, as shares of its half sides, and their weights: three along the longer, two along the shorter side.
    /// </summary>
    private static readonly (double Long, double Short, double Weight)[] Points = [.. Spots(3, 2)];

    /// <summary>The same for a panel's own potential, which bends most at its rim.</summary>
    private static readonly (double Long, double Short, double Weight)[] OwnPoints = [.. Spots(6, 6)];

    /// <summary>A panel with itself.</summary>
    public static double Self(SheetPanel panel)
    {
        double sum = 0;
        foreach ((double u, double v, double share) in OwnPoints)
        {
            sum += share * Through(panel, u * panel.HalfRoundM, v * panel.HalfOutM, 0);
        }

        return sum;
    }

    /// <summary>Two panels, the first mirrored into another quarter by the signs of its x and y.</summary>
    public static double Between(SheetPanel one, SheetPanel other, int mirrorX, int mirrorY)
    {
        Vector3M away = new(
            mirrorX * one.Centre.XM - other.Centre.XM,
            mirrorY * one.Centre.YM - other.Centre.YM,
            one.Centre.ZM - other.Centre.ZM
        );
        double square = Space.Dot(away, away),
            reach = NearSizes * Math.Max(one.SizeM, other.SizeM);
        if (square > reach * reach)
        {
            double bent = one.Moments.Along(new Vector3M(mirrorX * away.XM, mirrorY * away.YM, away.ZM)) + other.Moments.Along(away);
            return (1 + (3 * bent / square - one.Moments.Trace - other.Moments.Trace) / (2 * square)) / Math.Sqrt(square);
        }

        // The mirror is put on the points: the panels themselves stay where they are.
        Vector3M Mirrored(Vector3M v) => new(mirrorX * v.XM, mirrorY * v.YM, v.ZM);
        double ofOther = 0,
            ofOne = 0;
        foreach ((double along, double across, double share) in Points)
        {
            ofOther +=
                share
                * At(other, Space.Plus(away, Mirrored(Space.Plus(Space.Times(one.LongHalf, along), Space.Times(one.ShortHalf, across)))));
            ofOne +=
                share
                * At(
                    one,
                    Mirrored(Space.Minus(Space.Plus(Space.Times(other.LongHalf, along), Space.Times(other.ShortHalf, across)), away))
                );
        }

        return (ofOther + ofOne) / 2;
    }

    /// <summary>
    /// Mean of 1/R from a panel to a point relative to its middle, both as thick as the sheet where they overlap in height.
    /// </summary>
    private static double At(SheetPanel panel, Vector3M at)
    {
        double u = Space.Dot(at, panel.RoundUnit),
            v = Space.Dot(at, panel.OutUnit),
            n = Math.Abs(Space.Dot(at, panel.Normal));
        return n > panel.ThicknessM ? Flat(panel, u, v, n) : Through(panel, u, v, n);
    }

    private static double Through(SheetPanel panel, double u, double v, double n)
    {
        double sum = 0;
        foreach ((double depth, double weight) in Depths)
        {
            sum += weight * Flat(panel, u, v, Math.Max(n, depth * panel.ThicknessM));
        }

        return sum;
    }

    /// <summary>Mean of 1/R over a panel, at u, v along its sides and n above it: the rectangle's closed form.</summary>
    private static double Flat(SheetPanel panel, double u, double v, double n)
    {
        double sum = 0;
        for (int corner = 0; corner < 4; corner++)
        {
            int signU = corner % 2 == 0 ? 1 : -1,
                signV = corner < 2 ? 1 : -1;
            double x = u + signU * panel.HalfRoundM,
                y = v + signV * panel.HalfOutM,
                r = Math.Sqrt(x * x + y * y + n * n);
            sum +=
                signU
                * signV
                * (x * Log(y, r, x * x + n * n) + y * Log(x, r, y * y + n * n) - (n > 0 ? n * Math.Atan(x * y / (n * r)) : 0));
        }

        return sum / panel.AreaM2;
    }

    /// <summary>ln(a + R) without cancellation.</summary>
    private static double Log(double a, double r, double square) => a >= 0 ? Math.Log(a + r) : Math.Log(square / (r - a));

    private static (double At, double Weight) Depth(GaussRule rule, int k)
    {
        double s = rule.At[k],
            u = s * s * s;
        return (u, rule.Weight[k] * 6 * s * s * (1 - u));
    }

    private static IEnumerable<(double Long, double Short, double Weight)> Spots(int along, int across)
    {
        (GaussRule a, GaussRule b) = (GaussRule.WithNodes(along), GaussRule.WithNodes(across));
        return from i in Enumerable.Range(0, along)
            from j in Enumerable.Range(0, across)
            select (2 * a.At[i] - 1, 2 * b.At[j] - 1, a.Weight[i] * b.Weight[j]);
    }
}
