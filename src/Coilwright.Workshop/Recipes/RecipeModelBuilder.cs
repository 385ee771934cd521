using Coilwright.Physics;
using Coilwright.Physics.Materials;
using Coilwright.Physics.Strings;
using Coilwright.Physics.Winding;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Reading;
using Coilwright.Workshop.Recipes.Sizes;

namespace Coilwright.Workshop.Recipes;

/// <summary>Turns a recipe into the physical model that the engine computes with.</summary>
public static class RecipeModelBuilder
{
    /// <summary>95 % reading error of a shop micrometer on fine wire, m. Common practice, no source.</summary>
    private const double MicrometerM = 1e-6;

    /// <summary>95 % error of a measured resistance per length: meter and cut length. Common practice, no source.</summary>
    private const double OhmPerMFraction = 0.005;

    /// <summary>Diameter over the enamel of single build to the bare one, where no table says it. Common practice, no source.</summary>
    internal const double UsualOverall = 1.13;

    /// <summary>The model in SI units.</summary>
    /// <param name="recipe">A recipe that was read without a problem.</param>
    /// <param name="temperatureC">Temperature of the winding, °C.</param>
    public static PickupModel ToModel(Recipe recipe, double temperatureC = 20) =>
        new()
        {
            Coils = [.. recipe.Coils.Select(coil => Learnt(recipe, coil, Coil(coil)))],
            Bars = [.. recipe.Magnets.Select(Bar), .. recipe.Metalwork.Where(part => part.Shape == MetalworkShape.Keeper).Select(Keeper)],
            Sheets =
            [
                .. recipe
                    .Metalwork.Index()
                    .Where(part => part.Item.Shape != MetalworkShape.Keeper)
                    .Select(part => Sheet(part.Item, part.Index)),
            ],
            Connection = recipe.Coils.Count == 1 ? Connection.Single : recipe.Connection,
            Strings = recipe.Strings is RecipeStrings strings ? StringsOf(strings) : null,
            GapPermittivity = GapPermittivity(recipe.Potting?.Kind),
            Leads = recipe.Leads,
            TemperatureC = temperatureC,
            Sizes = RecipeSizes.Of(recipe),
        };

    /// <summary>
    /// Relative permittivity of what fills the gaps. Paraffin 2.1–2.5 and beeswax 2.6–3.0: read (data collections); lacquer and epoxy: from
    /// memory.
    /// </summary>
    private static double GapPermittivity(string? potting) =>
        potting switch
        {
            "wax" or "paraffin" => 2.3,
            "beeswax" => 2.8,
            "lacquer" => 3.5,
            "epoxy" => 3.6,
            _ => 1,
        };

    private static CoilModel Learnt(Recipe recipe, RecipeCoil coil, CoilModel model) =>
        recipe.Learning is { } learning ? model with { Learnt = learning.Of(coil, model.Wire) } : model;

    private static CoilModel Coil(RecipeCoil coil) =>
        new()
        {
            Name = coil.Name,
            Bobbin = new Bobbin
            {
                CoreLengthM = coil.Bobbin.CoreLength.Si,
                CoreWidthM = coil.Bobbin.CoreWidth.Si,
                EndRadiusM = Math.Min(coil.Bobbin.EndRadius.Si, Math.Min(coil.Bobbin.CoreLength.Si, coil.Bobbin.CoreWidth.Si) / 2),
                WindingHeightM = coil.Bobbin.WindingHeight.Si,
                MaxBuildM = coil.Bobbin.MaxBuild?.Si,
                FillLimit = coil.Bobbin.FillLimit,
                Material = coil.Bobbin.Material,
                Permittivity = Permittivity(coil.Bobbin.Material),
                WallM = coil.Bobbin.Wall?.Si,
                FlangeM = coil.Bobbin.Flange?.Si,
            },
            Wire = Wire(coil.Wire),
            Winding = Winding(coil.Winding, Wire(coil.Wire).BareDiameterM.Value),
            Poles = [.. PolesOf(coil).Select(Pole)],
            Position = Point(coil.Position),
            Hot = coil.Hot,
            TapeM = coil.Tape?.Thickness.Si ?? 0,
            TapePermittivity = coil.Tape is { } tape ? Permittivity(tape.Material) : null,
        };

