using Coilwright.Physics;
using Coilwright.Physics.BoundaryElements;
using Coilwright.Physics.Winding;

namespace Coilwright.Benchmarks;

/// <summary>The pickups whose field is timed; all invented.</summary>
internal static class FieldProblems
{
    public const string SixRods = "six rods",
        TwoCoils = "two coils, bar",
        Covered = "two coils, bar, cover";

    private static readonly double[] PolesM = [-0.026, -0.0156, -0.0052, 0.0052, 0.0156, 0.026];

    /// <summary>A problem by its name at some frequencies, Hz.</summary>
    public static FieldProblem Of(string name, IReadOnlyList<double> hz)
    {
        if (name == SixRods)
        {
            return new FieldProblem([Coil(0, 0.02975, 0.00325, 0.003, 0.011, 0.018, 0.009)], [], [], hz);
        }

        BarModel bar = new()
        {
            Material = "bar",
            SizeM = new Vector3M(0.062, 0.012, 0.003),
            CentreM = new Vector3M(0, 0, -0.0075),
            RelativePermeability = Estimate.Exact(4.5),
            ConductivitySPerM = Estimate.Exact(2e6),
        };
        SheetModel cover = new()
        {
            Shape = SheetShape.Cover,
            Material = "cover",
            ThicknessM = 0.5e-3,
            LengthM = 0.074,
            WidthM = 0.0375,
            TopM = 0.0066,
            BottomM = -0.009,
            CornerM = 0.004,
            RelativePermeability = Estimate.Exact(1),
            ConductivitySPerM = Estimate.Exact(3.4e6),
        };
        return new FieldProblem(
            [Coil(-0.009, 0.0285, 0.004, 0.0045, 0.0065, 0.015, 0.006), Coil(0.009, 0.0285, 0.004, 0.0045, 0.0065, 0.019, 0.006)],
            [bar],
            name == Covered ? [cover] : [],
            hz
        );
    }

    /// <summary>The case of tests/Outside/fields: six rods of permeability 100 without loss, one turn.</summary>
    public static FieldProblem OfTheFiniteElements()
    {
        FieldProblem six = Of(SixRods, []);
        FieldCoil coil = six.Coils[0];
        PoleModel rods = coil.Poles[0] with { RelativePermeability = Estimate.Exact(100), ConductivitySPerM = Estimate.Exact(0) };
        return six with { Coils = [coil with { Turns = 1, Poles = [rods] }] };
    }

    private static FieldCoil Coil(double y, double halfLong, double radius, double build, double height, double rodLength, double rodTop)
    {
        Bobbin bobbin = new()
        {
            CoreLengthM = 2 * (halfLong + radius),
            CoreWidthM = 2 * radius,
            EndRadiusM = radius,
            WindingHeightM = height,
        };
        PoleModel poles = new()
        {
            Shape = PoleShape.Rod,
            Material = "steel",
            DiameterM = 0.0048,
            LengthM = rodLength,
            PositionsM = PolesM,
            TopsM = [.. PolesM.Select(_ => rodTop)],
            RelativePermeability = new Estimate(100, 60, 300, Basis.Assumed),
            ConductivitySPerM = Estimate.Exact(6e6),
        };
        return new FieldCoil(bobbin, build, 6000, 1, new Vector3M(0, y, 0), [poles]);
    }
}
