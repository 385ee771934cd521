using Coilwright.Physics.Winding;

namespace Coilwright.Physics.Electrostatics;

/// <summary>Capacitances from windings to the parts round them and to each other, by field lines drawn straight across. SI units.</summary>
/// <remarks>
/// Inside, a line from each round rod spreads as in a coaxial cylinder, ε·dθ/ln(distance ÷ radius); from a blade it runs straight, with
/// 0.54·ε for each corner. Below and above, each piece of the winding's ring looks for the nearest part through the flange. Outside, each
/// piece looks along its normal for a cover, a part or another winding, and along a quarter circle for what lies below (ε·dz over the
/// arc). Edges reach on by 0.44 of the gap (2·ln 2 ÷ π: a thick edge over a plane). What this leaves out stands in
/// <see cref="ModelFactor95"/>.
/// </remarks>
internal sealed partial class StrayField
{
    /// <summary>Factor either way of the method against finite elements, 95 %.</summary>
    public const double ModelFactor95 = 1.5;

    /// <summary>By how much of the gap an edge reaches on.</summary>
    private const double EdgeReach = 0.44;

    /// <summary>Excess of a right-angled corner between walls at one distance, over ε: the shape factor of an edge.</summary>
    private const double CornerExcess = 0.54;

    /// <summary>
    /// Field round a winding past a free upper or lower face, over ε0 and the length of the turn, for the whole voltage from layer to
    /// layer: from our own finite elements of a free pair.
    /// </summary>
    private const double FreeFace = 1.7;

    /// <summary>Beyond this nothing is looked for, m.</summary>
    private const double ReachM = 20e-3;
    private const int Depths = 5,
        Heights = 4;

    private readonly List<StrayPart> _parts;
    private readonly double _fill;

    public StrayField(PickupModel model, IReadOnlyList<double> buildsM)
    {
        _parts = StrayParts.From(model);
        _fill = model.GapPermittivity;
        Bodies = [.. model.Coils.Select((coil, c) => new WoundBody(coil, buildsM[c]))];
        Groups = _parts.Count == 0 ? 0 : 1 + _parts.Max(part => part.Group);
        ToGroups = new StrayLink[Bodies.Count, Groups];
        OwnF = new double[Bodies.Count];
        BetweenF = new double[Bodies.Count, Bodies.Count, StrayCase.All.Count];
        for (int c = 0; c < Bodies.Count; c++)
        {
            for (int g = 0; g < Groups; g++)
            {
                ToGroups[c, g] = new StrayLink();
            }

            Inside(c);
            Ring(c, up: false);
            Ring(c, up: true);
            Outside(c);
        }
    }

    public IReadOnlyList<WoundBody> Bodies { get; }
    public IReadOnlyList<StrayPart> Parts => _parts;
    public int Groups { get; }
    public StrayLink[,] ToGroups { get; }

    /// <summary>Of each winding with itself, through the air past its free faces, F.</summary>
    public double[] OwnF { get; }

    /// <summary>Between the outsides of two windings by set of assumptions, F; each pair's halves add from both sides.</summary>
    public double[,,] BetweenF { get; }

    private void Inside(int c)
    {
        WoundBody body = Bodies[c];
        foreach (StrayPart pole in _parts.Where(part => part.Coil == c))
        {
            double topM = Math.Min(pole.TopM, body.TopM),
                bottomM = Math.Max(pole.BottomM, body.BottomM);
            int on = (pole.TopM > body.TopM ? 1 : 0) + (pole.BottomM < body.BottomM ? 1 : 0);
            if (topM <= bottomM)
            {
                continue;
            }

            foreach (OutlinePoint point in pole.Plan.Points())
            {
                double gapM = body.Inner.AlongM(point.XM, point.YM, point.NormalX, point.NormalY, ReachM);
                if (double.IsInfinity(gapM) || IsScreened(pole, point, gapM))
                {
                    continue;
                }

                Add(c, pole.Group, depth: 0, assumed =>
                    point.LengthM * (topM - bottomM + on * EdgeReach * gapM) / Spread(body.WallWayM(gapM, assumed), gapM, point.RadiusM)
                );
            }

            if (pole.Plan.RadiusM <= 0)
            {
                Add(c, pole.Group, depth: 0, assumed => 4 * CornerExcess * (topM - bottomM) * assumed.Of(body.Permittivity));
            }
        }
    }

