using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Stock;

namespace Coilwright.Workshop.Boards;

/// <summary>The day: what needs a person, what is on the winders, what falls due.</summary>
/// <param name="Needed">What needs a person, the most pressing first.</param>
/// <param name="Running">Batches under way, the one that was read last first.</param>
/// <param name="Due">What is due now and within a day and a half, the soonest first.</param>
public sealed record TodayBoard(IReadOnlyList<TodayLine> Needed, IReadOnlyList<RunningBatch> Running, IReadOnlyList<DueLine> Due)
{
    /// <summary>How far ahead the day looks.</summary>
    private static readonly TimeSpan s_ahead = TimeSpan.FromHours(36);

    /// <summary>The day of a shop as it stands.</summary>
    /// <param name="batches">Every batch.</param>
    /// <param name="used">Coils that stand in pieces: what was held of them was decided when they went in.</param>
    /// <param name="spools">The wire.</param>
    /// <param name="clocks">The pieces, baskets and mixes.</param>
    public static TodayBoard Of(
        IReadOnlyList<BatchProgress> batches,
        IReadOnlySet<(Guid BatchId, string Tag)> used,
        IReadOnlyList<SpoolStatus> spools,
        ClockBoard clocks
    )
    {
        BatchProgress[] running = [.. batches.Where(run => run.Status.State == BatchState.UnderWay).OrderByDescending(LastUtc)];
        IReadOnlyList<WorkCard> cards = WorkBoard.Cards(clocks);
        IEnumerable<TodayLine> needed = cards
            .Where(card => card.NeedsPerson)
            .Select(OfCard)
            .Concat(running.SelectMany(RunningLines.Of))
            .Concat(batches.SelectMany(run => HeldCoils.Of(run, used)))
            .Concat(ShortSpools.Of(running, spools));
        return new TodayBoard(
            [.. needed.OrderBy(line => line.Mark)],
            [.. running.Select(run => new RunningBatch(run, SpoolOf(run, spools)))],
            [.. Falling(cards, clocks.NowUtc)]
        );
    }

    /// <summary>Cards that may be dealt with now, and those that turn within the day, the soonest first.</summary>
    private static IEnumerable<DueLine> Falling(IReadOnlyList<WorkCard> cards, DateTimeOffset nowUtc) =>
        cards
            .Where(card => card.IsDue || (!card.NeedsPerson && card.Status.ChangesUtc - nowUtc < s_ahead))
            .Select(card => new DueLine(card.IsDue ? null : card.Status.ChangesUtc, card.Due, card, LinkOf(card)))
            .OrderBy(line => line.AtUtc ?? DateTimeOffset.MinValue);

    private static WorkLink LinkOf(WorkCard card) =>
        card switch
        {
            { Mix: not null } => new("Look at it", WorkPlace.Board),
            { Basket: not null } => new("Basket out", WorkPlace.Board),
            { Station: PieceEventLog.FinalTest } => new("Test", WorkPlace.Test, card.Pieces[0].Piece.Serial),
            { Station: PieceEventLog.Packing, Pieces: [var one] } => new("Ship", WorkPlace.Piece, one.Piece.Serial),
            _ => new("Go on", WorkPlace.Board),
        };

    private static TodayLine OfCard(WorkCard card)
    {
        WorkLink look = card.Pieces is [var one] ? LinkOf(one, card.Status) : new WorkLink("Look at them", WorkPlace.Board);
        string held = card.Pieces.Count == 1 ? "One piece is held" : $"{card.Pieces.Count} pieces are held";
        return card.Alarm is { } alarm
            ? new TodayLine(TodayMark.Alarm, card.Name, $"{alarm}. {held}.", look)
            : new TodayLine(TodayMark.Hold, card.Name, card.Status.HeldBy?.Reason ?? card.Status.Words, look);
    }

    private static WorkLink LinkOf(PieceSnapshot piece, StepStatus status) =>
        status.HeldBy is null && piece.FailedTest is not null
            ? new WorkLink("Test it again", WorkPlace.Test, piece.Piece.Serial)
            : new WorkLink("Look at it", WorkPlace.Piece, piece.Piece.Serial);

    private static SpoolStatus? SpoolOf(BatchProgress run, IReadOnlyList<SpoolStatus> spools) =>
        spools.FirstOrDefault(spool => string.Equals(spool.Spool.Label, run.History.Spool, StringComparison.OrdinalIgnoreCase));

    private static DateTimeOffset LastUtc(BatchProgress run) =>
        run.Status.Coils.Select(coil => coil.LastUtc).Append(run.Status.Batch.BegunUtc).Max();
}
