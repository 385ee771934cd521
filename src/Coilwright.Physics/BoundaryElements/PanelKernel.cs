namespace Coilwright.Physics.BoundaryElements;

/// <summary>Field strength of an evenly charged rectangle, closed form.</summary>
internal static class PanelKernel
{
    /// <summary>
    /// Beyond five half diagonals the rectangle acts by its charge and its second moments; what is left out is below 5e-4.
    /// </summary>
    public const double FarSquare = 25;

    /// <summary>
    /// Field components along the rectangle's sides (half lengths p and q) and its normal, at (u, v, n) from its middle, unit density.
    /// </summary>
    public static (double U, double V, double N) Field(double p, double q, double u, double v, double n)
    {
        double square = u * u + v * v + n * n;
        if (square > FarSquare * (p * p + q * q))
        {
            return Far(p, q, u, v, n, square);
        }

        double u1 = u - p,
            u2 = u + p,
            v1 = v - q,
            v2 = v + q,
            nn = n * n;
        double r11 = Math.Sqrt(u1 * u1 + v1 * v1 + nn),
            r12 = Math.Sqrt(u1 * u1 + v2 * v2 + nn);
        double r21 = Math.Sqrt(u2 * u2 + v1 * v1 + nn),
            r22 = Math.Sqrt(u2 * u2 + v2 * v2 + nn);
        // ∫ U/R³ over the rectangle: 1/R at both ends of u, then a logarithm along v.
        double alongU = Math.Log(Span(v1, v2, r11, r12, u1 * u1 + nn) / Span(v1, v2, r21, r22, u2 * u2 + nn));
        double alongV = Math.Log(Span(u1, u2, r11, r21, v1 * v1 + nn) / Span(u1, u2, r12, r22, v2 * v2 + nn));
        double normal = Math.Abs(n) < 1e-12 ? 0 : SolidAngle(u1, u2, v1, v2, n, r11, r12, r21, r22);
        const double Quarter = 1 / (4 * Math.PI);
        return (Quarter * alongU, Quarter * alongV, Quarter * normal);
    }

    private static (double U, double V, double N) Far(double p, double q, double u, double v, double n, double square)
    {
        double pp = p * p,
            qq = q * q,
            both = pp + qq,
            inverse = 1 / square;
        double point = p * q / (Math.PI * square * Math.Sqrt(square)),
            bent = 1 + 5.0 / 6 * inverse * (3 * inverse * (pp * u * u + qq * v * v) - both);
        double third = inverse / 3;
        return (
            point * u * (bent - third * (3 * pp - both)),
            point * v * (bent - third * (3 * qq - both)),
            point * n * (bent + third * both)
        );
    }

    /// <summary>Four arcs of tangents as the angle of one complex product; over the rectangle itself it may pass half a turn.</summary>
    private static double SolidAngle(double u1, double u2, double v1, double v2, double n, double r11, double r12, double r21, double r22)
    {
        double up = Math.Abs(n),
            a = up * r11,
            b = up * r12,
            c = up * r21,
            d = up * r22;
        double p = u1 * v1,
            q = -u1 * v2,
            r = -u2 * v1,
            s = u2 * v2;
        (double x, double y) = (a * b - p * q, a * q + b * p);
        (double z, double w) = (c * d - r * s, c * s + d * r);
        double angle = Math.Atan2(x * w + y * z, x * z - y * w);
        bool over = u1 < 0 && u2 > 0 && v1 < 0 && v2 > 0;
        return (n < 0 ? -1 : 1) * (over && angle < 0 ? angle + 2 * Math.PI : angle);
    }

    /// <summary>(b + Rb)/(a + Ra) without cancellation.</summary>
    private static double Span(double a, double b, double ra, double rb, double square)
    {
        if (b <= 0)
        {
            return (ra - a) / (rb - b);
        }

        return a >= 0 ? (b + rb) / (a + ra) : (b + rb) * (ra - a) / square;
    }
}
