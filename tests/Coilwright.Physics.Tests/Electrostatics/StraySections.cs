using Coilwright.Physics.Electrostatics;
using Coilwright.Physics.Winding;
using Coilwright.Physics.Wire;

namespace Coilwright.Physics.Tests.Electrostatics;

/// <summary>Pickups with the sections of tests/Outside/fields, in mm.</summary>
internal static class StraySections
{
    public static readonly Estimate Three = Estimate.Exact(3);
    private static readonly Estimate s_metal = Estimate.Exact(6e6);
    private static readonly Estimate s_one = Estimate.Exact(1);

    public static CoilModel Coil(double lengthMm, double coreWidthMm, double yMm, CoilEnd hot, params PoleModel[] poles) =>
        new()
        {
            Name = "test",
            Bobbin = new Bobbin
            {
                CoreLengthM = lengthMm / 1e3,
                CoreWidthM = coreWidthMm / 1e3,
                EndRadiusM = coreWidthMm / 2e3,
                WindingHeightM = 6.4e-3,
                FlangeM = 1.2e-3,
                Permittivity = Three,
            },
            Wire = new WireModel
            {
                Gauge = "test",
                Insulation = "test",
                BareDiameterM = Estimate.Exact(63e-6),
                OverallDiameterM = Estimate.Exact(71e-6),
                EnamelPermittivity = Estimate.Exact(3.5),
            },
            Winding = new WindingModel { Turns = 5000 },
            Poles = poles,
            Position = new Vector3M(0, yMm / 1e3, 0),
            Hot = hot,
        };

    public static PoleModel Blade(double widthMm, double thickMm, double lengthMm, double topMm, bool grounded) =>
        new()
        {
            Shape = PoleShape.Blade,
            Material = "test",
            DiameterM = thickMm / 1e3,
            WidthM = widthMm / 1e3,
            LengthM = lengthMm / 1e3,
            PositionsM = [0],
            TopsM = [topMm / 1e3],
            RelativePermeability = s_one,
            ConductivitySPerM = s_metal,
            Grounded = grounded,
        };

    public static PoleModel Rods(double diameterMm, double lengthMm, double[] atMm) =>
        new()
        {
            Shape = PoleShape.Rod,
            Material = "test",
            DiameterM = diameterMm / 1e3,
            LengthM = lengthMm / 1e3,
            PositionsM = [.. atMm.Select(x => x / 1e3)],
            TopsM = [.. atMm.Select(_ => lengthMm / 2e3)],
            RelativePermeability = s_one,
            ConductivitySPerM = s_metal,
            Grounded = true,
        };

    public static SheetModel Sheet(
        SheetShape shape,
        double lengthMm,
        double widthMm,
        double topMm,
        double bottomMm,
        double thickMm,
        bool grounded = true
    ) =>
        new()
        {
            Shape = shape,
            Material = "test",
            ThicknessM = thickMm / 1e3,
            LengthM = lengthMm / 1e3,
            WidthM = widthMm / 1e3,
            TopM = topMm / 1e3,
            BottomM = bottomMm / 1e3,
            CornerM = 0,
            RelativePermeability = s_one,
            ConductivitySPerM = s_metal,
            Grounded = grounded,
        };

    /// <summary>What is outside the windings across the pickup's wires, F.</summary>
    public static double Farad(PickupModel pickup)
    {
        StrayEstimate stray = StrayCapacitance.Compute(
            pickup,
            [.. pickup.Coils.Select(_ => 4e-3)],
            pickup.Coils.Count == 1 ? [1] : [0.5, 0.5]
        );
        return stray.Metal.Value + stray.Between.Value + stray.OwnF;
    }

    /// <summary>A section of tests/Reference/field/own-capacitances.csv as a pickup so long.</summary>
    public static PickupModel Section(string name, CoilEnd hot, bool grounded, double lengthMm)
    {
        PickupModel pair = new() { Coils = [Coil(lengthMm, 5, -9.5, hot), Coil(lengthMm, 5, 9.5, hot)], Connection = Connection.Series };
        return name switch
        {
            "cover" => new PickupModel
            {
                Coils = [Coil(lengthMm, 6, 0, hot, Blade(lengthMm - 10, 4, 10, 5, grounded))],
                Sheets =
                [
                    Sheet(SheetShape.Cover, lengthMm + 14, 20, 7.5, -7, 1),
                    Sheet(SheetShape.Plate, lengthMm + 14, 20, -7.2, -8, 0.8),
                ],
            },
            "pair-plate" => pair with { Sheets = [Sheet(SheetShape.Plate, lengthMm + 30, 36, -5, -6, 1, grounded)] },
            _ => pair with
            {
                Coils = [.. pair.Coils.Select(coil => coil with { Poles = [Blade(lengthMm - 10, 4, 14, 5, grounded)] })],
                Bars =
                [
                    new BarModel
                    {
                        Material = "test",
                        SizeM = new Vector3M((lengthMm - 10) / 1e3, 15e-3, 3.2e-3),
                        CentreM = new Vector3M(0, 0, -7.4e-3),
                        RelativePermeability = s_one,
                        ConductivitySPerM = s_metal,
                        Grounded = grounded,
                    },
                ],
            },
        };
    }
}
