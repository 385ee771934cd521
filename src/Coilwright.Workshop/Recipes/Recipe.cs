using System.Globalization;
using Coilwright.Physics;
using Coilwright.Physics.Electrostatics;
using Coilwright.Physics.Winding;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Learning;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Recipes.Sizes;

namespace Coilwright.Workshop.Recipes;

/// <summary>The full specification of one pickup model, as written and as understood.</summary>
public sealed record Recipe
{
    public required string Name { get; init; }
    public required IReadOnlyList<RecipeCoil> Coils { get; init; }
    public RecipeStrings? Strings { get; init; }
    public IReadOnlyList<RecipeMagnet> Magnets { get; init; } = [];
    public IReadOnlyList<RecipeMetalwork> Metalwork { get; init; } = [];
    public Connection Connection { get; init; } = Connection.Single;
    public RecipePotting? Potting { get; init; }

    /// <summary>The leads; null takes usual ones.</summary>
    public LeadModel? Leads { get; init; }

    /// <summary>Steps between assembly and the final test, in order; empty takes the usual ones.</summary>
    public IReadOnlyList<RecipeStep> Steps { get; init; } = [];

    /// <summary>Targets of the whole pickup by quantity name, for example "dcResistance".</summary>
    public IReadOnlyDictionary<string, Target> Targets { get; init; } = new Dictionary<string, Target>();

    /// <summary>The shop's notes if they are a plain text; anything else stays in <see cref="Json"/>.</summary>
    public string Notes { get; init; } = "";

    /// <summary>The shop's tags as far as they are plain texts.</summary>
    public IReadOnlyList<string> Tags { get; init; } = [];

    /// <summary>How well lengths are known for which the recipe states no ±; the shop's rules where it has any.</summary>
    public SizeRules SizeRules { get; init; } = SizeRules.Usual;

    /// <summary>What the shop has learnt from its readings; null takes the plain forecast.</summary>
    public RecipeLearning? Learning { get; init; }

    /// <summary>The document, verbatim: nothing is lost on the way through.</summary>
    public required string Json { get; init; }

    /// <summary>What its forecasts are kept by: the document, how well lengths are known, and what was learnt.</summary>
    public string ForecastKey => string.Create(CultureInfo.InvariantCulture, $"{Json} {SizeRules} {Learning}");
}

/// <summary>A wanted value with the tolerance about it.</summary>
/// <param name="Nominal">The wanted value.</param>
/// <param name="Tolerance">Largest deviation allowed, as a part of the nominal: 0.04 is ±4 %.</param>
/// <param name="ToleranceTyped">The tolerance as typed.</param>
/// <param name="AtHz">Frequency it is stated at, Hz; null when not stated.</param>
/// <param name="TemperatureC">Temperature it is stated at, °C; 20 unless stated.</param>
public sealed record Target(Entered Nominal, double Tolerance, string ToleranceTyped, double? AtHz, double TemperatureC)
{
    /// <summary>Lowest value allowed, SI.</summary>
    public double Low => Nominal.Si * (1 - Tolerance);

    /// <summary>Highest value allowed, SI.</summary>
    public double High => Nominal.Si * (1 + Tolerance);
}

/// <summary>One winding on one bobbin with its poles.</summary>
public sealed record RecipeCoil
{
    public required string Name { get; init; }
    public required RecipeBobbin Bobbin { get; init; }
    public required RecipeWire Wire { get; init; }
    public required RecipeWinding Winding { get; init; }
    public IReadOnlyList<RecipePole> Poles { get; init; } = [];
    public required RecipePoint Position { get; init; }

    /// <summary>The end towards the pickup's hot wire; null when not stated.</summary>
    public CoilEnd? Hot { get; init; }

    /// <summary>What is wrapped round the winding; null without.</summary>
    public RecipeTape? Tape { get; init; }

    /// <summary>Targets of this coil alone, as measured at the winder.</summary>
    public IReadOnlyDictionary<string, Target> Targets { get; init; } = new Dictionary<string, Target>();
}

/// <summary>A place or a size along x, y and z.</summary>
public sealed record RecipePoint(Entered X, Entered Y, Entered Z)
{
    public static RecipePoint Origin { get; } = new(new Entered(0, "", "m"), new Entered(0, "", "m"), new Entered(0, "", "m"));
}

/// <summary>What the wire is wound on.</summary>
public sealed record RecipeBobbin(
    Entered CoreLength,
    Entered CoreWidth,
    Entered EndRadius,
    Entered WindingHeight,
    Entered? MaxBuild,
    double? FillLimit,
    string Material
)
{
    /// <summary>Thickness under the first turn.</summary>
    public Entered? Wall { get; init; }

    /// <summary>Thickness of each flange.</summary>
    public Entered? Flange { get; init; }

    /// <summary>How it is made and where its lengths come from.</summary>
    public PartMaking Making { get; init; } = PartMaking.NotSaid;
}

/// <summary>Tape round a winding.</summary>
public sealed record RecipeTape(Entered Thickness, string Material);

/// <summary>The wire: a gauge of the tables, measured values, or both; a measured value overrides the table's.</summary>
public sealed record RecipeWire
{
    /// <summary>"AWG 42" or "0.063 mm"; empty when only measured values are given.</summary>
    public string Gauge { get; init; } = "";
    public string Insulation { get; init; } = "plain-enamel";

    /// <summary>"single", "heavy", "triple", "quad", or "grade-1" to "grade-3".</summary>
    public string Build { get; init; } = "single";
    public Entered? BareDiameter { get; init; }
    public Entered? OverallDiameter { get; init; }
    public Entered? ResistancePerLength { get; init; }
}

