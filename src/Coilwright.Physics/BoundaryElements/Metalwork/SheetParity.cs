namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>
/// Currents of one mirror class: their stream function keeps (+1) or changes (−1) its sign in x → −x and in y → −y. Inductance and
/// resistance between its nodes.
/// </summary>
/// <remarks>
/// The current is the curl of ψ·n, ψ bilinear on each panel; the inductance takes the current as even over a panel, the resistance
/// integrates it.
/// ψ in A; so a node's inductance is in H and its resistance in Ω. Both count all four quarters.
/// </remarks>
internal sealed class SheetParity
{
    private readonly SheetCut _cut;
    private readonly int[] _unknown;
    private readonly Lazy<DenseLu> _factors;

    /// <summary>Angular frequency about which currents are sought, 1/s: in the middle of the resonances of pickups.</summary>
    private const double Middle = 2 * Math.PI * 4000;

    public SheetParity(SheetCut cut, int signX, int signY)
    {
        (_cut, SignX, SignY) = (cut, signX, signY);
        _unknown = new int[cut.FirstNode[^1]];
        Array.Fill(_unknown, -1);
        List<int> owner = [];
        for (int m = 0; m < cut.Meshes.Length; m++)
        {
            SheetMesh mesh = cut.Meshes[m];
            for (int node = 0; node < mesh.Nodes; node++)
            {
                bool free = !mesh.IsOnEdge(node) && (signX > 0 || !mesh.IsOnX0[node]) && (signY > 0 || !mesh.IsOnY0[node]);
                if (free && mesh.Leader(node) == node)
                {
                    _unknown[cut.FirstNode[m] + node] = owner.Count;
                    owner.Add(m);
                }
            }
        }

        Owner = [.. owner];
        InductanceH = FillInductance();
        ResistanceOhm = FillResistance();
        _factors = new(() => new DenseLu([.. ResistanceOhm.Select((ohm, k) => ohm + Middle * InductanceH[k])], Count, default));
    }

    public int SignX { get; }
    public int SignY { get; }

    /// <summary>Mesh of each unknown.</summary>
    public int[] Owner { get; }
    public int Count => Owner.Length;

    /// <summary>Row-major matrices.</summary>
    public double[] InductanceH { get; }
    public double[] ResistanceOhm { get; }

    /// <summary>Of R + s₀L.</summary>
    public DenseLu Factors => _factors.Value;

    /// <summary>Sign of this class in image k.</summary>
    public int Sign(int image) => (image % 2 == 0 ? 1 : SignX) * (image < 2 ? 1 : SignY);

    /// <summary>Unknown of a panel's corner, −1 where ψ is zero.</summary>
    public int Unknown(int panel, int corner) => _unknown[_cut.FirstNode[_cut.Owner[panel]] + _cut.Panels[panel].Nodes[corner]];

    /// <summary>Area times current density of a panel per unit ψ at one of its corners.</summary>
    public static Vector3M Moment(SheetPanel panel, int corner)
    {
        double u = corner % 2 == 0 ? -0.5 : 0.5,
            v = corner < 2 ? -0.5 : 0.5;
        return Space.Times(Space.Minus(Space.Times(panel.Out, u), Space.Times(panel.Round, v)), panel.Turn);
    }

    private double[] FillInductance()
    {
        double[] inductance = new double[Count * Count],
            mixed = new double[Count];
        int panels = _cut.Panels.Length;
        for (int axis = 0; axis < 3; axis++)
        {
            double[] signs = [1, (axis == 0 ? 1 : -1) * SignX, (axis == 1 ? 1 : -1) * SignY, (axis == 2 ? 1 : -1) * SignX * SignY];
            (int[] unknown, double[] moment) = Moments(axis);
            for (int p = 0; p < panels; p++)
            {
                Array.Clear(mixed);
                for (int q = 0, at = p * panels; q < panels; q++, at++)
                {
                    double kernel =
                        _cut.Potential[0][at]
                        + signs[1] * _cut.Potential[1][at]
                        + signs[2] * _cut.Potential[2][at]
                        + signs[3] * _cut.Potential[3][at];
                    for (int corner = 4 * q; corner < 4 * q + 4; corner++)
                    {
                        mixed[unknown[corner]] += kernel * moment[corner];
                    }
                }

                for (int corner = 4 * p; corner < 4 * p + 4; corner++)
                {
                    if (Math.Abs(moment[corner]) > 0)
                    {
                        Rows.Subtract(inductance.AsSpan(unknown[corner] * Count, Count), mixed, -4e-7 * moment[corner]);
                    }
                }
            }
        }

        return inductance;
    }

    /// <summary>One component of the moments of every panel's corners; fixed corners count as unknown 0 with no moment.</summary>
    private (int[] Unknown, double[] Moment) Moments(int axis)
    {
        int[] unknown = new int[4 * _cut.Panels.Length];
        double[] moment = new double[unknown.Length];
        for (int k = 0; k < unknown.Length; k++)
        {
            int node = Unknown(k / 4, k % 4);
            Vector3M m = Moment(_cut.Panels[k / 4], k % 4);
            unknown[k] = Math.Max(0, node);
            double along = axis switch
            {
                0 => m.XM,
                1 => m.YM,
                _ => m.ZM,
            };
            moment[k] = node < 0 ? 0 : along;
        }

        return (unknown, moment);
    }

    private double[] FillResistance()
    {
        double[] resistance = new double[Count * Count];
        for (int p = 0; p < _cut.Panels.Length; p++)
        {
            SheetModel sheet = _cut.Meshes[_cut.Owner[p]].Sheet;
            double[,] own = PanelResistance.Compute(_cut.Panels[p], sheet.ConductivitySPerM.Value * sheet.ThicknessM);
            for (int k = 0; k < 16; k++)
            {
                int row = Unknown(p, k / 4),
                    column = Unknown(p, k % 4);
                if (row >= 0 && column >= 0)
                {
                    resistance[row * Count + column] += 4 * own[k / 4, k % 4];
                }
            }
        }

        return resistance;
    }
}
