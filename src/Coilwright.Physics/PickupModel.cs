using Coilwright.Physics.Electrostatics;
using Coilwright.Physics.Sizes;
using Coilwright.Physics.Strings;
using Coilwright.Physics.Winding;
using Coilwright.Physics.Wire;

namespace Coilwright.Physics;

/// <summary>How the coils of a pickup are joined.</summary>
public enum Connection
{
    /// <summary>One coil, or the first of several used alone.</summary>
    Single,

    /// <summary>Start to finish one behind the other: voltages, resistances and inductances add.</summary>
    Series,

    /// <summary>All side by side on the same two wires.</summary>
    Parallel,
}

/// <summary>Shape of a pole part.</summary>
public enum PoleShape
{
    /// <summary>A round rod, often a magnet itself.</summary>
    Rod,

    /// <summary>A round rod with a head on top; its thread is left out.</summary>
    Screw,

    /// <summary>A flat bar standing on its edge, along x.</summary>
    Blade,
}

/// <summary>One of the two ends of a coil's wire.</summary>
public enum CoilEnd
{
    /// <summary>The end of the first turn, inside.</summary>
    Start,

    /// <summary>The end of the last turn, outside.</summary>
    Finish,
}

/// <summary>Everything physical about one pickup, in SI units; x across the strings, y along them, z up.</summary>
public sealed record PickupModel
{
    /// <summary>The coils, at least one, in the order in which they are joined.</summary>
    public required IReadOnlyList<CoilModel> Coils { get; init; }

    /// <summary>Bar magnets and steel keepers outside the coils, the magnets first; empty without.</summary>
    public IReadOnlyList<BarModel> Bars { get; init; } = [];

    /// <summary>Covers and base plates, in the order of the recipe; empty without.</summary>
    public IReadOnlyList<SheetModel> Sheets { get; init; } = [];

    /// <summary>How the coils are joined; means nothing with one coil.</summary>
    public Connection Connection { get; init; } = Connection.Single;

    /// <summary>The strings over the pickup; null when the recipe has none.</summary>
    public StringSetModel? Strings { get; init; }

    /// <summary>Relative permittivity of what fills the gaps between turns: 1 for air, about 2.3 for wax.</summary>
    public double GapPermittivity { get; init; } = 1;

    /// <summary>The leads; null takes usual ones.</summary>
    public LeadModel? Leads { get; init; }

    /// <summary>Temperature of the winding, °C, −40…155.</summary>
    public double TemperatureC { get; init; } = 20;

    /// <summary>Lengths that are known within an interval; those not named here are taken as exact.</summary>
    public IReadOnlyList<PartSize> Sizes { get; init; } = [];

    /// <summary>One of its coils by itself, among the same metal and strings.</summary>
    /// <param name="coil">Place of the coil; 0 to the number of coils less one.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such coil.</exception>
    public PickupModel Alone(int coil)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(coil);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(coil, Coils.Count);
        return this with
        {
            Coils = [Coils[coil]],
            Connection = Connection.Single,
            Sizes =
            [
                .. Sizes.Where(size => !size.IsOfCoil || size.Part == coil).Select(size => size.IsOfCoil ? size with { Part = 0 } : size),
            ],
        };
    }
}

/// <summary>One winding on one bobbin with the poles inside it.</summary>
public sealed record CoilModel
{
    /// <summary>The shop's word for the coil, told in messages.</summary>
    public required string Name { get; init; }

    /// <summary>What the coil is wound on.</summary>
    public required Bobbin Bobbin { get; init; }

    /// <summary>What the coil is wound of.</summary>
    public required WireModel Wire { get; init; }

    /// <summary>How the coil is wound.</summary>
    public required WindingModel Winding { get; init; }

    /// <summary>Rows of poles inside the coil; empty for a coil with air inside.</summary>
    public IReadOnlyList<PoleModel> Poles { get; init; } = [];

    /// <summary>Centre of the coil (middle of the winding height), m.</summary>
    public Vector3M Position { get; init; }

    /// <summary>The end that lies towards the pickup's hot wire; null when not stated.</summary>
    public CoilEnd? Hot { get; init; }

    /// <summary>Thickness of the tape round the winding, m; zero without.</summary>
    public double TapeM { get; init; }

    /// <summary>Relative permittivity of that tape; null without.</summary>
    public Estimate? TapePermittivity { get; init; }

    /// <summary>What the shop's own readings say of such coils; null takes the plain forecast.</summary>
    public LearntCoil? Learnt { get; init; }

    /// <summary>What they say of its DC resistance on its wire; null where nothing.</summary>
    public LearntFactor? LearntResistance => Wire.MeasuredOhmPerM is null ? Learnt?.DcResistance : Learnt?.OnMeasuredWire;
}

/// <summary>A point or a size in metres.</summary>
/// <param name="XM">Along x, across the strings, m.</param>
/// <param name="YM">Along y, along the strings, m.</param>
/// <param name="ZM">Along z, up to the strings, m.</param>
public readonly record struct Vector3M(double XM, double YM, double ZM);

/// <summary>A row of equal pole parts standing along z inside a coil.</summary>
public sealed record PoleModel
{
    /// <summary>Shape of every pole of the row.</summary>
    public required PoleShape Shape { get; init; }

    /// <summary>Key of the material, as in the catalogue: "alnico-5", "low-carbon-steel"…</summary>
    public required string Material { get; init; }

