using System.Runtime.Intrinsics;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// Fields of many rectangles along a normal at one point, four at a time where they are far: the same as <see cref="PanelKernel.Field"/>
/// one by one.
/// </summary>
internal sealed class PanelBands
{
    private readonly int[] _axisEnd = new int[3];
    private readonly double[] _x,
        _y,
        _z,
        _p,
        _q;

    /// <param name="panels">Middles and half sides, those with their normal along x first, then y, then z; sides in cyclic order of the
    /// axes.</param>
    /// <param name="axis">Axis of each panel's normal: 0, 1, 2.</param>
    public PanelBands(IReadOnlyList<(Vector3M Middle, double HalfU, double HalfV)> panels, IReadOnlyList<int> axis)
    {
        int n = panels.Count;
        (_x, _y, _z, _p, _q) = (new double[n], new double[n], new double[n], new double[n], new double[n]);
        for (int i = 0; i < n; i++)
        {
            (_x[i], _y[i], _z[i]) = (panels[i].Middle.XM, panels[i].Middle.YM, panels[i].Middle.ZM);
            (_p[i], _q[i]) = (panels[i].HalfU, panels[i].HalfV);
            _axisEnd.AsSpan(axis[i]).Fill(i + 1);
        }
    }

    /// <summary>Field along the point's normal per unit density on each panel.</summary>
    public void NormalFields(in SurfacePoint at, Span<double> normal)
    {
        Run(0, _axisEnd[0], _y, at.Y, at.NormalY, _z, at.Z, at.NormalZ, _x, at.X, at.NormalX, normal);
        Run(_axisEnd[0], _axisEnd[1], _z, at.Z, at.NormalZ, _x, at.X, at.NormalX, _y, at.Y, at.NormalY, normal);
        Run(_axisEnd[1], _axisEnd[2], _x, at.X, at.NormalX, _y, at.Y, at.NormalY, _z, at.Z, at.NormalZ, normal);
    }

    private void Run(
        int from,
        int to,
        double[] us,
        double u0,
        double nu,
        double[] vs,
        double v0,
        double nv,
        double[] ns,
        double n0,
        double nn,
        Span<double> normal
    )
    {
        int i = from;
        for (; i + 4 <= to; i += 4)
        {
            Vector256<double> u = Vector256.Create(u0) - Vector256.Create(us, i),
                v = Vector256.Create(v0) - Vector256.Create(vs, i),
                n = Vector256.Create(n0) - Vector256.Create(ns, i);
            Vector256<double> p = Vector256.Create(_p, i),
                q = Vector256.Create(_q, i),
                pp = p * p,
                qq = q * q,
                both = pp + qq,
                square = u * u + v * v + n * n;
            Vector256<double> isFar = Vector256.GreaterThan(square, PanelKernel.FarSquare * both);
            if (isFar != Vector256<double>.Zero)
            {
                Vector256<double> inverse = Vector256<double>.One / square,
                    point = p * q * inverse * Vector256.Sqrt(inverse) / Math.PI;
                Vector256<double> alongU = nu * u,
                    alongV = nv * v,
                    alongN = nn * n;
                Vector256<double> bent = Vector256<double>.One + 5.0 / 6 * inverse * (3 * inverse * (pp * u * u + qq * v * v) - both);
                Vector256<double> turned = alongU * (3 * pp - both) + alongV * (3 * qq - both) - alongN * both;
                (point * (bent * (alongU + alongV + alongN) - inverse * turned / 3)).CopyTo(normal[i..]);
            }

            for (int lane = 0; lane < 4; lane++)
            {
                if (isFar[lane] == 0)
                {
                    normal[i + lane] = One(i + lane, u[lane], v[lane], n[lane], nu, nv, nn);
                }
            }
        }

        for (; i < to; i++)
        {
            normal[i] = One(i, u0 - us[i], v0 - vs[i], n0 - ns[i], nu, nv, nn);
        }
    }

    private double One(int i, double u, double v, double n, double nu, double nv, double nn)
    {
        (double alongU, double alongV, double alongN) = PanelKernel.Field(_p[i], _q[i], u, v, n);
        return nu * alongU + nv * alongV + nn * alongN;
    }
}
