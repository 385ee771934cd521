namespace Coilwright.Physics.BoundaryElements;

/// <summary>Turns poles and bars into bodies with cut surfaces.</summary>
internal sealed class BodyFactory(FieldSettings settings)
{
    /// <summary>Stated share of a screw's effect that its thread may take or give (assumed, no source).</summary>
    private const double ThreadError = 0.05;

    /// <summary>Added for a blade, whose panels have been checked by refinement alone.</summary>
    private const double BladeError = 0.02;

    /// <summary>Fewest panels along a bar over the usual number.</summary>
    private const double LeastScale = 0.2;

    private readonly Dictionary<(double, double, double, double), RingMesh> _meshes = [];

    /// <summary>Into how many elements each row and bar was cut, in their order.</summary>
    private readonly List<(int X, int Y, int Z)> _cuts = [];

    private IReadOnlyList<(int X, int Y, int Z)>? _given;
    private double _panelsScale = 1;

    /// <summary>
    /// The same for a problem of which one length differs a little: every part is cut into as many elements as its like here, and what is
    /// alike is shared.
    /// </summary>
    public BodyFactory ForNeighbour()
    {
        BodyFactory other = new(settings) { _given = _cuts, _panelsScale = _panelsScale };
        foreach (((double, double, double, double) size, RingMesh mesh) in _meshes)
        {
            other._meshes[size] = mesh;
        }

        return other;
    }

    /// <summary>Rods and screws of a problem.</summary>
    public static int RodsOf(FieldProblem problem) =>
        problem.Coils.Sum(coil => coil.Poles.Where(pole => pole.Shape != PoleShape.Blade).Sum(pole => pole.PositionsM.Count));

    public List<MagneticBody> Make(FieldProblem problem)
    {
        List<MagneticBody> bodies = [];
        while (_given is null && _panelsScale > LeastScale && PanelsOf(problem) > settings.MostPanels)
        {
            _panelsScale *= 0.9;
        }

        Azimuth azimuth = new(
            problem.Bars.Count > 0 ? settings.HarmonicsWithBars : settings.Harmonics,
            !MirrorsAcross(problem),
            settings.PairedWaves
        );
        foreach (FieldCoil coil in problem.Coils)
        {
            foreach (
                PoleModel pole in coil.Poles.Where(pole =>
                    Matters(pole.RelativePermeability, pole.ConductivitySPerM) || Math.Abs(pole.PolarisationT.Value) > 0
                )
            )
            {
                AddPoles(bodies, coil, pole, azimuth);
            }
        }

        foreach (
            BarModel bar in problem.Bars.Where(bar =>
                Matters(bar.RelativePermeability, bar.ConductivitySPerM) || bar.PolarisationT != default
            )
        )
        {
            double thin = Math.Min(bar.SizeM.XM, Math.Min(bar.SizeM.YM, bar.SizeM.ZM));
            BodyMaterial material = new(
                bar.RelativePermeability,
                bar.ConductivitySPerM.Value,
                SkinShape.Slab,
                thin / 2,
                settings.BarError + (_panelsScale < 1 ? FieldSettings.CoarseError : 0)
            );
            bodies.Add(
                new PanelBody(
                    bar.CentreM,
                    bar.SizeM,
                    Cut(() => Divisions(bar.SizeM, settings.LongPanels)),
                    material,
                    bar.PolarisationT,
                    settings.PanelPoints
                )
            );
        }

        return bodies;
    }

    /// <summary>x of the plane in which the whole problem mirrors itself, or null.</summary>
    public static double? MirrorPlane(FieldProblem problem, List<MagneticBody> bodies)
    {
        double x0 = problem.Coils.Count > 0 ? problem.Coils[0].Position.XM : 0;
        // Covers and plates lie about x = 0.
        return
            (problem.Sheets.Count == 0 || Math.Abs(x0) < 1e-9)
            && problem.Coils.All(coil => Math.Abs(coil.Position.XM - x0) < 1e-9)
            && bodies.TrueForAll(body => bodies.Exists(other => body.Mirrors(other, x0)))
            ? x0
            : null;
    }

    /// <summary>True if a rod stands on a bar.</summary>
    public static bool Touch(List<MagneticBody> bodies) =>
        bodies.OfType<RingBody>().Any(rod => bodies.OfType<PanelBody>().Any(bar => FootContact.Find(rod, bar) is not null));

    /// <summary>True if windings and parts lie along one line and mirror themselves in it, magnets too.</summary>
    private static bool MirrorsAcross(FieldProblem problem)
    {
        double y0 = problem.Coils.Count > 0 ? problem.Coils[0].Position.YM : 0;
        return problem.Coils.All(coil => Math.Abs(coil.Position.YM - y0) < 1e-9)
            && problem.Bars.All(bar => Math.Abs(bar.CentreM.YM - y0) < 1e-9 && Math.Abs(bar.PolarisationT.YM) <= 0)
            && (problem.Sheets.Count == 0 || Math.Abs(y0) < 1e-9);
    }

    private static bool Matters(Estimate permeability, Estimate conductivity) => permeability.High > 1 + 1e-6 || conductivity.Value > 0;

