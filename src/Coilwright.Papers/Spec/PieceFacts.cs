using Coilwright.Workshop.Pieces;

namespace Coilwright.Papers.Spec;

/// <summary>What a shop knows of one piece, for its papers.</summary>
/// <param name="Serial">The piece.</param>
/// <param name="Readings">What was read on it; superseded readings left out.</param>
public sealed record PieceFacts(string Serial, IReadOnlyList<PieceReading> Readings)
{
    /// <summary>Flux density over its poles; null when not read.</summary>
    public PoleReading? Poles { get; init; }

    /// <summary>How its magnets are charged, in words; empty where there is nothing to say.</summary>
    public string Charge { get; init; } = "";

    /// <summary>Its set and place there; empty when it stands in none.</summary>
    public string Set { get; init; } = "";

    /// <summary>Sign of the first swing seen at the hot end when iron came near; null when not tested.</summary>
    public int? FirstSwing { get; init; }
}
