namespace Coilwright.Physics.Fields;

/// <summary>Field strength of an evenly charged rectangle, closed form.</summary>
internal static class PanelKernel
{
    /// <summary>Field components along the rectangle's sides (half lengths p and q) and its normal, at (u, v, n) from its middle, unit density.</summary>
    public static (double U, double V, double N) Field(double p, double q, double u, double v, double n)
    {
        double area = 4 * p * q, square = u * u + v * v + n * n;
        if (square > 49 * (p * p + q * q))
        {
            double point = area / (4 * Math.PI * square * Math.Sqrt(square));
            return (u * point, v * point, n * point);
        }

        double u1 = u - p, u2 = u + p, v1 = v - q, v2 = v + q, nn = n * n;
        double r11 = Math.Sqrt(u1 * u1 + v1 * v1 + nn), r12 = Math.Sqrt(u1 * u1 + v2 * v2 + nn);
        double r21 = Math.Sqrt(u2 * u2 + v1 * v1 + nn), r22 = Math.Sqrt(u2 * u2 + v2 * v2 + nn);
        // ∫ U/R³ over the rectangle: 1/R at both ends of u, then a logarithm along v.
        double alongU = Span(v1, v2, r11, r12, u1 * u1 + nn) - Span(v1, v2, r21, r22, u2 * u2 + nn);
        double alongV = Span(u1, u2, r11, r21, v1 * v1 + nn) - Span(u1, u2, r12, r22, v2 * v2 + nn);
        double normal = Math.Abs(n) < 1e-12 ? 0
            : Math.Atan(u2 * v2 / (n * r22)) - Math.Atan(u1 * v2 / (n * r12)) - Math.Atan(u2 * v1 / (n * r21)) + Math.Atan(u1 * v1 / (n * r11));
        const double Quarter = 1 / (4 * Math.PI);
        return (Quarter * alongU, Quarter * alongV, Quarter * normal);
    }

    /// <summary>ln((b + Rb)/(a + Ra)) without cancellation.</summary>
    private static double Span(double a, double b, double ra, double rb, double square) =>
        Math.Log(b <= 0 ? (ra - a) / (rb - b) : a >= 0 ? (b + rb) / (a + ra) : (b + rb) * (ra - a) / square);
}
