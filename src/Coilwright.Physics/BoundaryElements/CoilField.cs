using System.Runtime.Intrinsics;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// Field strength of one winding per ampere and turn, as current sheets at Gauss offsets through the build; the height is integrated in
/// closed form.
/// </summary>
/// <remarks>Points are absolute, m; results A/m per ampere-turn. Holds everywhere but on the sheets themselves.</remarks>
internal sealed class CoilField
{
    private readonly double _x0,
        _y0,
        _bottom,
        _top;
    private readonly double[] _x,
        _y,
        _tx,
        _ty;
    private readonly Former _former;
    private readonly double[] _offset,
        _share;

    public CoilField(FieldCoil coil, int layers, int nodesPerQuarter)
        : this(coil, GaussRule.WithNodes(layers), ArcNodes.WithNodes(nodesPerQuarter).Quarter) { }

    private CoilField(FieldCoil coil, GaussRule layer, ArcRule arc)
    {
        _former = Former.FromBobbin(coil.Bobbin);
        (_x0, _y0) = (coil.Position.XM, coil.Position.YM);
        (_bottom, _top) = (coil.Position.ZM - coil.Bobbin.WindingHeightM / 2, coil.Position.ZM + coil.Bobbin.WindingHeightM / 2);
        int layers = layer.At.Length,
            perQuarter = arc.Angle.Length,
            count = layers * 4 * perQuarter;
        (_offset, _share) = (new double[layers], new double[layers]);
        (_x, _y, _tx, _ty) = (new double[count], new double[count], new double[count], new double[count]);
        for (int l = 0, k = 0; l < layers; l++)
        {
            _offset[l] = _former.CornerM + layer.At[l] * coil.BuildM;
            _share[l] = layer.Weight[l] / (4 * Math.PI * coil.Bobbin.WindingHeightM);
            LoopFilament turn = new(_former.HalfLongM, _former.HalfShortM, _offset[l], perQuarter);
            for (int i = 0; i < turn.X.Length; i++, k++)
            {
                (_x[k], _y[k], _tx[k], _ty[k]) = (turn.X[i], turn.Y[i], turn.Dx[i] * _share[l], turn.Dy[i] * _share[l]);
            }
        }
    }

    /// <summary>True if the plane y = const through the point cuts the winding into mirror images.</summary>
    public bool IsMirroredAbout(double y) => Math.Abs(y - _y0) < 1e-9;

    /// <summary>Field strength at a point, per ampere-turn, counter-clockwise current seen from the top.</summary>
    public Vector3M ComputeField(double x, double y, double z)
    {
        (x, y) = (x - _x0, y - _y0);
        double down = _bottom - z,
            up = _top - z,
            dd = down * down,
            uu = up * up,
            hx = 0,
            hy = 0,
            hz = 0;
        int k = 0;
        if (Vector256.IsHardwareAccelerated)
        {
            Vector256<double> x4 = default,
                y4 = default,
                z4 = default;
            for (; k + 4 <= _x.Length; k += 4)
            {
                Vector256<double> ex = Vector256.Create(x) - Vector256.Create(_x, k),
                    ey = Vector256.Create(y) - Vector256.Create(_y, k),
                    square = ex * ex + ey * ey;
                Vector256<double> tx = Vector256.Create(_tx, k),
                    ty = Vector256.Create(_ty, k);
                Vector256<double> toTop = Vector256<double>.One / Vector256.Sqrt(square + Vector256.Create(uu)),
                    toBottom = Vector256<double>.One / Vector256.Sqrt(square + Vector256.Create(dd));
                Vector256<double> slope = toTop - toBottom;
                x4 += ty * slope;
                y4 -= tx * slope;
                z4 += (tx * ey - ty * ex) * (up * toTop - down * toBottom) / square;
            }

            (hx, hy, hz) = (Vector256.Sum(x4), Vector256.Sum(y4), Vector256.Sum(z4));
        }

        for (; k < _x.Length; k++)
        {
            double ex = x - _x[k],
                ey = y - _y[k],
                square = ex * ex + ey * ey;
            double toTop = 1 / Math.Sqrt(square + uu),
                toBottom = 1 / Math.Sqrt(square + dd),
                slope = toTop - toBottom;
            hx += _ty[k] * slope;
            hy -= _tx[k] * slope;
            hz += (_tx[k] * ey - _ty[k] * ex) * (up * toTop - down * toBottom) / square;
        }

        for (int l = 0; l < _offset.Length; l++)
        {
            Straights(_former.HalfLongM, _former.HalfShortM + _offset[l], x, y, down, up, _share[l], ref hy, ref hz);
            Straights(_former.HalfShortM, _former.HalfLongM + _offset[l], y, x, down, up, _share[l], ref hx, ref hz);
        }

        return new Vector3M(hx, hy, hz);
    }

    /// <summary>The two straight sheets of half length a at ±w across; <paramref name="hAcross"/> is the component across them.</summary>
    private static void Straights(
        double a,
        double w,
        double x,
        double y,
        double down,
        double up,
        double share,
        ref double hAcross,
        ref double hz
    )
    {
        if (a <= 0)
        {
            return;
        }

        double left = -a - x,
            right = a - x;
        for (int side = -1; side <= 1; side += 2)
        {
            double apart = y - side * w,
                square = apart * apart;
            double tl = Math.Sqrt(left * left + square + up * up),
                tr = Math.Sqrt(right * right + square + up * up);
            double bl = Math.Sqrt(left * left + square + down * down),
                br = Math.Sqrt(right * right + square + down * down);
            hAcross +=
                side * share * Math.Log(Ends(left, right, tl, tr, square + up * up) / Ends(left, right, bl, br, square + down * down));
            hz -=
                side
                * share
                * (
                    Math.Atan(right * up / (apart * tr))
                    - Math.Atan(left * up / (apart * tl))
                    - Math.Atan(right * down / (apart * br))
                    + Math.Atan(left * down / (apart * bl))
                );
        }
    }

    /// <summary>(right + R)/(left + R) without cancellation.</summary>
    private static double Ends(double left, double right, double toLeft, double toRight, double square)
    {
        if (right <= 0)
        {
            return (toLeft - left) / (toRight - right);
        }

        return left >= 0 ? (right + toRight) / (left + toLeft) : (right + toRight) * (toLeft - left) / square;
    }
}
