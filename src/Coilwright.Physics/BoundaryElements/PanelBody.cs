namespace Coilwright.Physics.BoundaryElements;

/// <summary>A rectangular bar or blade: even charge on rectangles of its six faces, smaller toward the edges.</summary>
internal sealed class PanelBody : MagneticBody
{
    private static readonly double[] Whole = [1];

    private readonly Vector3M _centre,
        _half;
    private readonly Panel[] _panels;
    private readonly SurfacePoint[] _points;
    private readonly PanelBands _bands;
    private readonly (int X, int Y, int Z) _divisions;

    /// <param name="centre">Middle of the bar.</param>
    /// <param name="size">Sizes along x, y, z.</param>
    /// <param name="divisions">Panels along x, y, z; the count along x is even, so that no panel lies across the middle.</param>
    /// <param name="material">What it is made of.</param>
    /// <param name="polarisationT">Source term µ0·M0, T.</param>
    /// <param name="points">Points along a panel's longer side where the field of other parts is averaged.</param>
    public PanelBody(
        Vector3M centre,
        Vector3M size,
        (int X, int Y, int Z) divisions,
        BodyMaterial material,
        Vector3M polarisationT,
        int points
    )
        : base(material, polarisationT)
    {
        (_centre, _half, _divisions) = (centre, new Vector3M(size.XM / 2, size.YM / 2, size.ZM / 2), divisions);
        List<Panel> panels = [];
        for (int axis = 0; axis < 3; axis++)
        {
            AddFaces(panels, axis, Axis(divisions, (axis + 1) % 3), Axis(divisions, (axis + 2) % 3));
        }

        _panels = [.. panels];
        _bands = new PanelBands(
            [.. panels.Select(panel => (new Vector3M(panel.X, panel.Y, panel.Z), panel.HalfU, panel.HalfV))],
            [.. panels.Select(panel => panel.Axis)]
        );
        Area = [.. panels.Select(panel => 4 * panel.HalfU * panel.HalfV)];
        _points = [.. panels.Select((panel, i) => At(panel, i, 0, 0, Whole))];
        Spread = points == 1 ? _points : [.. panels.SelectMany((panel, i) => Around(panel, i, points))];
    }

    public override int Count => _panels.Length;
    public override int Stride => _panels.Length;
    public override double[] Area { get; }
    public override double[] Weight => Area;
    public override IReadOnlyList<SurfacePoint> Points => _points;

    /// <summary>Points where the field of rods is averaged.</summary>
    public override IReadOnlyList<SurfacePoint> Spread { get; }

    /// <summary>Panels of the face that looks up (+1) or down (−1) if it lies at a height; otherwise none.</summary>
    public IReadOnlyList<int> FaceAt(double z, int side, double within) =>
        Math.Abs(_centre.ZM + side * _half.ZM - z) > within
            ? []
            : [.. Enumerable.Range(0, Count).Where(i => _panels[i].Axis == 2 && _panels[i].Side == side)];

    /// <summary>True if a point lies over a panel of the upper or lower face.</summary>
    public bool Holds(int panel, double x, double y) =>
        Math.Abs(x - _panels[panel].X) <= _panels[panel].HalfU && Math.Abs(y - _panels[panel].Y) <= _panels[panel].HalfV;

    public override double HeightM(int element) => _panels[element].Z;

    public override double NormalPolarisationT(int element) =>
        _points[element].NormalX * PolarisationT.XM
        + _points[element].NormalY * PolarisationT.YM
        + _points[element].NormalZ * PolarisationT.ZM;

    public override int Mirror(int element) => _panels[element].Mirror;

    public override int MirrorSign(int element) => 1;

    public override bool Mirrors(MagneticBody other, double x0) =>
        other is PanelBody bar
        && bar._half == _half
        && bar.Count == Count
        && bar.Material == Material
        && Math.Abs(bar._centre.XM + _centre.XM - 2 * x0) < 1e-9
        && Math.Abs(bar._centre.YM - _centre.YM) < 1e-9
        && Math.Abs(bar._centre.ZM - _centre.ZM) < 1e-9
        && bar.PolarisationT == PolarisationT with { XM = 0 - PolarisationT.XM };

    public override Vector3M Place => _centre;

    public override bool HasShapeOf(MagneticBody other) => other is PanelBody bar && bar._half == _half && bar._divisions == _divisions;

    public override void PatchFields(int patch, double x, double y, double z, Span<Vector3M> fields)
    {
        ref readonly Panel panel = ref _panels[patch];
        double ex = x - panel.X,
            ey = y - panel.Y,
            ez = z - panel.Z;
        switch (panel.Axis)
        {
            case 0:
                (double y0, double z0, double x0) = PanelKernel.Field(panel.HalfU, panel.HalfV, ey, ez, ex);
                fields[0] = new Vector3M(x0, y0, z0);
                break;
            case 1:
                (double z1, double x1, double y1) = PanelKernel.Field(panel.HalfU, panel.HalfV, ez, ex, ey);
                fields[0] = new Vector3M(x1, y1, z1);
                break;
            default:
                (double x2, double y2, double z2) = PanelKernel.Field(panel.HalfU, panel.HalfV, ex, ey, ez);
                fields[0] = new Vector3M(x2, y2, z2);
                break;
        }
    }

    public override void NormalFields(in SurfacePoint point, Span<double> normal) => _bands.NormalFields(point, normal);