    /// <summary>True where another pole of the same coil stands between a pole and the winding.</summary>
    private bool IsScreened(StrayPart pole, OutlinePoint point, double gapM) =>
        _parts.Any(other =>
            other.Coil == pole.Coil
            && other.Plan.DistanceM(pole.Plan.XM, pole.Plan.YM) > 0
            && other.Plan.AlongM(point.XM, point.YM, point.NormalX, point.NormalY, gapM) < gapM
        );

    private void Ring(int c, bool up)
    {
        WoundBody body = Bodies[c];
        for (int k = 0; k < Depths; k++)
        {
            double depth = (k + 0.5) / Depths;
            foreach (OutlinePoint point in body.Inner.Grown(depth * body.BuildM).Points())
            {
                if (Vertical(point.XM, point.YM, up ? body.TopM : body.BottomM, up) is not (StrayPart part, double gapM))
                {
                    OwnF[c] += FreeFace * LayCapacitance.VacuumPermittivity * point.LengthM / Depths;
                    continue;
                }

                double edgeM = k == Depths - 1 ? EdgeReach * gapM : 0;
                Add(c, part.Group, depth, assumed => point.LengthM * (body.BuildM / Depths + edgeM) / body.FlangeWayM(gapM, assumed));
            }
        }
    }

    private void Outside(int c)
    {
        WoundBody body = Bodies[c];
        double stepM = (body.TopM - body.BottomM) / Heights;
        foreach (OutlinePoint point in body.Outer.Points())
        {
            for (int k = 0; k < Heights; k++)
            {
                OutsidePiece(c, point, body.BottomM + k * stepM, stepM);
            }
        }
    }

    /// <summary>A piece of a winding's outside, so high from its lower end: the nearest of what it faces.</summary>
    private void OutsidePiece(int c, OutlinePoint point, double lowM, double stepM)
    {
        WoundBody body = Bodies[c];
        (StrayPart? part, double gapM, double beside) = Sideways(point, lowM, stepM);
        (int coil, double awayM, double share) = Neighbour(c, point, lowM, stepM);
        (StrayPart? under, double arcM) = Under(point, lowM + stepM / 2);
        double areaM2 = stepM * point.LengthM;
        if (part is not null && gapM <= Math.Min(awayM, arcM))
        {
            double radiusM = part.IsCover ? point.RadiusM : 0;
            Add(c, part.Group, 1, assumed => beside * areaM2 / Spread(body.OutsideWayM(gapM, _fill, assumed), gapM, radiusM));
        }
        else if (coil >= 0 && awayM <= arcM)
        {
            AddBetween(c, coil, assumed => share * areaM2 / body.OutsideWayM(awayM, _fill, assumed) / 2);
        }
        else if (under is not null)
        {
            Add(c, under.Group, 1, assumed => areaM2 / body.OutsideWayM(arcM, 1, assumed));
        }
    }

    /// <summary>How much of a piece's height lies beside something between two heights.</summary>
    private static double Beside(double lowM, double stepM, double bottomM, double topM) =>
        Math.Max(0, Math.Min(lowM + stepM, topM) - Math.Max(lowM, bottomM)) / stepM;

    /// <summary>
    /// Way over permittivity with the spread of lines from a curve of this radius: radius·ln(1 + gap ÷ radius) in place of the gap.
    /// </summary>
    private static double Spread(double wayM, double gapM, double radiusM) =>
        radiusM > 0 && gapM > 0 ? wayM * radiusM * Math.Log(1 + gapM / radiusM) / gapM : wayM;

    private void Add(int coil, int group, double depth, Func<StrayCase, double> areaOverWay)
    {
        for (int which = 0; which < StrayCase.All.Count; which++)
        {
            ToGroups[coil, group].Add(which, LayCapacitance.VacuumPermittivity * areaOverWay(StrayCase.All[which]), depth);
        }
    }

    private void AddBetween(int a, int b, Func<StrayCase, double> areaOverWay)
    {
        for (int which = 0; which < StrayCase.All.Count; which++)
        {
            double farad = LayCapacitance.VacuumPermittivity * areaOverWay(StrayCase.All[which]);
            BetweenF[a, b, which] += farad;
            BetweenF[b, a, which] += farad;
        }
    }
}
