using Coilwright.Workshop.Pieces.Events;

namespace Coilwright.Workshop.Steps;

/// <summary>What a store must do for baskets and mixes.</summary>
public interface IStepRecords
{
    /// <summary>The newest baskets, newest first.</summary>
    Task<IReadOnlyList<BasketRecord>> BasketsAsync(int most, CancellationToken cancel);

    /// <summary>Baskets by label or lot, without regard to case, newest first.</summary>
    Task<IReadOnlyList<BasketRecord>> FindBasketsAsync(string labelOrLot, CancellationToken cancel);

    /// <summary>
    /// Adds a basket with the bath as first read and the pieces that went in, all or none; the same id twice is kept once.
    /// </summary>
    Task AddBasketAsync(BasketRecord basket, BathReadingRecord first, IReadOnlyList<PieceEvent> pieces, CancellationToken cancel);

    /// <summary>Readings of the bath while a basket was in it, in order of entry.</summary>
    Task<IReadOnlyList<BathReadingRecord>> BathReadingsAsync(Guid basketId, CancellationToken cancel);

    /// <summary>Adds a reading with the holds that it puts on pieces, all or none.</summary>
    Task AddBathReadingAsync(BathReadingRecord reading, IReadOnlyList<PieceEvent> holds, CancellationToken cancel);

    /// <summary>The newest mixes, newest first; those that were taken back only where asked for.</summary>
    Task<IReadOnlyList<InkMixRecord>> InkMixesAsync(int most, CancellationToken cancel, bool alsoTakenBack = false);

    /// <summary>Mixes by label or by a lot among theirs, without regard to case, newest first.</summary>
    Task<IReadOnlyList<InkMixRecord>> FindInkMixesAsync(string labelOrLot, CancellationToken cancel);

    /// <summary>Takings back of these mixes and readings, in order of entry.</summary>
    Task<IReadOnlyList<StepUndoRecord>> StepUndosAsync(IReadOnlyList<Guid> about, CancellationToken cancel);

    /// <summary>Takes a mix or a reading back, with the events that follow from it, all or none; the same id twice is kept once.</summary>
    Task AddStepUndoAsync(StepUndoRecord undo, IReadOnlyList<PieceEvent> events, CancellationToken cancel);

    /// <summary>Adds a mix; false when another one has its label. The same id twice is kept once.</summary>
    Task<bool> AddInkMixAsync(InkMixRecord mix, CancellationToken cancel);
}
