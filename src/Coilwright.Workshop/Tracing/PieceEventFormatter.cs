using System.Globalization;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Tracing;

/// <summary>What stands behind the line of a piece's event, and names of what is read of a piece; the same on screens and papers.</summary>
public static class PieceEventFormatter
{
    /// <summary>A quantity of a whole piece in words.</summary>
    public static string Quantity(string name) => KeyLabels.Of(name);

    /// <summary>That a clock which was ahead gave an entry its time; empty for every other.</summary>
    public static string Ahead(PieceEvent one, TracedPiece piece)
    {
        if (!piece.Snapshot.History.IsAhead(one))
        {
            return "";
        }

        bool early = one is StepEnded ended && piece.Snapshot.History.EndedEarly.Contains(ended.Step);
        return early ? " (by a clock that was ahead: it may have ended too early)" : " (by a clock that was ahead: mend its time)";
    }

    /// <summary>When a person made an entry that arrived late; empty for one told at once.</summary>
    public static string Late(PieceEvent one, TracedPiece piece, TimeZoneInfo zone) =>
        piece.Snapshot.History.LateOf(one) is { } told
            ? string.Create(
                CultureInfo.InvariantCulture,
                $" (made {ShopTime.Words(told.SaidUtc, zone)} by the tablet's clock, sent {told.Waited.TotalMinutes:0} min later)"
            )
            : "";
}
