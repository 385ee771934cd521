using System.Globalization;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Sets;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Tracing;

/// <summary>Events of a piece in the shop's words, the same on screens and papers.</summary>
public static class PieceEventFormatter
{
    /// <summary>A quantity of a whole piece in words.</summary>
    public static string Quantity(string name) => KeyLabels.Of(name);

    /// <summary>One event in a line.</summary>
    public static string Of(PieceEventRecord one, TracedPiece piece) =>
        one.Kind switch
        {
            PieceEventKind.StepBegun =>
                $"{one.Step} begun{Named(" in basket ", one.BasketId, piece)}{Named(" with ink ", one.MixId, piece)}",
            PieceEventKind.StepEnded =>
                $"{one.Step} ended{(MagnetCharge.Of(one, piece.Snapshot) is { } charge ? $": {charge.Words}" : "")}",
            PieceEventKind.Charged => MagnetCharge.Of(one, piece.Snapshot)?.Words ?? "charged",
            PieceEventKind.JoinedSet => Joined(SetMembership.Of(one, piece.Snapshot)),
            PieceEventKind.Held => $"held: {one.Words}",
            PieceEventKind.Lifted => $"hold lifted: {one.Words}",
            PieceEventKind.Tested => $"final test: {one.Words}",
            PieceEventKind.Shipped => $"shipped to {Named("", one.CustomerId, piece)}",
            PieceEventKind.Returned => $"returned: {one.Words}",
            PieceEventKind.Examined => $"examined: {one.Words}",
            PieceEventKind.Repaired => $"mended: {one.Words}{After("; cost ", one.Cost)}{After("; answer: ", one.Answer)}",
            PieceEventKind.Scrapped => $"scrapped: {one.Words}{After("; cost ", one.Cost)}",
            PieceEventKind.Undone => $"taken back: "
                + $"{piece.Snapshot.History.All.Where(other => other.Id == one.About).Select(Short).FirstOrDefault()}, because {one.Words}",
            PieceEventKind.TimeMended when MendedTime.Read(one.Words) is { } mended =>
                $"time mended: {piece.Snapshot.History.All.Where(other => other.Id == one.About).Select(Short).FirstOrDefault()} was at "
                    + $"{ShopTime.Words(mended.TimeUtc, piece.Zone)}, because {mended.Reason}",
            PieceEventKind.ClockSaidRight => one.Words,
            _ => Short(one),
        };

    private static string Joined(SetMembership set)
    {
        string level = Math.Abs(set.OffsetDb) > 0 ? $", target level {SetMembership.Decibels(set.OffsetDb)}" : "";
        return $"into {set.Words}{level}{After("; chosen because: ", set.Why)}";
    }

    /// <summary>The words with what leads to them; empty without words.</summary>
    private static string After(string lead, string words) => words.Length > 0 ? lead + words : "";

    private static string Named(string lead, Guid? id, TracedPiece piece) => id is { } known ? lead + piece.NameOf(known) : "";

    /// <summary>That a clock which was ahead gave an entry its time; empty for every other.</summary>
    public static string Ahead(PieceEventRecord one, TracedPiece piece)
    {
        if (!piece.Snapshot.History.IsAhead(one))
        {
            return "";
        }

        bool early = one.Kind == PieceEventKind.StepEnded && piece.Snapshot.History.EndedEarly.Contains(one.Step);
        return early ? " (by a clock that was ahead: it may have ended too early)" : " (by a clock that was ahead: mend its time)";
    }

    /// <summary>When a person made an entry that arrived late; empty for one told at once.</summary>
    public static string Late(PieceEventRecord one, TracedPiece piece, TimeZoneInfo zone) =>
        piece.Snapshot.History.LateOf(one) is { } told
            ? string.Create(
                CultureInfo.InvariantCulture,
                $" (made {ShopTime.Words(told.SaidUtc, zone)} by the tablet's clock, sent {told.Waited.TotalMinutes:0} min later)"
            )
            : "";

    /// <summary>One event in the fewest words, without what it went into or whom it went to.</summary>
    public static string Short(PieceEventRecord one) =>
        one.Kind switch
        {
            PieceEventKind.StepBegun => $"{one.Step} begun",
            PieceEventKind.StepEnded => $"{one.Step} ended",
            PieceEventKind.Held => $"held: {one.Words}",
            PieceEventKind.Lifted => $"hold lifted: {one.Words}",
            PieceEventKind.Tested => "final test",
            PieceEventKind.Shipped => "shipped",
            PieceEventKind.Returned => "returned",
            PieceEventKind.Examined => "examined",
            PieceEventKind.Repaired => "mended",
            PieceEventKind.Scrapped => "scrapped",
            PieceEventKind.Charged => "magnets charged anew",
            PieceEventKind.JoinedSet => "joined a set",
            _ => one.Words,
        };
}