    /// <summary>Rows of poles that are anything but air, in the model's order.</summary>
    internal static IEnumerable<RecipePole> PolesOf(RecipeCoil coil) => coil.Poles.Where(pole => pole.Material.Name != Catalogue.Air);

    private static WireModel Wire(RecipeWire wire)
    {
        WireModel table = wire.Gauge.Length > 0 ? Catalogue.Wire(wire.Gauge, wire.Build, wire.Insulation) : Bare(wire);
        return table with
        {
            BareDiameterM = wire.BareDiameter is Entered bare ? Measured(bare.Si) : table.BareDiameterM,
            OverallDiameterM = wire.OverallDiameter is Entered overall ? Measured(overall.Si) : table.OverallDiameterM,
            MeasuredOhmPerM = wire.ResistancePerLength is Entered ohmPerM
                ? Estimate.Within(ohmPerM.Si, OhmPerMFraction, Basis.Measured)
                : null,
        };
    }

    /// <summary>
    /// Wire known only by its measured bare diameter: the enamel of single build adds 8 to 18 % to wire of this size (common practice, no
    /// source).
    /// </summary>
    private static WireModel Bare(RecipeWire wire)
    {
        double bareM = wire.BareDiameter!.Value.Si;
        return new WireModel
        {
            Gauge = QuantityParser.FormatIn(bareM, QuantityKind.Length, "mm"),
            Insulation = wire.Insulation,
            BareDiameterM = Measured(bareM),
            OverallDiameterM = new Estimate(bareM * UsualOverall, bareM * 1.08, bareM * 1.18, Basis.Assumed),
            EnamelPermittivity = Catalogue.EnamelPermittivity(wire.Insulation),
        };
    }

    private static Estimate Measured(double lengthM) => new(lengthM, lengthM - MicrometerM, lengthM + MicrometerM, Basis.Measured);

    private static WindingModel Winding(RecipeWinding winding, double bareM) =>
        new()
        {
            Turns = winding.Turns,
            Direction = winding.Direction,
            Lay = winding.Lay,
            PitchM = winding.Pitch?.Si,
            TensionN = winding.Tension?.Si,
            SpeedRpm = winding.Speed?.Si,
            MeasuredBuildM = winding.Build?.Si,
            MeasuredCapacitanceF = winding.Capacitance?.Si,
            Stretch = winding.Stretch?.Si ?? (winding.Tension is Entered tension ? CopperWire.ElasticStretch(tension.Si, bareM) : 0),
        };

    private static PoleModel Pole(RecipePole pole) =>
        new()
        {
            Shape = pole.Shape,
            Material = pole.Material.Name,
            DiameterM = pole.Diameter.Si,
            WidthM = pole.Width?.Si ?? pole.Diameter.Si,
            LengthM = pole.Length.Si,
            HeadDiameterM = pole.HeadDiameter?.Si ?? 0,
            HeadHeightM = pole.HeadHeight?.Si ?? 0,
            PositionsM = pole.PositionsM,
            TopsM = pole.TopsM,
            RelativePermeability = Permeability(pole.Material),
            ConductivitySPerM = Conductivity(pole.Material),
            PolarisationT = Times(Polarisation(pole.Material), pole.NorthUp),
            Grounded = pole.Grounded,
        };

    private static BarModel Bar(RecipeMagnet magnet)
    {
        double source = Polarisation(magnet.Material).Value * (magnet.Magnetised.StartsWith('-') ? -1 : 1);
        return new BarModel
        {
            Material = magnet.Material.Name,
            SizeM = Point(magnet.Size),
            CentreM = Point(magnet.Centre),
            RelativePermeability = Permeability(magnet.Material),
            ConductivitySPerM = Conductivity(magnet.Material),
            Grounded = magnet.Grounded,
            PolarisationSpread = SpreadOf(Polarisation(magnet.Material)),
            PolarisationT = magnet.Magnetised.TrimStart('-') switch
            {
                "x" => new Vector3M(source, 0, 0),
                "y" => new Vector3M(0, source, 0),
                "z" => new Vector3M(0, 0, source),
                _ => default,
            },
        };
    }

