using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Summaries;
using Coilwright.Workshop.Boards;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Stock;

namespace Coilwright.Application.Boards;

/// <summary>The day with the clocks that it was read by.</summary>
/// <param name="Board">What needs a person, what runs, what falls due.</param>
/// <param name="Clocks">Pieces, baskets and mixes, with the shop's now and its zone.</param>
/// <param name="Unreadable">Batches that cannot be shown, with the reasons.</param>
/// <param name="NotYet">How many older batches were not looked through yet.</param>
public sealed record DayOfShop(TodayBoard Board, ClockBoard Clocks, IReadOnlyList<UnreadableRecord> Unreadable, int NotYet = 0);

/// <summary>Reads what needs a person today.</summary>
public sealed class ReadToday(
    IShopRecords records,
    BatchSummaries summaries,
    BatchEventService runs,
    StockService stock,
    PieceService shelf,
    PottingService potting
)
{
    /// <summary>The day as it stands.</summary>
    public async Task<DayOfShop> ReadAsync(CancellationToken cancel)
    {
        (IReadOnlyList<BatchRecord> open, int notYet) = await summaries.OpenAsync(cancel).ConfigureAwait(false);
        IReadOnlyList<RecordStatus<BatchProgress>> batches = await runs.StatusesAsync(open, cancel).ConfigureAwait(false);
        IReadOnlyList<BatchProgress> readable = batches.Readable();
        IReadOnlySet<(Guid, string)> used = await records
            .Pieces.CoilsInPiecesAsync([.. readable.Select(run => run.Status.Batch.Id)], cancel)
            .ConfigureAwait(false);
        ClockBoard clocks = await ClockBoard.ReadAsync(records.Steps, shelf, potting, cancel).ConfigureAwait(false);
        IReadOnlyList<SpoolStatus> spools = await stock.ShelfAsync(readable.Select(run => run.History.Spool), cancel).ConfigureAwait(false);
        return new DayOfShop(TodayBoard.Of(readable, used, spools, clocks), clocks, batches.Unreadable(), notYet);
    }
}