    /// <summary>The potential goes from the middle along x, then straight to the panel, both inside the bar.</summary>
    public override void Couple(CoilField coil, double[] share, double[] drive, double[] potential)
    {
        double flux = 0,
            area = 0;
        Dictionary<double, double> axis = AxisPotential(coil);
        GaussRule rule = GaussRule.WithNodes(4);
        for (int i = 0; i < Count; i++)
        {
            if (share[i] <= 0)
            {
                continue; // its mirror image stands for it, in the mean too
            }

            Panel panel = _panels[i];
            SurfacePoint at = _points[i];
            Vector3M h = coil.ComputeField(panel.X, panel.Y, panel.Z);
            drive[i] = at.NormalX * h.XM + at.NormalY * h.YM + at.NormalZ * h.ZM;
            potential[i] = axis[panel.X] - Across(coil, panel, rule);
            flux += Area[i] * drive[i];
            area += Area[i];
        }

        for (int i = 0; i < Count; i++)
        {
            drive[i] -= flux / area;
        }
    }

    private static SurfacePoint At(in Panel panel, int element, double u, double v, double[] shares)
    {
        (double x, double y, double z) = panel.Axis switch
        {
            0 => (0.0, u, v),
            1 => (v, 0.0, u),
            _ => (u, v, 0.0),
        };
        (double nx, double ny, double nz) = panel.Axis switch
        {
            0 => (panel.Side, 0.0, 0.0),
            1 => (0.0, panel.Side, 0.0),
            _ => (0.0, 0.0, (double)panel.Side),
        };
        return new SurfacePoint(element, panel.X + x, panel.Y + y, panel.Z + z, nx, ny, nz, shares);
    }

    private static IEnumerable<SurfacePoint> Around(Panel panel, int element, int points)
    {
        GaussRule rule = GaussRule.WithNodes(points);
        bool alongU = panel.HalfU > panel.HalfV;
        double half = alongU ? panel.HalfU : panel.HalfV;
        return rule.At.Select(
            (t, k) => At(panel, element, alongU ? (2 * t - 1) * half : 0, alongU ? 0 : (2 * t - 1) * half, [rule.Weight[k]])
        );
    }

    private double Across(CoilField coil, in Panel panel, GaussRule rule)
    {
        double dy = panel.Y - _centre.YM,
            dz = panel.Z - _centre.ZM,
            sum = 0;
        for (int g = 0; g < rule.At.Length; g++)
        {
            double t = rule.At[g];
            Vector3M h = coil.ComputeField(panel.X, _centre.YM + t * dy, _centre.ZM + t * dz);
            sum += rule.Weight[g] * (h.YM * dy + h.ZM * dz);
        }

        return sum;
    }

    private Dictionary<double, double> AxisPotential(CoilField coil)
    {
        GaussRule rule = GaussRule.WithNodes(3);
        Dictionary<double, double> potential = [];
        double from = 0,
            sum = 0;
        foreach (double x in _panels.Select(panel => panel.X).Distinct().Order())
        {
            for (int g = 0; g < rule.At.Length && potential.Count > 0; g++)
            {
                sum -= rule.Weight[g] * (x - from) * coil.ComputeField(from + rule.At[g] * (x - from), _centre.YM, _centre.ZM).XM;
            }

            potential[x] = sum;
            from = x;
        }

        return potential;
    }

    private void AddFaces(List<Panel> panels, int axis, int partsU, int partsV)
    {
        int alongU = (axis + 1) % 3,
            alongV = (axis + 2) % 3,
            first = panels.Count;
        for (int face = 0; face < 2; face++)
        {
            for (int i = 0; i < partsU; i++)
            {
                for (int j = 0; j < partsV; j++)
                {
                    double[] at = [_centre.XM, _centre.YM, _centre.ZM];
                    at[axis] += (2 * face - 1) * Along(_half, axis);
                    (double u, double halfU) = ResistanceChart(Along(_half, alongU), i, partsU);
                    (double v, double halfV) = ResistanceChart(Along(_half, alongV), j, partsV);
                    at[alongU] += u;
                    at[alongV] += v;
                    int mirrorFace = axis == 0 ? 1 - face : face;
                    int mirrorI = alongU == 0 ? partsU - 1 - i : i,
                        mirrorJ = alongV == 0 ? partsV - 1 - j : j;
                    panels.Add(
                        new Panel(
                            axis,
                            2 * face - 1,
                            at[0],
                            at[1],
                            at[2],
                            halfU,
                            halfV,
                            first + (mirrorFace * partsU + mirrorI) * partsV + mirrorJ
                        )
                    );
                }
            }
        }
    }

    /// <summary>Middle and half width of a strip; cosine steps, half way to even ones.</summary>
    private static (double Middle, double Half) ResistanceChart(double half, int index, int parts)
    {
        double Edge(int k) => half * (0.5 * (2.0 * k / parts - 1) - 0.5 * Math.Cos(Math.PI * k / parts));
        return ((Edge(index) + Edge(index + 1)) / 2, (Edge(index + 1) - Edge(index)) / 2);
    }

    private static int Axis((int X, int Y, int Z) divisions, int axis) =>
        axis switch
        {
            0 => divisions.X,
            1 => divisions.Y,
            _ => divisions.Z,
        };

    private static double Along(Vector3M size, int axis) =>
        axis switch
        {
            0 => size.XM,
            1 => size.YM,
            _ => size.ZM,
        };

    private readonly record struct Panel(int Axis, int Side, double X, double Y, double Z, double HalfU, double HalfV, int Mirror);
}
