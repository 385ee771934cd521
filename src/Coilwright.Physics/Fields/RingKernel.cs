namespace Coilwright.Physics.Fields;

/// <summary>Field strength of a ring of unit magnetic charge about the z axis, by complete elliptic integrals (arithmetic-geometric mean).</summary>
internal static class RingKernel
{
    private const double Factor = 1 / (2 * Math.PI * Math.PI);

    /// <summary>Radial and axial field at radius rho and height z above the plane of a ring of radius a; all above zero but z.</summary>
    public static (double Radial, double Axial) Field(double a, double rho, double z)
    {
        double sum = rho + a, gap = rho - a, zz = z * z;
        double far = sum * sum + zz, near = gap * gap + zz, outer = Math.Sqrt(far);
        // Descending Landen steps from 1 and k' give K; the weighted sum of c² gives E.
        double x = 1, y = Math.Sqrt(near / far), lost = (1 - y * y) / 2, scale = 0.5;
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

        double first = Math.PI / (x + y), second = first * (1 - lost);
        return (Factor / (2 * rho * outer) * (first + (rho * rho - a * a - zz) / near * second), Factor * z * second / (outer * near));
    }
}
