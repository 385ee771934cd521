using Coilwright.Workshop.Pieces;

namespace Coilwright.Workshop.Steps;

/// <summary>A basket in a bath.</summary>
/// <param name="Record">As it went in.</param>
/// <param name="Pieces">The pieces in it.</param>
/// <param name="Readings">The bath as read since.</param>
public sealed record BasketStanding(BasketRecord Record, IReadOnlyList<PieceLife> Pieces, IReadOnlyList<BathReadingRecord> Readings)
{
    /// <summary>The basket with its clock.</summary>
    public PottingBasket ToBasket() => new(Record.Label, Record.Kind, Record.Lot, [.. Pieces.Select(life => life.Piece.Serial)], Record.TimeUtc, TimeSpan.FromSeconds(Record.LeastS), Record.LimitC, Record.LimitOf);

    /// <summary>The bath's alarm while it stands: until a person has lifted the hold that it put on every piece in the basket. Null when none stands.</summary>
    public string? AlarmAt(DateTimeOffset nowUtc)
    {
        PottingBasket basket = ToBasket();
        HashSet<string> raised = [.. Readings.Select(reading => basket.Alarm(reading.TemperatureC, reading.TimeUtc)?.Reason).OfType<string>()];
        return Pieces.SelectMany(life => life.History.Holds).LastOrDefault(hold => hold.Runs(nowUtc) && raised.Contains(hold.Reason))?.Reason;
    }
}
