namespace Coilwright.Physics.Electrostatics;

/// <summary>A winding as the electric field sees it: an outline inside and outside, between two heights, in its insulators.</summary>
internal sealed class WoundBody
{
    /// <summary>Flanges when a recipe states none, m. Common practice, no source.</summary>
    public static Estimate UsualFlangeM { get; } = new(1.4e-3, 0.8e-3, 2.5e-3, Basis.Assumed);

    /// <summary>Thinnest wall of a bobbin that states none: the rest up to the poles is then air. Common practice, no source.</summary>
    public const double ThinWallM = 0.8e-3;

    /// <summary>Permittivity of a bobbin of unnamed material: wood and plastics, 2.5…6. Assumption.</summary>
    public static Estimate UsualPermittivity { get; } = new(3.6, 2.5, 6, Basis.Assumed);

    /// <summary>Nearest that metal comes to the copper, m: enamel, paper and tape. Assumption.</summary>
    private const double LeastGapM = 0.05e-3;

    public WoundBody(CoilModel coil, double buildM)
    {
        Coil = coil;
        BuildM = buildM;
        Inner = new PlanOutline(
            coil.Position.XM,
            coil.Position.YM,
            coil.Bobbin.CoreLengthM / 2,
            coil.Bobbin.CoreWidthM / 2,
            coil.Bobbin.EndRadiusM
        );
        Outer = Inner.Grown(buildM);
        TopM = coil.Position.ZM + coil.Bobbin.WindingHeightM / 2;
        BottomM = TopM - coil.Bobbin.WindingHeightM;
        Permittivity = coil.Bobbin.Permittivity ?? UsualPermittivity;
    }

    public CoilModel Coil { get; }
    public double BuildM { get; }
    public PlanOutline Inner { get; }
    public PlanOutline Outer { get; }
    public double TopM { get; }
    public double BottomM { get; }
    public Estimate Permittivity { get; }

    /// <summary>Length over permittivity of a way of so much through the wall and what lies behind it, m.</summary>
    public double WallWayM(double gapM, StrayCase assumed)
    {
        double unstatedM = assumed.Thickness < 0 ? ThinWallM : gapM;
        return WayM(gapM, Coil.Bobbin.WallM ?? unstatedM, assumed.Of(Permittivity), 1);
    }

    /// <summary>The same through a flange.</summary>
    public double FlangeWayM(double gapM, StrayCase assumed) =>
        WayM(gapM, Coil.Bobbin.FlangeM ?? assumed.ThicknessOf(UsualFlangeM), assumed.Of(Permittivity), 1);

    /// <summary>The same from the outer layer through tape and wax.</summary>
    public double OutsideWayM(double gapM, double fillPermittivity, StrayCase assumed)
    {
        double tape = Coil.TapePermittivity is { } permittivity ? assumed.Of(permittivity) : 1;
        return WayM(gapM, Coil.TapeM, tape, assumed.FillOf(fillPermittivity));
    }

    private static double WayM(double gapM, double solidM, double solid, double rest)
    {
        double wholeM = Math.Max(gapM, LeastGapM),
            inSolidM = Math.Min(wholeM, solidM);
        return inSolidM / solid + (wholeM - inSolidM) / rest;
    }
}
