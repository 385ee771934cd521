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
}
