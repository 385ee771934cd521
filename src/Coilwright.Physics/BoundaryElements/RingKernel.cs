namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// Field strength of a ring of unit magnetic charge about the z axis, by complete elliptic integrals (arithmetic-geometric mean).
/// </summary>
internal static class RingKernel
{
    private const double Factor = 1 / (2 * Math.PI * Math.PI);

    /// <summary>Beyond four radii the series is taken: its first term left out is then at most 4e-5 of the field.</summary>
    private const double FarSquare = 16;

    /// <summary>Radial and axial field at radius rho and height z above the plane of a ring of radius a; all above zero but z.</summary>
    public static (double Radial, double Axial) Field(double a, double rho, double z)
    {
        double square = rho * rho + z * z;
        if (square > FarSquare * a * a)
        {
            return FarField(a * a / square, rho, z, square);
        }

        double sum = rho + a,
            gap = rho - a,
            zz = z * z;
        double far = sum * sum + zz,
            near = gap * gap + zz,
            outer = Math.Sqrt(far);
        // Descending Landen steps from 1 and k' give K; the weighted sum of c² gives E.
        double x = 1,
            y = Math.Sqrt(near / far),
            lost = (1 - y * y) / 2,
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
            second = first * (1 - lost);
        return (Factor / (2 * rho * outer) * (first + (rho * rho - a * a - zz) / near * second), Factor * z * second / (outer * near));
    }

    /// <summary>The ring as a point charge with its even moments up to the sixth; <paramref name="t"/> is (a/r)².</summary>
    private static (double Radial, double Axial) FarField(double t, double rho, double z, double square)
    {
        double r = Math.Sqrt(square),
            c = z / r,
            cc = c * c,
            point = 1 / (4 * Math.PI * square);
        double p3 = (5 * cc - 3) / 2,
            p5 = ((63 * cc - 70) * cc + 15) / 8,
            p7 = (((429 * cc - 693) * cc + 315) * cc - 35) / 16;
        double d3 = (15 * cc - 3) / 2,
            d5 = ((315 * cc - 210) * cc + 15) / 8,
            d7 = (((3003 * cc - 3465) * cc + 945) * cc - 35) / 16;
        double axial = c * (1 + t * (-1.5 * p3 + t * (1.875 * p5 - t * 2.1875 * p7)));
        double radial = rho / r * (1 + t * (-0.5 * d3 + t * (0.375 * d5 - t * 0.3125 * d7)));
        return (point * radial, point * axial);
    }
}