/// <summary>How the coil is wound.</summary>
public sealed record RecipeWinding
{
    public required double Turns { get; init; }
    public WindingDirection Direction { get; init; } = WindingDirection.CounterClockwise;
    public Lay Lay { get; init; } = Lay.Scattered;
    public Entered? Pitch { get; init; }
    public Entered? Tension { get; init; }
    public Entered? Speed { get; init; }
    public Entered? Build { get; init; }
    public Entered? Capacitance { get; init; }
    public Entered? Stretch { get; init; }
}

/// <summary>What a part is made of; the overrides take the place of the table's values.</summary>
public sealed record RecipeMaterial(string Name, double? RelativePermeability, Entered? Conductivity, Entered? Polarisation);

/// <summary>A row of equal pole parts.</summary>
public sealed record RecipePole
{
    public required PoleShape Shape { get; init; }
    public required RecipeMaterial Material { get; init; }

    /// <summary>Diameter of a rod or screw, or thickness of a blade along y.</summary>
    public required Entered Diameter { get; init; }

    /// <summary>Extent of a blade along x; null for a rod or screw.</summary>
    public Entered? Width { get; init; }
    public required Entered Length { get; init; }
    public Entered? HeadDiameter { get; init; }
    public Entered? HeadHeight { get; init; }

    /// <summary>x of each pole relative to the coil's centre, m.</summary>
    public required IReadOnlyList<double> PositionsM { get; init; }

    /// <summary>z of each top relative to the coil's centre, m; as many as positions.</summary>
    public required IReadOnlyList<double> TopsM { get; init; }

    /// <summary>95 % half-width of the outermost places where they are listed, m; null where none is typed.</summary>
    public double? PositionsWithinM { get; init; }

    /// <summary>Distance of neighbours where it is typed; null with listed places or one pole.</summary>
    public Entered? Spacing { get; init; }

    /// <summary>95 % half-width of the tops, all together, m; null where none is typed.</summary>
    public double? TopsWithinM { get; init; }

    /// <summary>How it is made and where its lengths come from.</summary>
    public PartMaking Making { get; init; } = PartMaking.NotSaid;

    /// <summary>+1 north up, −1 south up, 0 not magnetised.</summary>
    public required int NorthUp { get; init; }

    /// <summary>Whether it is joined to ground; null when not stated.</summary>
    public bool? Grounded { get; init; }
}

/// <summary>A bar magnet. Direction is a unit vector along one axis, or zero.</summary>
public sealed record RecipeMagnet(RecipeMaterial Material, RecipePoint Size, RecipePoint Centre, string Magnetised)
{
    /// <summary>Whether it is joined to ground; null when not stated.</summary>
    public bool? Grounded { get; init; }

    /// <summary>How it is made and where its lengths come from.</summary>
    public PartMaking Making { get; init; } = PartMaking.NotSaid;
}

/// <summary>Shape of a metal part.</summary>
public enum MetalworkShape
{
    Cover,
    Plate,
    Keeper,
}

/// <summary>A cover, a base plate, or a keeper (a solid bar).</summary>
public sealed record RecipeMetalwork
{
    public required MetalworkShape Shape { get; init; }
    public required RecipeMaterial Material { get; init; }
    public Entered Thickness { get; init; }
    public Entered Length { get; init; }
    public Entered Width { get; init; }
    public Entered Top { get; init; }
    public Entered Bottom { get; init; }
    public Entered? Corner { get; init; }

    /// <summary>Size and centre of a keeper; null for a cover or plate.</summary>
    public RecipePoint? Size { get; init; }
    public RecipePoint? Centre { get; init; }

    /// <summary>Whether it is joined to ground; null when not stated.</summary>
    public bool? Grounded { get; init; }

    /// <summary>How it is made and where its lengths come from.</summary>
    public PartMaking Making { get; init; } = PartMaking.NotSaid;
}

/// <summary>The strings above the poles.</summary>
public sealed record RecipeStrings
{
    public required double Count { get; init; }
    public required Entered Spacing { get; init; }

    /// <summary>From the highest pole top to the underside of the strings.</summary>
    public required Entered Clearance { get; init; }
    public Entered? ScaleLength { get; init; }
    public Entered? FromBridge { get; init; }
    public IReadOnlyList<RecipeString> Gauges { get; init; } = [];

    /// <summary>"saturating" or "linear".</summary>
    public string Law { get; init; } = "saturating";
    public double? RelativePermeability { get; init; }
    public Entered? Saturation { get; init; }
}

/// <summary>One string: its steel core and its outside.</summary>
public sealed record RecipeString(Entered Core, Entered Outer, string Material);

/// <summary>What fills the gaps between the turns, and how it is put there.</summary>
public sealed record RecipePotting(string Kind, Entered? Temperature, Entered? Limit, Entered? Time);

/// <summary>One step of the way from coil to customer, as the recipe states it.</summary>
/// <param name="Name">Word for the step, for example "potting" or "marking".</param>
/// <param name="Least">Shortest time it takes; null when it has none.</param>
/// <param name="Most">Longest time it may take; null when it has none.</param>
/// <param name="Hold">How long nothing may follow after it; null when at once.</param>
/// <param name="HoldReason">What happens meanwhile.</param>
public sealed record RecipeStep(string Name, Entered? Least, Entered? Most, Entered? Hold, string HoldReason)
{
    /// <summary>
    /// What magnets are charged or knocked down to in this step; null when it asks for none. It moves no number of the forecast.
    /// </summary>
    public RequiredCharge? Charge { get; init; }
}
