using Coilwright.Physics.Strings;
using Coilwright.Physics.Winding;
using Coilwright.Physics.Wire;

namespace Coilwright.Physics;

/// <summary>How the coils of a pickup are joined.</summary>
public enum Connection
{
    /// <summary>One coil, or the first of several used alone.</summary>
    Single,
    Series,
    Parallel,
}

/// <summary>Shape of a pole part.</summary>
public enum PoleShape
{
    Rod,
    Screw,
    Blade,
}

/// <summary>Everything physical about one pickup, in SI units; x across the strings, y along them, z up.</summary>
public sealed record PickupModel
{
    public required IReadOnlyList<CoilModel> Coils { get; init; }
    public IReadOnlyList<BarModel> Bars { get; init; } = [];
    public IReadOnlyList<SheetModel> Sheets { get; init; } = [];
    public Connection Connection { get; init; } = Connection.Single;
    public StringSetModel? Strings { get; init; }

    /// <summary>Relative permittivity of what fills the gaps between turns: 1 for air, about 2.3 for wax.</summary>
    public double GapPermittivity { get; init; } = 1;

    /// <summary>Temperature of the winding, °C, −40…155.</summary>
    public double TemperatureC { get; init; } = 20;
}

/// <summary>One winding on one bobbin with the poles inside it.</summary>
public sealed record CoilModel
{
    public required string Name { get; init; }
    public required Bobbin Bobbin { get; init; }
    public required WireModel Wire { get; init; }
    public required WindingModel Winding { get; init; }
    public IReadOnlyList<PoleModel> Poles { get; init; } = [];

    /// <summary>Centre of the coil (middle of the winding height), m.</summary>
    public Vector3M Position { get; init; }
}

/// <summary>A point or a size in metres.</summary>
public readonly record struct Vector3M(double XM, double YM, double ZM);

/// <summary>A row of equal pole parts standing along z inside a coil.</summary>
public sealed record PoleModel
{
    public required PoleShape Shape { get; init; }
    public required string Material { get; init; }

    /// <summary>Diameter of a rod or screw, m; for a blade its thickness along y.</summary>
    public required double DiameterM { get; init; }

    /// <summary>Extent along x of a blade, m; for a rod or screw its diameter.</summary>
    public double WidthM { get; init; }

    /// <summary>Extent along z, m.</summary>
    public required double LengthM { get; init; }

    /// <summary>Diameter and height of a screw's head, m; zero without.</summary>
    public double HeadDiameterM { get; init; }
    public double HeadHeightM { get; init; }

    /// <summary>x of each pole, relative to the coil's centre, m.</summary>
    public required IReadOnlyList<double> PositionsM { get; init; }

    /// <summary>z of the top of each pole, relative to the coil's centre, m; as many as positions.</summary>
    public required IReadOnlyList<double> TopsM { get; init; }

    public required Estimate RelativePermeability { get; init; }
    public required Estimate ConductivitySPerM { get; init; }

    /// <summary>Source term µ0·M0, T; the sign is that of the top face: + north up. Zero for an unmagnetised part.</summary>
    public Estimate PolarisationT { get; init; }
}

/// <summary>A rectangular bar magnet or steel keeper.</summary>
public sealed record BarModel
{
    public required string Material { get; init; }
    public required Vector3M SizeM { get; init; }
    public required Vector3M CentreM { get; init; }
    public required Estimate RelativePermeability { get; init; }
    public required Estimate ConductivitySPerM { get; init; }

    /// <summary>Source term µ0·M0 along each axis, T.</summary>
    public Vector3M PolarisationT { get; init; }

    /// <summary>Half-width of its 95 % interval over its value.</summary>
    public double PolarisationSpread { get; init; }
}

/// <summary>Shape of a thin conducting part.</summary>
public enum SheetShape
{
    /// <summary>Closed on top, open below.</summary>
    Cover,
    Plate,
}

/// <summary>A cover or base plate: thin, conducting, outside sizes.</summary>
public sealed record SheetModel
{
    public required SheetShape Shape { get; init; }

    /// <summary>Place in the recipe's list of metalwork, keepers counted.</summary>
    public int Place { get; init; }
    public required string Material { get; init; }
    public required double ThicknessM { get; init; }
    public required double LengthM { get; init; }
    public required double WidthM { get; init; }
    public required double TopM { get; init; }
    public required double BottomM { get; init; }

    /// <summary>Corner radius, m; half the width (a racetrack) unless given.</summary>
    public double? CornerM { get; init; }
    public required Estimate RelativePermeability { get; init; }
    public required Estimate ConductivitySPerM { get; init; }
}

/// <summary>The strings above the poles.</summary>
public sealed record StringSetModel
{
    public required int Count { get; init; }
    public required double SpacingM { get; init; }

    /// <summary>Distance from the highest pole top to the underside of the strings, m.</summary>
    public required double ClearanceM { get; init; }
    public double ScaleLengthM { get; init; }
    public double FromBridgeM { get; init; }

    /// <summary>The strings by ascending x, as many as <see cref="Count"/>.</summary>
    public required IReadOnlyList<StringModel> Strings { get; init; }

    /// <summary>True when the recipe names no strings and the usual ones of the count are taken.</summary>
    public bool StringsAssumed { get; init; }

    /// <summary>x of a string, m: the row is centred on the pickup.</summary>
    public double XM(int index) => (index - (Count - 1) / 2.0) * SpacingM;
}
