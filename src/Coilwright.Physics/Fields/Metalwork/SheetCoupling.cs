namespace Coilwright.Physics.Fields.Metalwork;

/// <summary>What currents in the sheets do to the permeable parts: normal field on each element and scalar potential there, as for a winding.</summary>
/// <remarks>
/// A sheet with stream function ψ is a layer of dipoles ψ·n: its potential is the solid angle of each panel times ψ/4π. A pole that passes through a hole must not see
/// the jump by ψ from one side of the sheet to the other: above the sheet ψ at the hole is taken off again.
/// </remarks>
internal static class SheetCoupling
{
    /// <summary>Panels nearer than this many sizes act by their shape.</summary>
    private const double NearSizes = 2;

    public static (double[] Drive, double[] Potential)[] Couple(SheetCut cut, SheetModes modes, SurfaceSystem system, CancellationToken cancel)
    {
        (double[] Drive, double[] Potential)[] all = [.. modes.Modes.Select(_ => (new double[system.Count], new double[system.Count]))];
        foreach ((MagneticBody body, int[] unknown, bool[] leads) in system.LeadingElements)
        {
            cancel.ThrowIfCancellationRequested();
            double[] jumps = Jumps(cut, modes, body, out double level);
            SurfacePoint[] points = [.. body.Points.Where(point => leads[point.Element])];
            double[][] fields = new double[points.Length][];
            Parallel.For(0, points.Length, at => fields[at] = At(cut, modes, points[at]));
            for (int at = 0; at < points.Length; at++)
            {
                double[] shares = points[at].Shares;
                for (int k = 0; k < jumps.Length * shares.Length; k++)
                {
                    int m = k / shares.Length, element = points[at].Element + k % shares.Length * body.Stride;
                    if (leads[element])
                    {
                        double share = shares[k % shares.Length];
                        all[m].Drive[unknown[element]] += share * fields[at][2 * m];
                        all[m].Potential[unknown[element]] += share * (fields[at][2 * m + 1] - (points[at].Z > level ? jumps[m] : 0));
                    }
                }
            }

            RemoveMeans(body, unknown, leads, all);
        }

        return all;
    }

    /// <summary>Normal field and potential of each mode in turn.</summary>
    private static double[] At(SheetCut cut, SheetModes modes, in SurfacePoint point)
    {
        double[] fields = new double[2 * modes.Count];
        for (int at = 0; at < 4 * cut.Panels.Length; at++)
        {
            int image = at / cut.Panels.Length, p = at % cut.Panels.Length, sx = SheetCut.SignX(image), sy = SheetCut.SignY(image);
            SheetPanel panel = cut.Panels[p];
            // The point is mirrored instead of the panel: the potential only takes the class's sign, the current also that of a curl.
            Vector3M away = new(sx * point.X - panel.Centre.XM, sy * point.Y - panel.Centre.YM, point.Z - panel.Centre.ZM);
            Vector3M pull = Pull(panel, away);
            double height = Space.Dot(pull, panel.Normal);
            Vector3M across = Space.Cross(pull, new Vector3M(sx * point.NormalX, sy * point.NormalY, point.NormalZ));
            for (int m = 0; m < modes.Count; m++)
            {
                SheetMode mode = modes.Modes[m];
                int sign = mode.Sign(image);
                fields[2 * m] += sign * Space.Dot(mode.Current[p], across);
                fields[2 * m + 1] += sign * mode.Stream[p] * height;
            }
        }

        return fields;
    }

    /// <summary>∫ r/(4πr³) over a panel.</summary>
    private static Vector3M Pull(SheetPanel panel, Vector3M away)
    {
        double square = Space.Dot(away, away), near = NearSizes * panel.SizeM;
        if (square > near * near)
        {
            return Space.Times(away, panel.AreaM2 / (4 * Math.PI * square * Math.Sqrt(square)));
        }

        (double u, double v, double n) = PanelKernel.Field(panel.HalfRoundM, panel.HalfOutM,
            Space.Dot(away, panel.RoundUnit), Space.Dot(away, panel.OutUnit), Space.Dot(away, panel.Normal));
        return Space.Plus(Space.Plus(Space.Times(panel.RoundUnit, u), Space.Times(panel.OutUnit, v)), Space.Times(panel.Normal, n));
    }

    /// <summary>ψ of each mode at the hole that a body passes through, and the height of that sheet; infinite when it passes none.</summary>
    private static double[] Jumps(SheetCut cut, SheetModes modes, MagneticBody body, out double level)
    {
        double[] jumps = new double[modes.Count];
        level = double.PositiveInfinity;
        double low = body.Points.Min(point => point.Z), high = body.Points.Max(point => point.Z);
        double x = body.Points.Average(point => point.X), y = body.Points.Average(point => point.Y);
        for (int m = 0; m < cut.Meshes.Length && double.IsInfinity(level); m++)
        {
            SheetMesh mesh = cut.Meshes[m];
            if (low < mesh.LevelM && high > mesh.LevelM && mesh.Outline.Contains(x, y))
            {
                level = mesh.LevelM;
                int image = (x < 0 ? 1 : 0) + (y < 0 ? 2 : 0);
                int nearest = Enumerable.Range(0, cut.Panels.Length).Where(p => cut.Owner[p] == m && cut.Panels[p].Normal.ZM > 0.5)
                    .MinBy(p => Math.Pow(cut.Panels[p].Centre.XM - Math.Abs(x), 2) + Math.Pow(cut.Panels[p].Centre.YM - Math.Abs(y), 2));
                for (int k = 0; k < jumps.Length; k++)
                {
                    jumps[k] = modes.Modes[k].Sign(image) * modes.Modes[k].Stream[nearest];
                }
            }
        }

        return jumps;
    }

    /// <summary>No net flux enters a body.</summary>
    private static void RemoveMeans(MagneticBody body, int[] unknown, bool[] leads, (double[] Drive, double[] Potential)[] all)
    {
        int[] own = [.. Enumerable.Range(0, unknown.Length).Where(i => leads[i])];
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
