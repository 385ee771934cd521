using System.Numerics;

namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>Field kernels of every panel at a point, several panels at once; those close by by their own shape.</summary>
internal sealed class SheetPull
{
    /// <summary>Panels nearer than this many sizes act by their shape.</summary>
    private const double NearSizes = 2;

    private readonly SheetPanel[] _panels;
    private readonly double[] _x,
        _y,
        _z,
        _area,
        _nx,
        _ny,
        _nz,
        _near;

    public SheetPull(SheetCut cut)
    {
        _panels = cut.Panels;
        _x = [.. _panels.Select(panel => panel.Centre.XM)];
        _y = [.. _panels.Select(panel => panel.Centre.YM)];
        _z = [.. _panels.Select(panel => panel.Centre.ZM)];
        _nx = [.. _panels.Select(panel => panel.Normal.XM)];
        _ny = [.. _panels.Select(panel => panel.Normal.YM)];
        _nz = [.. _panels.Select(panel => panel.Normal.ZM)];
        _area = [.. _panels.Select(panel => panel.AreaM2 / (4 * Math.PI))];
        _near = [.. _panels.Select(panel => NearSizes * NearSizes * panel.SizeM * panel.SizeM)];
    }

    /// <summary>
    /// For every panel: what its current's x, y and z give along a direction at a point, then its potential per unit ψ; four runs of one
    /// entry per panel.
    /// </summary>
    public void ComputeKernels(Vector3M at, Vector3M along, Span<double> kernels)
    {
        int n = _panels.Length,
            wide = Vector<double>.Count,
            whole = n - n % wide;
        Span<double> byX = kernels[..n],
            byY = kernels[n..(2 * n)],
            byZ = kernels[(2 * n)..(3 * n)],
            potential = kernels[(3 * n)..];
        Vector<double> px = new(at.XM),
            py = new(at.YM),
            pz = new(at.ZM),
            dx = new(along.XM),
            dy = new(along.YM),
            dz = new(along.ZM);
        for (int p = 0; p < whole; p += wide)
        {
            Vector<double> x = px - Load(_x, p),
                y = py - Load(_y, p),
                z = pz - Load(_z, p),
                square = x * x + y * y + z * z;
            Vector<double> weight = Load(_area, p) / (square * Vector.SquareRoot(square));
            Store(byX, p, (y * dz - z * dy) * weight);
            Store(byY, p, (z * dx - x * dz) * weight);
            Store(byZ, p, (x * dy - y * dx) * weight);
            Store(potential, p, (x * Load(_nx, p) + y * Load(_ny, p) + z * Load(_nz, p)) * weight);
            for (int k = p; k < p + wide && Vector.LessThanAny(square, Load(_near, p)); k++)
            {
                if (square[k - p] < _near[k])
                {
                    One(k, at, along, kernels);
                }
            }
        }

        for (int p = whole; p < n; p++)
        {
            One(p, at, along, kernels);
        }
    }

    private static Vector<double> Load(double[] from, int at) => new(from, at);

    private static void Store(Span<double> to, int at, Vector<double> value) => value.CopyTo(to[at..]);

    private void One(int p, Vector3M at, Vector3M along, Span<double> kernels)
    {
        SheetPanel panel = _panels[p];
        int n = _panels.Length;
        Vector3M away = Space.Minus(at, panel.Centre);
        (double u, double v, double w) = PanelKernel.Field(
            panel.HalfRoundM,
            panel.HalfOutM,
            Space.Dot(away, panel.RoundUnit),
            Space.Dot(away, panel.OutUnit),
            Space.Dot(away, panel.Normal)
        );
        Vector3M pull = Space.Plus(
            Space.Plus(Space.Times(panel.RoundUnit, u), Space.Times(panel.OutUnit, v)),
            Space.Times(panel.Normal, w)
        );
        Vector3M across = Space.Cross(pull, along);
        (kernels[p], kernels[n + p], kernels[2 * n + p], kernels[3 * n + p]) = (across.XM, across.YM, across.ZM, w);
    }
}
