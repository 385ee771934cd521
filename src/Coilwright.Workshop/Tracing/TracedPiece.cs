using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Sets;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Tracing;

/// <summary>A piece with everything that went into it and everyone it went to.</summary>
/// <param name="Snapshot">The piece.</param>
/// <param name="State">Where it is, in words.</param>
/// <param name="Coils">Its coils, back to their wire.</param>
/// <param name="Baskets">Baskets it was potted in.</param>
/// <param name="Mixes">Inks it was marked with.</param>
/// <param name="Customers">Customers it went to, in order.</param>
public sealed record TracedPiece(
    PieceSnapshot Snapshot,
    string State,
    IReadOnlyList<TracedCoil> Coils,
    IReadOnlyList<BasketRecord> Baskets,
    IReadOnlyList<InkMixRecord> Mixes,
    IReadOnlyList<CustomerRecord> Customers
)
{
    /// <summary>The set it stands in, whole; null when it stands in none.</summary>
    public PieceSet? Set { get; init; }

    /// <summary>
    /// Labels of every basket and ink and words of every customer that an event of the piece names, also one that was taken back.
    /// </summary>
    public IReadOnlyDictionary<Guid, string> Names { get; init; } = new Dictionary<Guid, string>();

    /// <summary>The shop's time zone, for words.</summary>
    public TimeZoneInfo Zone { get; init; } = TimeZoneInfo.Utc;

    /// <summary>What an event names; a question mark when it is not known.</summary>
    public string NameOf(Guid id) => Names.GetValueOrDefault(id, "?");
}