    private void AddPoles(List<MagneticBody> bodies, FieldCoil coil, PoleModel pole, Azimuth azimuth)
    {
        SkinShape skin = pole.Shape == PoleShape.Blade ? SkinShape.Slab : SkinShape.Cylinder;
        BodyMaterial material = new(
            pole.RelativePermeability,
            pole.ConductivitySPerM.Value,
            skin,
            pole.DiameterM / 2,
            pole.Shape switch
            {
                PoleShape.Screw => ThreadError,
                PoleShape.Blade => BladeError,
                _ => 0,
            } + (IsCoarse(pole) ? FieldSettings.CoarseError : 0)
        );
        (int X, int Y, int Z) cut = Cut(() => CutOf(pole));
        RingMesh? mesh = pole.Shape == PoleShape.Blade ? null : MeshOf(pole, cut);
        for (int i = 0; i < pole.PositionsM.Count; i++)
        {
            double x = coil.Position.XM + pole.PositionsM[i],
                y = coil.Position.YM,
                top = coil.Position.ZM + pole.TopsM[Math.Min(i, pole.TopsM.Count - 1)];
            if (mesh is null)
            {
                bodies.Add(
                    new PanelBody(
                        new Vector3M(x, y, top - pole.LengthM / 2),
                        SizeOf(pole),
                        cut,
                        material,
                        new Vector3M(0, 0, pole.PolarisationT.Value),
                        settings.PanelPoints
                    )
                );
            }
            else
            {
                bodies.Add(
                    new RingBody(mesh, new Vector3M(x, y, top - pole.LengthM), material, pole.PolarisationT.Value, settings.Around, azimuth)
                );
            }
        }
    }

    private static Vector3M SizeOf(PoleModel blade) => new(blade.WidthM, blade.DiameterM, blade.LengthM);

    /// <summary>Rings on a rod's side and on its ends, or panels of a blade.</summary>
    private (int X, int Y, int Z) CutOf(PoleModel pole)
    {
        double radius = pole.DiameterM / 2;
        return pole.Shape == PoleShape.Blade
            ? Divisions(SizeOf(pole), settings.BladePanels)
            : (Rings(settings.SideRings, pole.LengthM, radius), Rings(settings.CapRings, radius, pole.LengthM), 0);
    }

    private (int X, int Y, int Z) Cut(Func<(int X, int Y, int Z)> own)
    {
        (int X, int Y, int Z) cut = _given is { } given && _cuts.Count < given.Count ? given[_cuts.Count] : own();
        _cuts.Add(cut);
        return cut;
    }

    private RingMesh MeshOf(PoleModel pole, (int Side, int Cap, int None) cut)
    {
        bool head =
            pole.Shape == PoleShape.Screw && pole.HeadDiameterM > pole.DiameterM && pole.HeadHeightM > 0 && pole.HeadHeightM < pole.LengthM;
        var key = (pole.DiameterM, pole.LengthM, head ? pole.HeadDiameterM : 0, head ? pole.HeadHeightM : 0);
        if (!_meshes.TryGetValue(key, out RingMesh? mesh))
        {
            double radius = pole.DiameterM / 2;
            _meshes[key] = mesh = head
                ? RingMesh.Screw(radius, pole.LengthM, pole.HeadDiameterM / 2, pole.HeadHeightM, cut.Side, cut.Cap)
                : RingMesh.Rod(radius, pole.LengthM, cut.Side, cut.Cap);
        }

        return mesh;
    }

    /// <summary>
    /// Rings along a stretch of an outline: at least the usual, and as many as keep the widest (π/2 of the mean) within its share of what
    /// lies across.
    /// </summary>
    private int Rings(int usual, double along, double across) => (int)Math.Clamp(Needed(along, across), usual, settings.MostRings * usual);

    private double Needed(double along, double across) => Math.Ceiling(Math.PI / 2 * along / (settings.WidestRing * across));

    /// <summary>True for a pole that is cut more coarsely than its shape asks for.</summary>
    private bool IsCoarse(PoleModel pole) =>
        pole.Shape == PoleShape.Blade
            ? _panelsScale < 1
            : Needed(pole.LengthM, pole.DiameterM / 2) > settings.MostRings * settings.SideRings
                || Needed(pole.DiameterM / 2, pole.LengthM) > settings.MostRings * settings.CapRings;

    private int PanelsOf(FieldProblem problem)
    {
        int Faces((int X, int Y, int Z) parts) => 2 * (parts.X * parts.Y + parts.Y * parts.Z + parts.Z * parts.X);
        IEnumerable<PoleModel> blades = problem.Coils.SelectMany(coil => coil.Poles).Where(pole => pole.Shape == PoleShape.Blade);
        return problem.Bars.Sum(bar => Faces(Divisions(bar.SizeM, settings.LongPanels)))
            + blades.Sum(pole =>
                pole.PositionsM.Count * Faces(Divisions(new Vector3M(pole.WidthM, pole.DiameterM, pole.LengthM), settings.BladePanels))
            );
    }

    private (int X, int Y, int Z) Divisions(Vector3M size, int longest)
    {
        double length = Math.Max(size.XM, Math.Max(size.YM, size.ZM));
        int Parts(double side) =>
            Math.Max(2, 2 * (int)Math.Round(_panelsScale * longest / 2.0 * Math.Pow(side / length, settings.PanelPower)));
        return (Parts(size.XM), Parts(size.YM), Parts(size.ZM));
    }
}
