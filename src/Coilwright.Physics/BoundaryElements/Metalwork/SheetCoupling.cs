namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>
/// What currents in the sheets do to the permeable parts: normal field on each element and scalar potential there, as for a winding.
/// </summary>
/// <remarks>
/// A sheet with stream function ψ is a layer of dipoles ψ·n: its potential is the solid angle of each panel times ψ/4π. A pole that passes
/// through a hole must not see
/// the jump by ψ from one side of the sheet to the other: above the sheet ψ at the hole is taken off again.
/// </remarks>
internal sealed class SheetCoupling
{
    private readonly SheetCut _cut;
    private readonly IReadOnlyList<SheetMode> _modes;
    private readonly SheetPull _pull;
    private readonly int[] _classOf;
    private readonly int[][] _signs;
    private readonly double[][] _packed;

    private SheetCoupling(SheetCut cut, SheetModes modes)
    {
        (_cut, _modes, _pull) = (cut, modes.Modes, new SheetPull(cut));
        List<string> classes = [];
        _classOf = new int[_modes.Count];
        for (int m = 0; m < _classOf.Length; m++)
        {
            string signs = string.Join(' ', Enumerable.Range(0, 4).Select(_modes[m].Sign));
            _classOf[m] = classes.IndexOf(signs) is >= 0 and int known ? known : classes.Count;
            if (_classOf[m] == classes.Count)
            {
                classes.Add(signs);
            }
        }

        _signs =
        [
            .. Enumerable
                .Range(0, classes.Count)
                .Select(c => Enumerable.Range(0, 4).Select(_modes[Array.IndexOf(_classOf, c)].Sign).ToArray()),
        ];
        _packed =
        [
            .. _modes.Select(mode =>
                (double[])
                    [
                        .. mode.Current.Select(j => j.XM),
                        .. mode.Current.Select(j => j.YM),
                        .. mode.Current.Select(j => j.ZM),
                        .. mode.Stream,
                    ]
            ),
        ];
    }

    public static (double[] Drive, double[] Potential)[] Couple(
        SheetCut cut,
        SheetModes modes,
        SurfaceSystem system,
        CancellationToken cancel
    )
    {
        (double[] Drive, double[] Potential)[] all = [.. modes.Modes.Select(_ => (new double[system.Count], new double[system.Count]))];
        SheetCoupling coupling = new(cut, modes);
        foreach ((MagneticBody body, int[] unknown, double[] own) in system.LeadingElements)
        {
            cancel.ThrowIfCancellationRequested();
            coupling.Add(body, unknown, own, all);
        }

        return all;
    }

    private void Add(MagneticBody body, int[] unknown, double[] own, (double[] Drive, double[] Potential)[] all)
    {
        double[] jumps = Jumps(body, out double level);
        SurfacePoint[] points = [.. body.Points.Where(point => own[point.Element] > 0)];
        double[][] fields = new double[points.Length][];
        Parallel.For(
            0,
            points.Length,
            () => new double[4 * _cut.Panels.Length * (1 + _signs.Length)],
            (at, _, scratch) =>
            {
                fields[at] = At(points[at], scratch);
                return scratch;
            },
            _ => { }
        );
        for (int at = 0; at < points.Length; at++)
        {
            double[] shares = points[at].Shares;
            for (int k = 0; k < jumps.Length * shares.Length; k++)
            {
                int m = k / shares.Length,
                    element = points[at].Element + k % shares.Length * body.Stride;
                if (own[element] > 0)
                {
                    double share = own[element] * shares[k % shares.Length];
                    all[m].Drive[unknown[element]] += share * fields[at][2 * m];
                    all[m].Potential[unknown[element]] += share * (fields[at][2 * m + 1] - (points[at].Z > level ? jumps[m] : 0));
                }
            }
        }

        RemoveMeans(body, unknown, own, all);
    }

    /// <summary>Normal field and potential of each mode in turn.</summary>
    private double[] At(in SurfacePoint point, double[] scratch)
    {
        int panels = _cut.Panels.Length;
        Span<double> one = scratch.AsSpan(0, 4 * panels),
            sums = scratch.AsSpan(4 * panels, 4 * panels * _signs.Length);
        sums.Clear();
        for (int image = 0; image < 4; image++)
        {
            // The point is mirrored instead of the panel: the potential only takes the class's sign, the current also that of a curl.
            int sx = SheetCut.SignX(image),
                sy = SheetCut.SignY(image);
            _pull.ComputeKernels(
                new Vector3M(sx * point.X, sy * point.Y, point.Z),
                new Vector3M(sx * point.NormalX, sy * point.NormalY, point.NormalZ),
                one
            );
            for (int c = 0; c < _signs.Length; c++)
            {
                Rows.Subtract(sums.Slice(4 * panels * c, 4 * panels), one, -_signs[c][image]);
            }
        }

        double[] fields = new double[2 * _modes.Count];
        for (int m = 0; m < _modes.Count; m++)
        {
            ReadOnlySpan<double> own = sums.Slice(4 * panels * _classOf[m], 4 * panels);
            fields[2 * m] = Rows.Dot(_packed[m].AsSpan(0, 3 * panels), own[..(3 * panels)]);
            fields[2 * m + 1] = Rows.Dot(_packed[m].AsSpan(3 * panels), own[(3 * panels)..]);
        }

        return fields;
    }

    /// <summary>
    /// ψ of each mode at the hole that a body passes through, and the height of that sheet; infinite when it passes none.
    /// </summary>
    private double[] Jumps(MagneticBody body, out double level)
    {
        double[] jumps = new double[_modes.Count];
        level = double.PositiveInfinity;
        double low = body.Points.Min(point => point.Z),
            high = body.Points.Max(point => point.Z);
        double x = body.Points.Average(point => point.X),
            y = body.Points.Average(point => point.Y);
        for (int m = 0; m < _cut.Meshes.Length && double.IsInfinity(level); m++)
        {
            SheetMesh mesh = _cut.Meshes[m];
            if (low < mesh.LevelM && high > mesh.LevelM && mesh.Outline.Contains(x, y))
            {
                level = mesh.LevelM;
                int image = (x < 0 ? 1 : 0) + (y < 0 ? 2 : 0);
                int nearest = Enumerable
                    .Range(0, _cut.Panels.Length)
                    .Where(p => _cut.Owner[p] == m && _cut.Panels[p].Normal.ZM > 0.5)
                    .MinBy(p => Math.Pow(_cut.Panels[p].Centre.XM - Math.Abs(x), 2) + Math.Pow(_cut.Panels[p].Centre.YM - Math.Abs(y), 2));
                for (int k = 0; k < jumps.Length; k++)
                {
                    jumps[k] = _modes[k].Sign(image) * _modes[k].Stream[nearest];
                }
            }
        }

        return jumps;
    }

    /// <summary>No net flux enters a body.</summary>
    private static void RemoveMeans(MagneticBody body, int[] unknown, double[] share, (double[] Drive, double[] Potential)[] all)
    {
        int[] own = [.. Enumerable.Range(0, unknown.Length).Where(i => share[i] > 0)];
        double area = own.Sum(i => body.Area[i]);
        foreach ((double[] drive, _) in all)
        {
            double mean = own.Sum(i => body.Area[i] * drive[unknown[i]]) / area;
            foreach (int i in own.Where(i => body.Area[i] > 0))
            {
                drive[unknown[i]] -= mean;
            }
        }
    }
}
