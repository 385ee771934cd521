using Coilwright.Workshop.Sets;

namespace Coilwright.Workshop.Pieces;

/// <summary>What decides whether the newest entry of a piece may be taken back.</summary>
/// <param name="Life">The piece.</param>
/// <param name="Alarms">Ids of holds that readings of a bath put on it.</param>
/// <param name="Namesakes">Sets that bear the name of the set it has just left; none for a piece that left none.</param>
/// <param name="NowUtc">The shop's now.</param>
/// <param name="Zone">The shop's time zone.</param>
public sealed record UndoGround(
    PieceSnapshot Life,
    IReadOnlySet<Guid> Alarms,
    IReadOnlyList<PieceSet> Namesakes,
    DateTimeOffset NowUtc,
    TimeZoneInfo Zone
)
{
    /// <summary>Serial of the piece.</summary>
    public string Serial => Life.Piece.Serial;
}
