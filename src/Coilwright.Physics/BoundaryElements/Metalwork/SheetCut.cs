namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>
/// Covers and plates of a problem, cut into panels, with what all mirror classes share: the mean 1/R of every pair of panels.
/// </summary>
/// <remarks>
/// The sheets lie about the common origin and are mirror images of themselves in x = 0 and y = 0, so a quarter is kept. Image k of a panel
/// has x mirrored
/// for odd k and y mirrored for k of 2 and 3.
/// </remarks>
internal sealed class SheetCut
{
    private readonly Lazy<SheetParity>[] _parities;

    private SheetCut(SheetMesh[] meshes)
    {
        Meshes = meshes;
        Panels = [.. meshes.SelectMany(mesh => mesh.Panels)];
        Owner = [.. meshes.SelectMany((mesh, m) => mesh.Panels.Select(_ => m))];
        FirstNode = new int[meshes.Length + 1];
        for (int m = 0; m < meshes.Length; m++)
        {
            FirstNode[m + 1] = FirstNode[m] + meshes[m].Nodes;
        }

        Potential =
        [
            new double[Panels.Length * Panels.Length],
            new double[Panels.Length * Panels.Length],
            new double[Panels.Length * Panels.Length],
            new double[Panels.Length * Panels.Length],
        ];
        FillPotential();
        _parities =
        [
            .. Enumerable
                .Range(0, 4)
                .Select(parity => new Lazy<SheetParity>(() => new SheetParity(this, parity % 2 == 0 ? 1 : -1, parity < 2 ? 1 : -1))),
        ];
    }

    public SheetMesh[] Meshes { get; }
    public SheetPanel[] Panels { get; }

    /// <summary>Mesh of each panel.</summary>
    public int[] Owner { get; }

    /// <summary>Number of the first node of each mesh, and behind the last.</summary>
    public int[] FirstNode { get; }

    /// <summary>Mean 1/R between panel p's image k and panel q, at [k][p·count + q].</summary>
    public double[][] Potential { get; }

    /// <summary>
    /// Cuts a problem's conducting sheets; null when there are none. The last few are kept, since the sheets stay while the coils change.
    /// </summary>
    /// <param name="problem">The problem.</param>
    /// <param name="panels">Panels wanted in the quarter of all sheets together.</param>
    public static SheetCut? Create(FieldProblem problem, int panels)
    {
        List<(SheetModel Sheet, int Index)> sheets =
        [
            .. problem.Sheets.Select((sheet, index) => (sheet, index)).Where(s => s.sheet.ConductivitySPerM.Value > 0),
        ];
        if (sheets.Count == 0 || problem.Coils.Count == 0)
        {
            return null;
        }

        IReadOnlyList<(double X, double Y, double Radius)>[] holes = [.. sheets.Select(s => SheetHoles.Of(problem, s.Sheet))];
        double area = sheets.Sum(s => QuarterArea(s.Sheet)),
            step = Math.Sqrt(area / panels);
        return KnownCuts.Get(panels, sheets, holes, () =>
            new SheetCut([.. sheets.Select((s, k) => new SheetMesh(s.Sheet, s.Index, step, holes[k]))])
        );
    }

    /// <summary>Matrices of a mirror class: bit 0 odd in x, bit 1 odd in y.</summary>
    public SheetParity Parity(int parity) => _parities[parity].Value;

    public static int SignX(int image) => image % 2 == 0 ? 1 : -1;

    public static int SignY(int image) => image < 2 ? 1 : -1;

    /// <summary>A vector mirrored like the panels.</summary>
    public static Vector3M Image(Vector3M v, int image) => new(SignX(image) * v.XM, SignY(image) * v.YM, v.ZM);

    private static double QuarterArea(SheetModel sheet)
    {
        double flat = sheet.LengthM * sheet.WidthM / 4;
        return flat + (sheet.Shape == SheetShape.Cover ? (sheet.LengthM + sheet.WidthM) / 2 * (sheet.TopM - sheet.BottomM) : 0);
    }

    private void FillPotential()
    {
        int n = Panels.Length;
        for (int p = 0; p < n; p++)
        {
            for (int q = 0; q <= p; q++)
            {
                for (int image = 0; image < 4; image++)
                {
                    double mean =
                        p == q && image == 0
                            ? PanelPotential.Self(Panels[p])
                            : PanelPotential.Between(Panels[p], Panels[q], SignX(image), SignY(image));
                    Potential[image][p * n + q] = Potential[image][q * n + p] = mean;
                }
            }
        }
    }
}
