namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// Field strength of a ring about the z axis whose charge goes around it as 1, cos φ, cos 2φ …, by Legendre functions of half order.
/// </summary>
/// <remarks>
/// The potential is G_m(ρ, z)·cos mφ/8π² with G_m = 2Q_{m−½}(χ)/√(aρ), χ = (ρ² + a² + z²)/2aρ. Q_{−½} and Q_{½} come from the complete
/// elliptic
/// integrals, the rest by recurrence, which loses χ⁴ of the digits; far away a series in 1/χ² takes over (standard results, from memory;
/// tested
/// against point charges).
/// </remarks>
internal static class HarmonicRingKernel
{
    private const double Factor = 1 / (4 * Math.PI * Math.PI);

    /// <summary>Beyond this χ the series is used.</summary>
    private const double Far = 60;

    /// <summary>
    /// Radial field (as cos mφ), field around (as sin mφ) and axial field (as cos mφ) of rings of unit mean charge, m = 0 … places − 1.
    /// </summary>
    /// <param name="a">Radius of the ring, m.</param>
    /// <param name="rho">Distance of the point from the axis, above zero, m.</param>
    /// <param name="z">Height of the point above the ring, m.</param>
    /// <param name="radial">One place for each m, one to eight.</param>
    /// <param name="around">The same.</param>
    /// <param name="axial">The same.</param>
    public static void Fields(double a, double rho, double z, Span<double> radial, Span<double> around, Span<double> axial)
    {
        double product = a * rho,
            sum = rho + a,
            gap = rho - a,
            zz = z * z;
        double more = (sum * sum + zz) / (2 * product),
            less = (gap * gap + zz) / (2 * product),
            chi = 1 + less;
        Span<double> q = stackalloc double[8];
        int orders = Math.Max(2, radial.Length);
        if (chi > Far)
        {
            Series(chi, q[..orders]);
        }
        else
        {
            Elliptic(less / more, more, chi, q[..orders]);
        }

        double scale = Factor / Math.Sqrt(product),
            alongRho = (gap * sum - zz) / (2 * product * rho),
            alongZ = z / product;
        for (int m = 0; m < radial.Length; m++)
        {
            double slope = (m - 0.5) / (more * less) * (chi * q[m] - q[Math.Abs(m - 1)]);
            radial[m] = scale * (q[m] / (2 * rho) - slope * alongRho);
            around[m] = scale * m * q[m] / rho;
            axial[m] = -scale * slope * alongZ;
        }
    }

    /// <param name="square">Complementary modulus squared.</param>
    /// <param name="more">χ + 1.</param>
    /// <param name="chi">χ.</param>
    /// <param name="q">Q_{m−½}, at least two.</param>
    private static void Elliptic(double square, double more, double chi, Span<double> q)
    {
        double x = 1,
            y = Math.Sqrt(square),
            lost = (1 - square) / 2,
            scale = 0.5;
        for (int step = 0; step < 12; step++)
        {
            double c = (x - y) / 2;
            if (c < 1e-9 * x)
            {
                break;
            }

            (x, y) = ((x + y) / 2, Math.Sqrt(x * y));
            scale *= 2;
            lost += scale * c * c;
        }

        double first = Math.PI / (x + y),
            second = first * (1 - lost),
            k = Math.Sqrt(2 / more);
        (q[0], q[1]) = (k * first, chi * k * first - 2 / k * second);
        for (int m = 1; m < q.Length - 1; m++)
        {
            q[m + 1] = (2 * m * chi * q[m] - (m - 0.5) * q[m - 1]) / (m + 0.5);
        }
    }

    private static void Series(double chi, Span<double> q)
    {
        double x = 1 / (chi * chi),
            front = Math.PI / Math.Sqrt(2 * chi);
        for (int m = 0; m < q.Length; m++)
        {
            double term = 1,
                sum = 1;
            for (int n = 0; n < 4; n++)
            {
                term *= (m / 2.0 + 0.75 + n) * (m / 2.0 + 0.25 + n) / ((m + 1.0 + n) * (n + 1)) * x;
                sum += term;
            }

            q[m] = front * sum;
            front *= (m + 0.5) / ((m + 1) * 2 * chi);
        }
    }
}