    /// <summary>Diameter of a rod or screw, m; for a blade its thickness along y.</summary>
    public required double DiameterM { get; init; }

    /// <summary>Extent along x of a blade, m; for a rod or screw its diameter.</summary>
    public double WidthM { get; init; }

    /// <summary>Extent along z, m.</summary>
    public required double LengthM { get; init; }

    /// <summary>Diameter of a screw's head, m; zero without.</summary>
    public double HeadDiameterM { get; init; }

    /// <summary>Height of a screw's head, m; zero without.</summary>
    public double HeadHeightM { get; init; }

    /// <summary>x of each pole, relative to the coil's centre, m.</summary>
    public required IReadOnlyList<double> PositionsM { get; init; }

    /// <summary>z of the top of each pole, relative to the coil's centre, m; as many as positions.</summary>
    public required IReadOnlyList<double> TopsM { get; init; }

    /// <summary>Relative permeability for small changes, with its 95 % interval; at least 1.</summary>
    public required Estimate RelativePermeability { get; init; }

    /// <summary>Conductivity at 20 °C, S/m, with its 95 % interval; zero for an insulator.</summary>
    public required Estimate ConductivitySPerM { get; init; }

    /// <summary>Source term µ0·M0, T; the sign is that of the top face: + north up. Zero for an unmagnetised part.</summary>
    public Estimate PolarisationT { get; init; }

    /// <summary>Whether it is joined to ground; null when not stated.</summary>
    public bool? Grounded { get; init; }
}

/// <summary>A rectangular bar magnet or steel keeper.</summary>
public sealed record BarModel
{
    /// <summary>Key of the material, as in the catalogue.</summary>
    public required string Material { get; init; }

    /// <summary>Size along each axis, m, each above zero.</summary>
    public required Vector3M SizeM { get; init; }

    /// <summary>Middle of the bar in the recipe's axes, m.</summary>
    public required Vector3M CentreM { get; init; }

    /// <summary>Relative permeability for small changes, with its 95 % interval; at least 1.</summary>
    public required Estimate RelativePermeability { get; init; }

    /// <summary>Conductivity at 20 °C, S/m, with its 95 % interval; zero for an insulator.</summary>
    public required Estimate ConductivitySPerM { get; init; }

    /// <summary>Source term µ0·M0 along each axis, T.</summary>
    public Vector3M PolarisationT { get; init; }

    /// <summary>Half-width of its 95 % interval over its value.</summary>
    public double PolarisationSpread { get; init; }

    /// <summary>Whether it is joined to ground; null when not stated.</summary>
    public bool? Grounded { get; init; }
}

/// <summary>Shape of a thin conducting part.</summary>
public enum SheetShape
{
    /// <summary>Closed on top, open below.</summary>
    Cover,

    /// <summary>Flat and level.</summary>
    Plate,
}

/// <summary>A cover or base plate: thin, conducting, outside sizes.</summary>
public sealed record SheetModel
{
    /// <summary>Cover or plate.</summary>
    public required SheetShape Shape { get; init; }

    /// <summary>Place in the recipe's list of metalwork, keepers counted.</summary>
    public int Place { get; init; }

    /// <summary>Key of the material, as in the catalogue.</summary>
    public required string Material { get; init; }

    /// <summary>Thickness of the sheet, m.</summary>
    public required double ThicknessM { get; init; }

    /// <summary>Outside length along x, m.</summary>
    public required double LengthM { get; init; }

    /// <summary>Outside width along y, m.</summary>
    public required double WidthM { get; init; }

    /// <summary>z of the upper face in the recipe's axes, m.</summary>
    public required double TopM { get; init; }

    /// <summary>z of the lower edge of a cover, or of a plate's lower face, in the recipe's axes, m.</summary>
    public required double BottomM { get; init; }

    /// <summary>Corner radius, m; half the width (a racetrack) unless given.</summary>
    public double? CornerM { get; init; }

    /// <summary>Relative permeability for small changes, with its 95 % interval; at least 1.</summary>
    public required Estimate RelativePermeability { get; init; }

    /// <summary>Conductivity at 20 °C, S/m, with its 95 % interval.</summary>
    public required Estimate ConductivitySPerM { get; init; }

    /// <summary>Whether it is joined to ground; null when not stated.</summary>
    public bool? Grounded { get; init; }
}

/// <summary>The strings above the poles.</summary>
public sealed record StringSetModel
{
    /// <summary>Number of strings.</summary>
    public required int Count { get; init; }

    /// <summary>Distance of neighbouring strings over the pickup, along x, m.</summary>
    public required double SpacingM { get; init; }

    /// <summary>Distance from the highest pole top to the underside of the strings, m.</summary>
    public required double ClearanceM { get; init; }

    /// <summary>Sounding length of the open strings, m; zero when not stated.</summary>
    public double ScaleLengthM { get; init; }

    /// <summary>Distance of the pickup's middle from the bridge, m; zero when not stated.</summary>
    public double FromBridgeM { get; init; }

    /// <summary>The strings by ascending x, as many as <see cref="Count"/>.</summary>
    public required IReadOnlyList<StringModel> Strings { get; init; }

    /// <summary>True when the recipe names no strings and the usual ones of the count are taken.</summary>
    public bool StringsAssumed { get; init; }

    /// <summary>x of a string, m: the row is centred on the pickup.</summary>
    public double XM(int index) => (index - (Count - 1) / 2.0) * SpacingM;
}
