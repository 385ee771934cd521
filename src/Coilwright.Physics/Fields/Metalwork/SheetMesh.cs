namespace Coilwright.Physics.Fields.Metalwork;

/// <summary>A quarter (x ≥ 0, y ≥ 0) of one cover or plate, cut along nested outlines; the other quarters are its mirror images.</summary>
/// <remarks>Rows run from the middle of the flat part to its edge and, on a cover, down the wall; columns go round. The last row is the free edge, where no current leaves.</remarks>
internal sealed class SheetMesh
{
    private readonly List<int> _mergedNodes = [];

    /// <param name="sheet">The part.</param>
    /// <param name="index">Its place in the list of sheets.</param>
    /// <param name="step">Wanted size of a panel, m.</param>
    /// <param name="holes">Round holes of the flat part: x, y, radius, m.</param>
    public SheetMesh(SheetModel sheet, int index, double step, IReadOnlyList<(double X, double Y, double Radius)> holes)
    {
        (Sheet, Index, Outline) = (sheet, index, SheetOutline.Of(sheet));
        (int Short, int Corner, int Long) cuts = Outline.Cuts(step);
        double level = sheet.TopM - sheet.ThicknessM / 2, down = sheet.Shape == SheetShape.Cover ? level - sheet.BottomM : 0;
        int flat = Math.Max(3, (int)Math.Round(Outline.HalfWideM / step)), wall = down <= 0 ? 0 : Math.Max(2, (int)Math.Round(down / step));
        (LevelM, Columns, Rows) = (level, cuts.Short + cuts.Corner + cuts.Long, flat + wall);
        double[] x = new double[(Rows + 1) * (Columns + 1)], y = new double[x.Length], z = new double[x.Length];
        for (int row = 0; row <= Rows; row++)
        {
            double shrunk = row >= flat ? 0 : 1 - Math.Sin(Math.PI / 2 * row / flat) * 0.5 - 0.5 * row / flat;
            for (int column = 0; column <= Columns; column++)
            {
                int node = row * (Columns + 1) + column;
                (double along, double across) = Outline.At(shrunk, column, cuts);
                (x[node], y[node]) = Outline.Turned ? (across, along) : (along, across);
                z[node] = row <= flat ? level : level - down * (row - flat) / wall;
            }
        }

        Merge(cuts);
        Panels = MakePanels(x, y, z, holes);
        IsOnX0 = [.. x.Select(value => Math.Abs(value) < 1e-12)];
        IsOnY0 = [.. y.Select(value => Math.Abs(value) < 1e-12)];
    }

    public SheetModel Sheet { get; }
    public int Index { get; }
    public SheetOutline Outline { get; }

    /// <summary>Height of the middle of the flat part, m.</summary>
    public double LevelM { get; }
    public int Columns { get; }
    public int Rows { get; }
    public SheetPanel[] Panels { get; }

    /// <summary>Number of nodes, the merged and the edge ones included.</summary>
    public int Nodes => (Rows + 1) * (Columns + 1);

    /// <summary>True for a node in the plane x = 0, or y = 0.</summary>
    public bool[] IsOnX0 { get; }
    public bool[] IsOnY0 { get; }

    /// <summary>Node that one stands for: itself, or the one it coincides with in the middle.</summary>
    public int Leader(int node) => node < _mergedNodes.Count ? _mergedNodes[node] : node;

    public bool IsOnEdge(int node) => node > Rows * (Columns + 1) - 1;

    private void Merge((int Short, int Corner, int Long) cuts)
    {
        bool point = Outline.HalfLongM - Outline.HalfWideM < 1e-9;
        for (int column = 0; column <= Columns; column++)
        {
            _mergedNodes.Add(point || column <= cuts.Short + cuts.Corner ? 0 : column);
        }
    }

    private SheetPanel[] MakePanels(double[] x, double[] y, double[] z, IReadOnlyList<(double X, double Y, double Radius)> holes)
    {
        SheetPanel[] panels = new SheetPanel[Rows * Columns];
        Vector3M At(int node) => new(x[node], y[node], z[node]);
        for (int row = 0; row < Rows; row++)
        {
            for (int column = 0; column < Columns; column++)
            {
                int node = row * (Columns + 1) + column;
                int[] nodes = [node, node + 1, node + Columns + 1, node + Columns + 2];
                SheetPanel panel = new(At(nodes[0]), At(nodes[1]), At(nodes[2]), At(nodes[3]), [.. nodes.Select(Leader)], Sheet.ThicknessM, Outline.Turned);
                panel.OpenShare = Math.Abs(panel.Normal.ZM) > 0.5 ? Open(At(nodes[0]), At(nodes[1]), At(nodes[2]), At(nodes[3]), holes) : 0;
                panels[row * Columns + column] = panel;
            }
        }

        return panels;
    }

    /// <summary>Share of a panel that lies in holes, by 5 × 5 samples; the mean of the four quarters stands for each.</summary>
    private static double Open(Vector3M a, Vector3M b, Vector3M c, Vector3M d, IReadOnlyList<(double X, double Y, double Radius)> holes)
    {
        int open = 0;
        for (int k = 0; k < 100 && holes.Count > 0; k++)
        {
            double u = (k % 5 + 0.5) / 5, v = (k / 5 % 5 + 0.5) / 5;
            double x = (1 - v) * ((1 - u) * a.XM + u * b.XM) + v * ((1 - u) * c.XM + u * d.XM);
            double y = (1 - v) * ((1 - u) * a.YM + u * b.YM) + v * ((1 - u) * c.YM + u * d.YM);
            (double atX, double atY) = (k < 50 ? x : -x, k % 50 < 25 ? y : -y);
            open += holes.Any(hole => Math.Pow(hole.X - atX, 2) + Math.Pow(hole.Y - atY, 2) < hole.Radius * hole.Radius) ? 1 : 0;
        }

        return open / 100.0;
    }
}
