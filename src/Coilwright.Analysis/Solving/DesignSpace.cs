using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Wire;

namespace Coilwright.Analysis.Solving;

/// <summary>A wire that may be chosen for all coils.</summary>
/// <param name="Gauge">As in a recipe.</param>
/// <param name="Build">Film build or grade.</param>
/// <param name="Model">The wire; null keeps each coil's own.</param>
public sealed record WireChoice(string Gauge, string Build, WireModel? Model);

/// <summary>An axis of the trade-off.</summary>
/// <param name="Quantity">Name of the file formats, for example "dcResistance".</param>
/// <param name="Most">True for as much as possible, false for as little.</param>
public sealed record FrontAxis(string Quantity, bool Most);

/// <summary>Everything a search may choose from, and what is wanted.</summary>
public sealed record DesignSpace
{
    /// <summary>Whole pickups that differ in bobbin, magnets or connection; turns and wire of each are its base.</summary>
    public required IReadOnlyList<PickupModel> Families { get; init; }

    /// <summary>Wires to choose from, at least one; the base first.</summary>
    public required IReadOnlyList<WireChoice> Wires { get; init; }

    /// <summary>
    /// Turns of the first coil, both ends included; the other coils keep their ratio to it. Equal ends: turns are not varied.
    /// </summary>
    public required int FewestTurns { get; init; }

    /// <summary>The upper end of the same.</summary>
    public required int MostTurns { get; init; }

    /// <summary>What hangs on the pickup, for quantities that need a load; null for none.</summary>
    public LoadCircuit? Load { get; init; }

    /// <summary>What is wanted, in the order of the request.</summary>
    public required IReadOnlyList<Objective> Wants { get; init; }

    /// <summary>Two or three axes of the trade-off; empty for none.</summary>
    public IReadOnlyList<FrontAxis> Front { get; init; } = [];

    /// <summary>Most designs told of the front.</summary>
    public int FrontSize { get; init; } = 200;

    /// <summary>Most solutions told.</summary>
    public int Solutions { get; init; } = 10;

    /// <summary>Most families solved at once; -1 takes all cores.</summary>
    public int Threads { get; init; } = -1;
}

/// <summary>One whole pickup of the space.</summary>
/// <param name="Family">Place in the space's families.</param>
/// <param name="Wire">Place in the space's wires.</param>
/// <param name="Turns">Turns of each coil.</param>
/// <param name="Values">Its quantities by name; only those that exist.</param>
/// <param name="Miss">How far it is from meeting the wants: 0 when it meets them.</param>
public sealed record Design(int Family, int Wire, IReadOnlyList<int> Turns, IReadOnlyDictionary<string, double> Values, double Miss);

/// <summary>What a search found.</summary>
/// <param name="Met">True when there is a design that fits and meets every want.</param>
/// <param name="Solutions">Best first, one for each choice of family and wire; the nearest ones when nothing meets the wants.</param>
/// <param name="Front">Designs that fit and meet the wants, none of which another beats in every axis.</param>
/// <param name="Binding">When nothing meets the wants: those that stand in the way, "fill" for the room on the bobbin.</param>
/// <param name="Searched">Designs looked at.</param>
public sealed record DesignAnswer(
    bool Met,
    IReadOnlyList<Design> Solutions,
    IReadOnlyList<Design> Front,
    IReadOnlyList<string> Binding,
    long Searched
)
{
    /// <summary>
    /// When nothing meets the wants: for each of them the design that fits and comes nearest to it, of several the one that misses the
    /// others least; null where nothing fits.
    /// </summary>
    public IReadOnlyList<Design?> NearestEach { get; init; } = [];

    /// <summary>True when it was stopped before the whole space was looked at.</summary>
    public bool Stopped { get; init; }
}