    private static BarModel Keeper(RecipeMetalwork part) =>
        new()
        {
            Material = part.Material.Name,
            SizeM = Point(part.Size!),
            CentreM = Point(part.Centre!),
            RelativePermeability = Permeability(part.Material),
            ConductivitySPerM = Conductivity(part.Material),
            Grounded = part.Grounded,
        };

    private static SheetModel Sheet(RecipeMetalwork part, int place) =>
        new()
        {
            Place = place,
            Shape = part.Shape == MetalworkShape.Plate ? SheetShape.Plate : SheetShape.Cover,
            Material = part.Material.Name,
            ThicknessM = part.Thickness.Si,
            LengthM = part.Length.Si,
            WidthM = part.Width.Si,
            TopM = part.Top.Si,
            BottomM = part.Bottom.Si,
            CornerM = part.Corner?.Si,
            RelativePermeability = Permeability(part.Material),
            ConductivitySPerM = Conductivity(part.Material),
            Grounded = part.Grounded,
        };

    private static StringSetModel StringsOf(RecipeStrings strings) =>
        new()
        {
            Strings =
                strings.Gauges.Count > 0
                    ? [.. strings.Gauges.Select(one => StringOf(strings, one.Core.Si, one.Outer.Si, one.Material))]
                    :
                    [
                        .. UsualStrings
                            .For((int)strings.Count, strings.Spacing.Si)
                            .Select(one => StringOf(strings, one.CoreM, one.OuterM, "string-steel")),
                    ],
            StringsAssumed = strings.Gauges.Count == 0,
            Count = (int)strings.Count,
            SpacingM = strings.Spacing.Si,
            ClearanceM = strings.Clearance.Si,
            ScaleLengthM = strings.ScaleLength?.Si ?? 0,
            FromBridgeM = strings.FromBridge?.Si ?? 0,
        };

    private static StringModel StringOf(RecipeStrings strings, double coreM, double outerM, string material)
    {
        StringModel model = new()
        {
            CoreDiameterM = coreM,
            OuterDiameterM = outerM,
            RelativePermeability = strings.RelativePermeability is double own
                ? Estimate.Exact(own)
                : Catalogue.Material(material).RelativePermeability.Estimate,
            Law = strings.Law == "linear" ? StringLaw.Linear : StringLaw.Saturating,
        };
        return strings.Saturation is Entered saturation ? model with { SaturationT = saturation.Si } : model;
    }

    private static Vector3M Point(RecipePoint point) => new(point.X.Si, point.Y.Si, point.Z.Si);

    /// <summary>Of an insulator of the table; null for a name of the shop's own.</summary>
    private static Estimate? Permittivity(string material) => MaterialCatalogue.Find(material)?.RelativePermittivity?.Estimate;

    private static Estimate Permeability(RecipeMaterial material) =>
        material.RelativePermeability is double own ? Estimate.Exact(own) : Catalogue.Material(material.Name).RelativePermeability.Estimate;

    private static Estimate Conductivity(RecipeMaterial material) =>
        material.Conductivity is Entered own ? Estimate.Exact(own.Si) : Catalogue.Material(material.Name).ConductivitySPerM.Estimate;

    private static Estimate Polarisation(RecipeMaterial material) =>
        material.Polarisation is Entered own
            ? Estimate.Exact(own.Si)
            : Catalogue.Material(material.Name).WorkingPolarisationT?.Estimate ?? Estimate.Exact(0);

    /// <summary>Half-width over value, 0 for nothing.</summary>
    private static double SpreadOf(Estimate estimate) => estimate.Value > 0 ? (estimate.High - estimate.Low) / (2 * estimate.Value) : 0;

    private static Estimate Times(Estimate estimate, int sign) =>
        sign switch
        {
            > 0 => estimate,
            < 0 => new Estimate(-estimate.Value, -estimate.High, -estimate.Low, estimate.Basis),
            _ => Estimate.Exact(0),
        };
}
