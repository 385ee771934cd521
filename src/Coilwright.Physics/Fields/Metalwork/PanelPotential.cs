namespace Coilwright.Physics.Fields.Metalwork;

/// <summary>Mean of 1/R between two panels of thin sheets, 1/m.</summary>
internal static class PanelPotential
{
    /// <summary>Panels farther apart than this many sizes act by their middles.</summary>
    private const double NearSizes = 2.5;

    /// <summary>Gauss points of the distance of two points in a thickness 0…1, whose density is 2(1 − u).</summary>
    private static readonly (double At, double Weight)[] Depths = [(0.1550510257216822, 0.6360827634879543), (0.6449489742783178, 0.3639172365120457)];

    /// <summary>A panel with itself: flat in closed form, less what the thickness takes off at four points.</summary>
    public static double Self(SheetPanel panel)
    {
        double a = 2 * panel.HalfRoundM, b = 2 * panel.HalfOutM, diagonal = Math.Sqrt(a * a + b * b);
        double flat = 2 / (3 * a * a * b * b)
            * (3 * a * a * b * Math.Asinh(b / a) + 3 * a * b * b * Math.Asinh(a / b) + a * a * a + b * b * b - diagonal * diagonal * diagonal);
        double u = panel.HalfRoundM / Math.Sqrt(3), v = panel.HalfOutM / Math.Sqrt(3), drop = 0;
        foreach ((double depth, double weight) in Depths)
        {
            drop += weight * (At(panel, u, v, 0) - At(panel, u, v, depth * panel.ThicknessM));
        }

        return flat - drop;
    }

    /// <summary>Two panels, the first mirrored into another quarter by the signs of its x and y.</summary>
    public static double Between(SheetPanel one, SheetPanel other, int mirrorX, int mirrorY)
    {
        double dx = mirrorX * one.Centre.XM - other.Centre.XM, dy = mirrorY * one.Centre.YM - other.Centre.YM, dz = one.Centre.ZM - other.Centre.ZM;
        double square = dx * dx + dy * dy + dz * dz, reach = NearSizes * Math.Max(one.SizeM, other.SizeM);
        if (square > reach * reach)
        {
            return 1 / Math.Sqrt(square);
        }

        Vector3M half = new(mirrorX * one.Long.XM, mirrorY * one.Long.YM, one.Long.ZM), otherHalf = new(mirrorX * other.Long.XM, mirrorY * other.Long.YM, other.Long.ZM);
        return 0.5 * (Mean(other, new Vector3M(dx, dy, dz), half) + Mean(one, new Vector3M(-mirrorX * dx, -mirrorY * dy, -dz), otherHalf));
    }

    /// <summary>Mean of 1/R from a panel to two points about a place given relative to its middle.</summary>
    private static double Mean(SheetPanel panel, Vector3M away, Vector3M half)
    {
        double sum = 0;
        for (int side = -1; side <= 1; side += 2)
        {
            Vector3M at = Space.Plus(away, Space.Times(half, side));
            double u = Space.Dot(at, panel.RoundUnit), v = Space.Dot(at, panel.OutUnit), n = Math.Abs(Space.Dot(at, panel.Normal));
            if (n > panel.ThicknessM)
            {
                sum += At(panel, u, v, n);
                continue;
            }

            foreach ((double depth, double weight) in Depths)
            {
                sum += weight * At(panel, u, v, Math.Max(n, depth * panel.ThicknessM));
            }
        }

        return sum / 2;
    }

    /// <summary>Mean of 1/R over a panel, at u, v along its sides and n above it: the rectangle's closed form.</summary>
    private static double At(SheetPanel panel, double u, double v, double n)
    {
        double sum = 0;
        for (int corner = 0; corner < 4; corner++)
        {
            int signU = corner % 2 == 0 ? 1 : -1, signV = corner < 2 ? 1 : -1;
            double x = u + signU * panel.HalfRoundM, y = v + signV * panel.HalfOutM, r = Math.Sqrt(x * x + y * y + n * n);
            sum += signU * signV * (x * Log(y, r, x * x + n * n) + y * Log(x, r, y * y + n * n) - (n > 0 ? n * Math.Atan(x * y / (n * r)) : 0));
        }

        return sum / panel.AreaM2;
    }

    /// <summary>ln(a + R) without cancellation.</summary>
    private static double Log(double a, double r, double square) => a >= 0 ? Math.Log(a + r) : Math.Log(square / (r - a));
}
