using Coilwright.Workshop.Pieces.Events;

namespace Coilwright.Workshop.Pieces;

/// <summary>What a store must do for pieces. It keeps and finds, and decides only that a serial and a coil are used once.</summary>
public interface IPieceRecords
{
    /// <summary>Adds a piece with its parts, all or none. The same id twice is kept once.</summary>
    /// <returns>Null when it is kept; otherwise what stands in the way: the serial, or "tag@batch" of a coil that another piece
    /// has.</returns>
    Task<string?> AddAsync(PieceRecord piece, IReadOnlyList<PiecePartRecord> parts, CancellationToken cancel);

    /// <summary>
    /// Takes parts out of a piece (events) and puts others in, all or none; the answer as for <see cref="AddAsync"/>.
    /// </summary>
    Task<string?> ExchangePartsAsync(IReadOnlyList<PieceEvent> outs, IReadOnlyList<PiecePartRecord> ins, CancellationToken cancel);

    /// <summary>Adds events with their readings, all or none; ids that are there already are not added again.</summary>
    Task AddEventsAsync(IReadOnlyList<PieceEvent> events, IReadOnlyList<PieceReadingRecord> readings, CancellationToken cancel);

    /// <summary>Adds the events that put pieces into a set, all or none; ids that are there already are not added again.</summary>
    /// <returns>Null when they are kept; otherwise a piece that stands in another set, and nothing is kept.</returns>
    Task<Guid?> JoinSetAsync(IReadOnlyList<JoinedSet> joined, CancellationToken cancel);

    /// <summary>Pieces by id or by serial; without regard to case. What is not there is left out.</summary>
    Task<IReadOnlyList<PieceRecord>> FindAsync(IReadOnlyList<string> serials, CancellationToken cancel);

    /// <summary>Pieces that stand in the list of those in the shop, or are missing there, against what their events say.</summary>
    Task<IReadOnlyList<PieceRecord>> MislistedAsync(CancellationToken cancel);

    /// <summary>Lists pieces again, or lists them no more, as their events say.</summary>
    Task ListAgainAsync(IReadOnlyList<Guid> pieces, CancellationToken cancel);

    /// <summary>Pieces that have not left the shop: neither shipped nor given up, or come back.</summary>
    Task<IReadOnlyList<PieceRecord>> InShopAsync(CancellationToken cancel);

    /// <summary>The newest pieces, newest first.</summary>
    Task<IReadOnlyList<PieceRecord>> NewestAsync(int most, CancellationToken cancel);

    /// <summary>Pieces by a rule of tracing.</summary>
    Task<IReadOnlyList<PieceRecord>> WithAsync(PieceQuery query, CancellationToken cancel);

    /// <summary>How many pieces of serials that begin so there are; for the next running number.</summary>
    Task<IReadOnlyList<string>> SerialsLikeAsync(string beginning, CancellationToken cancel);

    /// <summary>Parts of these pieces, in order of entry, those taken out too.</summary>
    Task<IReadOnlyList<PiecePartRecord>> PartsAsync(IReadOnlyList<Guid> pieces, CancellationToken cancel);

    /// <summary>Events of these pieces, in order of entry.</summary>
    Task<IReadOnlyList<PieceEvent>> EventsAsync(IReadOnlyList<Guid> pieces, CancellationToken cancel);

    /// <summary>Readings of these pieces, in order of entry.</summary>
    Task<IReadOnlyList<PieceReadingRecord>> ReadingsAsync(IReadOnlyList<Guid> pieces, CancellationToken cancel);

    /// <summary>Coils of these batches that stand in a piece, by batch and tag.</summary>
    Task<IReadOnlySet<(Guid BatchId, string Tag)>> CoilsInPiecesAsync(IReadOnlyList<Guid> batches, CancellationToken cancel);

    /// <summary>The piece that the shop made its measure last for a recipe; null when none.</summary>
    Task<PieceRecord?> GoldenAsync(Guid recipeId, CancellationToken cancel);

    /// <summary>The event entered last; null when there is none.</summary>
    Task<PieceEvent?> NewestEventAsync(CancellationToken cancel);

    /// <summary>Events of these pieces that are later than a clock which was said to be right after they were entered.</summary>
    Task<IReadOnlySet<Guid>> EventsAheadAsync(IReadOnlyList<Guid> pieces, CancellationToken cancel);
}

/// <summary>What pieces are looked for by. Exactly one of the fields is set.</summary>
/// <param name="Coils">Coils of one batch: any of these tags.</param>
/// <param name="Lot">A lot of magnets or other parts, without regard to case.</param>
/// <param name="BasketId">A potting basket.</param>
/// <param name="MixId">A mix of ink.</param>
/// <param name="CustomerId">A customer.</param>
/// <param name="RecipeId">A recipe, every revision.</param>
/// <param name="SetId">A set that they joined at some time.</param>
/// <param name="SetName">The name of a set that they joined at some time, without regard to case.</param>
public sealed record PieceQuery(
    (Guid BatchId, IReadOnlyList<string> Tags)? Coils = null,
    string? Lot = null,
    Guid? BasketId = null,
    Guid? MixId = null,
    Guid? CustomerId = null,
    Guid? RecipeId = null,
    Guid? SetId = null,
    string? SetName = null
);
