using System.Runtime.Intrinsics;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// Fields of all rings of a mesh at one point, four rings at a time: the same as <see cref="RingMesh.Fields"/> ring by ring.
/// </summary>
internal sealed class RingBands
{
    private const double Factor = 1 / (4 * Math.PI * Math.PI);

    /// <summary>Beyond this χ the recurrence of four at a time would lose too many digits of the waves.</summary>
    private const double MostChi = 1000;

    private static readonly int[] Counts = [1, 2, 4, 6];
    private readonly RingMesh _mesh;
    private readonly double[][] _radius,
        _height,
        _charge;

    public RingBands(RingMesh mesh)
    {
        (_mesh, Padded) = (mesh, (mesh.Count + 3) / 4 * 4);
        (_radius, _height, _charge) = (new double[Counts.Length][], new double[Counts.Length][], new double[Counts.Length][]);
        for (int r = 0; r < Counts.Length; r++)
        {
            GaussRule rule = GaussRule.WithNodes(Counts[r]);
            (_radius[r], _height[r], _charge[r]) = (
                new double[Counts[r] * Padded],
                new double[Counts[r] * Padded],
                new double[Counts[r] * Padded]
            );
            for (int k = 0; k < Counts[r] * Padded; k++)
            {
                int band = Math.Min(k % Padded, mesh.Count - 1);
                (_radius[r][k], _height[r][k], double charge) = mesh.Filament(band, rule, k / Padded);
                _charge[r][k] = k % Padded < mesh.Count ? charge : 0;
            }
        }
    }

    /// <summary>Rings rounded up to whole fours.</summary>
    public int Padded { get; }

    /// <summary>
    /// Radial and axial field (as cos mφ) and field around (as sin mφ) at [m · <see cref="Padded"/> + ring], per unit density.
    /// </summary>
    /// <param name="rho">Distance from the axis, above zero, m.</param>
    /// <param name="z">Height above the foot of the mesh, m.</param>
    /// <param name="orders">1, 2 or 3: m = 0 … orders − 1.</param>
    /// <param name="radial">Places for all orders and rings.</param>
    /// <param name="around">The same.</param>
    /// <param name="axial">The same.</param>
    public void Fields(double rho, double z, int orders, Span<double> radial, Span<double> around, Span<double> axial)
    {
        Span<double> one = stackalloc double[3 * orders];
        for (int band = 0; band < Padded; band += 4)
        {
            if (
                _mesh.Rho[Math.Min(band, _mesh.Count - 1)] * rho * MostChi < rho * rho + z * z
                || !Four(band, rho, z, orders, radial, around, axial)
            )
            {
                for (int lane = band; lane < Math.Min(band + 4, _mesh.Count); lane++)
                {
                    _mesh.Fields(lane, rho, z, one[..orders], one[orders..(2 * orders)], one[(2 * orders)..]);
                    for (int m = 0; m < orders; m++)
                    {
                        (radial[m * Padded + lane], around[m * Padded + lane], axial[m * Padded + lane]) = (
                            one[m],
                            one[orders + m],
                            one[2 * orders + m]
                        );
                    }
                }
            }
        }
    }

    private bool Four(int band, double rho, double z, int orders, Span<double> radial, Span<double> around, Span<double> axial)
    {
        int rule = 0;
        for (int lane = band; lane < Math.Min(band + 4, _mesh.Count); lane++)
        {
            double dr = rho - _mesh.Rho[lane],
                dz = z - _mesh.Z[lane];
            rule = Math.Max(rule, Array.IndexOf(Counts, _mesh.RuleFor(lane, Math.Sqrt(dr * dr + dz * dz)).At.Length));
        }

        Vector256<double> r0 = default,
            r1 = default,
            r2 = default,
            a1 = default,
            a2 = default,
            z0 = default,
            z1 = default,
            z2 = default;
        for (int node = 0; node < Counts[rule]; node++)
        {
            int at = node * Padded + band;
            Vector256<double> a = Vector256.Create(_radius[rule], at),
                up = Vector256.Create(z) - Vector256.Create(_height[rule], at);
            Vector256<double> product = rho * a,
                twice = product + product,
                sum = a + Vector256.Create(rho),
                gap = Vector256.Create(rho) - a,
                zz = up * up;
            Vector256<double> far = sum * sum + zz,
                near = gap * gap + zz,
                less = near / twice,
                chi = less + Vector256<double>.One;
            if (Vector256.GreaterThanAny(chi, Vector256.Create(MostChi)))
            {
                return false;
            }

            (Vector256<double> first, Vector256<double> second) = Complete(near / far);
            Vector256<double> more = far / twice,
                k = Vector256.Sqrt(Vector256.Create(2.0) / more),
                scale = Vector256.Create(_charge[rule], at) * Factor / Vector256.Sqrt(product);
            Vector256<double> q0 = k * first,
                q1 = chi * q0 - (second + second) / k,
                inverse = Vector256<double>.One / (more * less);
            Vector256<double> alongRho = (gap * sum - zz) / (twice * rho),
                alongZ = up / product;
            Vector256<double> slope = -0.5 * inverse * (chi * q0 - q1);
            r0 += scale * (q0 / (2 * rho) - slope * alongRho);
            z0 -= scale * slope * alongZ;
            if (orders > 1)
            {
                slope = 0.5 * inverse * (chi * q1 - q0);
                r1 += scale * (q1 / (2 * rho) - slope * alongRho);
                a1 += scale * q1 / rho;
                z1 -= scale * slope * alongZ;
            }

            if (orders > 2)
            {
                Vector256<double> q2 = (2 * chi * q1 - 0.5 * q0) / 1.5;
                slope = 1.5 * inverse * (chi * q2 - q1);
                r2 += scale * (q2 / (2 * rho) - slope * alongRho);
                a2 += 2 * scale * q2 / rho;
                z2 -= scale * slope * alongZ;
            }
        }

        Put(radial, around, axial, band, r0, default, z0);
        if (orders > 1)
        {
            Put(radial, around, axial, Padded + band, r1, a1, z1);
        }

        if (orders > 2)
        {
            Put(radial, around, axial, 2 * Padded + band, r2, a2, z2);
        }

        return true;
    }

    private static void Put(
        Span<double> radial,
        Span<double> around,
        Span<double> axial,
        int at,
        Vector256<double> r,
        Vector256<double> a,
        Vector256<double> h
    )
    {
        r.CopyTo(radial[at..]);
        a.CopyTo(around[at..]);
        h.CopyTo(axial[at..]);
    }

    /// <summary>Complete elliptic integrals K and E from the complementary modulus squared, by the arithmetic-geometric mean.</summary>
    private static (Vector256<double> First, Vector256<double> Second) Complete(Vector256<double> square)
    {
        Vector256<double> x = Vector256<double>.One,
            y = Vector256.Sqrt(square),
            lost = (Vector256<double>.One - square) * 0.5;
        double scale = 0.5;
        for (int step = 0; step < 12; step++)
        {
            Vector256<double> c = (x - y) * 0.5;
            if (Vector256.LessThanAll(c, x * 1e-9))
            {
                break;
            }

            (x, y) = ((x + y) * 0.5, Vector256.Sqrt(x * y));
            scale *= 2;
            lost += scale * c * c;
        }

        Vector256<double> first = Vector256.Create(Math.PI) / (x + y);
        return (first, first * (Vector256<double>.One - lost));
    }
}
