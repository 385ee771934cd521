using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;

namespace Coilwright.Workshop.Steps;

/// <summary>A basket in a bath.</summary>
/// <param name="Record">As it went in.</param>
/// <param name="Pieces">The pieces in it.</param>
/// <param name="Readings">The bath as read since.</param>
/// <param name="Undos">Readings among them that were taken back.</param>
public sealed record BasketStatus(
    BasketRecord Record,
    IReadOnlyList<PieceSnapshot> Pieces,
    IReadOnlyList<BathReadingRecord> Readings,
    IReadOnlyList<StepUndoRecord> Undos
)
{
    /// <summary>Readings that were not taken back.</summary>
    public IReadOnlyList<BathReadingRecord> ReadingsInForce => [.. Readings.Where(reading => UndoOf(reading) is null)];

    /// <summary>When it went in; a time of its pieces that was mended counts.</summary>
    public DateTimeOffset InUtc =>
        Pieces.SelectMany(life => life.History.InForce).OfType<StepBegun>().FirstOrDefault(one => one.BasketId == Record.Id)?.TimeUtc
        ?? Record.TimeUtc;

    /// <summary>Who took a reading back and why; null for one that holds.</summary>
    public StepUndoRecord? UndoOf(BathReadingRecord reading) => Undos.FirstOrDefault(undo => undo.About == reading.Id);

    /// <summary>The basket with its clock.</summary>
    public PottingBasket ToBasket() =>
        new(
            Record.Label,
            Record.Kind,
            Record.Lot,
            [.. Pieces.Select(life => life.Piece.Serial)],
            InUtc,
            TimeSpan.FromSeconds(Record.LeastS),
            Record.LimitC,
            Record.LimitOf
        );

    /// <summary>
    /// The bath's alarm while it stands: until a person has lifted the hold that it put on every piece in the basket. Null when none
    /// stands.
    /// </summary>
    public string? AlarmAt(DateTimeOffset nowUtc)
    {
        PottingBasket basket = ToBasket();
        HashSet<string> raised =
        [
            .. ReadingsInForce.Select(reading => basket.Alarm(reading.TemperatureC, reading.TimeUtc)?.Reason).OfType<string>(),
        ];
        return Pieces
            .SelectMany(life => life.History.Holds)
            .LastOrDefault(hold => hold.Runs(nowUtc) && raised.Contains(hold.Reason))
            ?.Reason;
    }
}
