using Coilwright.Physics;
using Coilwright.Physics.Materials;
using Coilwright.Physics.Sizes;
using Coilwright.Physics.Winding;
using Coilwright.Physics.Wire;

namespace Coilwright.Analysis.Tests;

/// <summary>Invented pickups that several tests speak of.</summary>
internal static class Pickups
{
    /// <summary>A narrow tall single coil with six rods.</summary>
    public static PickupModel Single(double turns = 8000, string gauge = "AWG 42") =>
        new()
        {
            Coils =
            [
                Coil(
                    "main",
                    turns,
                    gauge,
                    6.2e-3,
                    11e-3,
                    4.3e-3,
                    Rods("alnico-5", 4.75e-3, 17e-3, 9e-3),
                    default,
                    WindingDirection.CounterClockwise
                ),
            ],
        };

    /// <summary>Two coils side by side on one spool, wound against each other, with steel slugs.</summary>
    public static PickupModel Twin(double turns = 5000) =>
        new()
        {
            Connection = Connection.Series,
            Coils =
            [
                Coil(
                    "a",
                    turns,
                    "AWG 42",
                    5.6e-3,
                    6.4e-3,
                    6e-3,
                    Rods("low-carbon-steel", 4.8e-3, 12.6e-3, 5e-3),
                    new Vector3M(0, -9.5e-3, 0),
                    WindingDirection.CounterClockwise
                ),
                Coil(
                    "b",
                    turns,
                    "AWG 42",
                    5.6e-3,
                    6.4e-3,
                    6e-3,
                    Rods("low-carbon-steel", 4.8e-3, 12.6e-3, 5e-3),
                    new Vector3M(0, 9.5e-3, 0),
                    WindingDirection.Clockwise
                ),
            ],
        };

    /// <summary>The same with lengths of its first coil that are known within ±0.05 to ±0.15 mm.</summary>
    public static PickupModel Sized(PickupModel model, double pieceShare = 0.5)
    {
        (SizeKind Kind, double ValueM, double WithinM)[] lengths =
        [
            (SizeKind.CoreLength, model.Coils[0].Bobbin.CoreLengthM, 1.5e-4),
            (SizeKind.CoreWidth, model.Coils[0].Bobbin.CoreWidthM, 1e-4),
            (SizeKind.WindingHeight, model.Coils[0].Bobbin.WindingHeightM, 1e-4),
            (SizeKind.MostBuild, model.Coils[0].Bobbin.MaxBuildM!.Value, 1e-4),
            (SizeKind.PoleDiameter, model.Coils[0].Poles[0].DiameterM, 1e-4),
            (SizeKind.PoleLength, model.Coils[0].Poles[0].LengthM, 1.5e-4),
            (SizeKind.PoleSpacing, 10.4e-3, 5e-5),
            (SizeKind.PoleTop, model.Coils[0].Poles[0].TopsM[0], 1e-4),
        ];
        return model with { Sizes = [.. lengths.Select(one => Size(one.Kind, one.ValueM, one.WithinM) with { PieceShare = pieceShare })] };
    }

    /// <summary>One length of the first coil.</summary>
    public static PartSize Size(SizeKind kind, double valueM, double withinM) =>
        new(kind, 0, 0, kind.ToString(), new Estimate(valueM, valueM - withinM, valueM + withinM, Basis.Assumed)) { Source = "as typed" };

    private static CoilModel Coil(
        string name,
        double turns,
        string gauge,
        double widthM,
        double heightM,
        double roomM,
        PoleModel poles,
        Vector3M position,
        WindingDirection direction
    ) =>
        new()
        {
            Name = name,
            Bobbin = new Bobbin
            {
                CoreLengthM = 61e-3,
                CoreWidthM = widthM,
                EndRadiusM = widthM / 2,
                WindingHeightM = heightM,
                MaxBuildM = roomM,
            },
            Wire = WireCatalogue.Standard.ModelFor(gauge, "single", "plain-enamel"),
            Winding = new WindingModel
            {
                Turns = turns,
                PitchM = 0.19e-3,
                Direction = direction,
            },
            Poles = [poles],
            Position = position,
        };

    private static PoleModel Rods(string material, double diameterM, double lengthM, double topM)
    {
        Material found = MaterialCatalogue.Find(material)!;
        return new PoleModel
        {
            Shape = PoleShape.Rod,
            Material = material,
            DiameterM = diameterM,
            WidthM = diameterM,
            LengthM = lengthM,
            PositionsM = [.. Enumerable.Range(0, 6).Select(i => (i - 2.5) * 10.4e-3)],
            TopsM = [.. Enumerable.Repeat(topM, 6)],
            RelativePermeability = found.RelativePermeability.Estimate,
            ConductivitySPerM = found.ConductivitySPerM.Estimate,
            PolarisationT = found.WorkingPolarisationT?.Estimate ?? Estimate.Exact(0),
        };
    }
}
