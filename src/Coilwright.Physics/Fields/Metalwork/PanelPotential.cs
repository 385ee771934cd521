namespace Coilwright.Physics.Fields.Metalwork;

/// <summary>Mean of 1/R between two panels of thin sheets, 1/m.</summary>
internal static class PanelPotential
{
    /// <summary>Panels farther apart than this many sizes act by their middles.</summary>
    private const double NearSizes = 2.5;

    /// <summary>A panel with itself; the thickness enters by the mean distance t/3 of two points in it.</summary>
    public static double Self(SheetPanel panel)
    {
        double a = 2 * panel.HalfRoundM, b = 2 * panel.HalfOutM, diagonal = Math.Sqrt(a * a + b * b);
        double flat = 2 / (3 * a * a * b * b)
            * (3 * a * a * b * Math.Asinh(b / a) + 3 * a * b * b * Math.Asinh(a / b) + a * a * a + b * b * b - diagonal * diagonal * diagonal);
        return Math.Max(flat / 2, flat - 2 * Math.PI * panel.ThicknessM / (3 * panel.AreaM2));
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

        return 0.5 * (At(other, new Vector3M(dx, dy, dz)) + At(one, new Vector3M(-mirrorX * dx, -mirrorY * dy, -dz)));
    }

    /// <summary>Mean of 1/R over a panel, from a place given relative to its middle: the rectangle's closed form.</summary>
    private static double At(SheetPanel panel, Vector3M away)
    {
        double u = Space.Dot(away, panel.RoundUnit), v = Space.Dot(away, panel.OutUnit);
        double n = Math.Max(Math.Abs(Space.Dot(away, panel.Normal)), panel.ThicknessM / 3);
        double sum = 0;
        for (int corner = 0; corner < 4; corner++)
        {
            int signU = corner % 2 == 0 ? 1 : -1, signV = corner < 2 ? 1 : -1;
            double x = u + signU * panel.HalfRoundM, y = v + signV * panel.HalfOutM, r = Math.Sqrt(x * x + y * y + n * n);
            sum += signU * signV * (x * Log(y, r, x * x + n * n) + y * Log(x, r, y * y + n * n) - n * Math.Atan(x * y / (n * r)));
        }

        return sum / panel.AreaM2;
    }

    /// <summary>ln(a + R) without cancellation.</summary>
    private static double Log(double a, double r, double square) => a >= 0 ? Math.Log(a + r) : Math.Log(square / (r - a));
}
