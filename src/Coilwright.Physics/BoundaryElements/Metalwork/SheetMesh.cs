namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>A quarter (x ≥ 0, y ≥ 0) of one cover or plate, cut along nested outlines; the other quarters are its mirror images.</summary>
/// <remarks>
/// Rows run from the middle of the flat part to its edge and, on a cover, down the wall; columns go round. The last row is the free edge,
/// where no current leaves.
/// </remarks>
internal sealed class SheetMesh
{
    /// <summary>Panels are longer round the sheet, the way the current goes, than across: by the square of this.</summary>
    private const double Stretch = 1.7;

    private readonly List<int> _mergedNodes = [];

    /// <param name="sheet">The part.</param>
    /// <param name="index">Its place in the list of sheets.</param>
    /// <param name="step">Side of a square as large as a panel should be, m.</param>
    /// <param name="holes">Round holes of the flat part: x, y, radius, m.</param>
    public SheetMesh(SheetModel sheet, int index, double step, IReadOnlyList<(double X, double Y, double Radius)> holes)
    {
        (Sheet, Index, Outline) = (sheet, index, SheetOutline.FromSheet(sheet));
        (int Short, int Corner, int Long) cuts = Outline.Cuts(step * Stretch);
        double level = sheet.TopM - sheet.ThicknessM / 2,
            down = sheet.Shape == SheetShape.Cover ? level - sheet.BottomM : 0;
        double rowM = step / Stretch;
        int flat = Math.Max(3, (int)Math.Round(Outline.HalfWideM / rowM)),
            wall = down <= 0 ? 0 : Math.Max(2, (int)Math.Round(down / rowM));
        (LevelM, Columns, Rows) = (level, cuts.Short + cuts.Corner + cuts.Long, flat + wall);
        Vector3M At(double row, double column, double stretch)
        {
            // Rows crowd toward a free edge, where the current does.
            bool cover = wall > 0;
            double t = Math.Min(1, row / flat),
                shrunk = 1 - (cover ? t : Math.Sin(Math.PI / 2 * t));
            (double along, double across) = Outline.At(shrunk, column, cuts, stretch);
            double z = row <= flat ? level : level - down * Math.Sin(Math.PI / 2 * (row - flat) / wall);
            return Outline.Turned ? new(across, along, z) : new(along, across, z);
        }

        double equalArea = SheetOutline.EqualArea(cuts.Corner);
        Vector3M[] nodes = [.. Enumerable.Range(0, Nodes).Select(node => At(node / (Columns + 1), node % (Columns + 1), equalArea))];
        Merge(cuts);
        Panels = MakePanels(nodes, (row, column) => At(row + 0.5, column + 0.5, 1), holes);
        IsOnX0 = [.. nodes.Select(node => Math.Abs(node.XM) < 1e-12)];
        IsOnY0 = [.. nodes.Select(node => Math.Abs(node.YM) < 1e-12)];
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

    private SheetPanel[] MakePanels(
        Vector3M[] at,
        Func<int, int, Vector3M> middle,
        IReadOnlyList<(double X, double Y, double Radius)> holes
    )
    {
        SheetPanel[] panels = new SheetPanel[Rows * Columns];
        for (int row = 0; row < Rows; row++)
        {
            for (int column = 0; column < Columns; column++)
            {
                int node = row * (Columns + 1) + column;
                int[] corners = [node, node + 1, node + Columns + 1, node + Columns + 2];
                SheetPanel panel = new(
                    [.. corners.Select(c => at[c])],
                    middle(row, column),
                    [.. corners.Select(Leader)],
                    Sheet.ThicknessM,
                    Outline.Turned
                );
                panel.OpenShare = Math.Abs(panel.Normal.ZM) > 0.5 ? Open(panel, holes) : 0;
                panels[row * Columns + column] = panel;
            }
        }

        return panels;
    }

    /// <summary>Share of a panel that lies in holes, by 5 × 5 samples; the mean of the four quarters stands for each.</summary>
    private static double Open(SheetPanel panel, IReadOnlyList<(double X, double Y, double Radius)> holes)
    {
        int open = 0;
        for (int k = 0; k < 100 && holes.Count > 0; k++)
        {
            double u = (k % 5 + 0.5) / 5,
                v = (k / 5 % 5 + 0.5) / 5;
            double x = (1 - v) * ((1 - u) * panel.P00.XM + u * panel.P01.XM) + v * ((1 - u) * panel.P10.XM + u * panel.P11.XM);
            double y = (1 - v) * ((1 - u) * panel.P00.YM + u * panel.P01.YM) + v * ((1 - u) * panel.P10.YM + u * panel.P11.YM);
            (double atX, double atY) = (k < 50 ? x : -x, k % 50 < 25 ? y : -y);
            open += holes.Any(hole => Math.Pow(hole.X - atX, 2) + Math.Pow(hole.Y - atY, 2) < hole.Radius * hole.Radius) ? 1 : 0;
        }

        return open / 100.0;
    }
}
