using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Pieces;

/// <summary>What may be taken back: the newest entry that holds, whole, and nothing that the world outside has acted on.</summary>
public static class PieceUndo
{
    /// <summary>
    /// Events of the newest entry that holds, in order; several where one entry made several. Empty when nothing happened yet.
    /// </summary>
    public static IReadOnlyList<PieceEventRecord> LastEntry(PieceEventLog history)
    {
        IReadOnlyList<PieceEventRecord> inForce = history.InForce;
        int first = inForce.Count - 1;
        while (first > 0 && AreOneEntry(inForce[first - 1], inForce[first], history))
        {
            first--;
        }

        return [.. inForce.Skip(Math.Max(0, first))];
    }

    /// <summary>Why the newest entry may not be taken back; null when it may.</summary>
    /// <param name="life">The piece.</param>
    /// <param name="alarms">Ids of holds that readings of a bath put on it.</param>
    /// <param name="nowUtc">The shop's now.</param>
    /// <param name="zone">The shop's time zone: a shipment may be taken back on the day it was entered.</param>
    public static Problem? Refusal(PieceSnapshot life, IReadOnlySet<Guid> alarms, DateTimeOffset nowUtc, TimeZoneInfo zone)
    {
        string serial = life.Piece.Serial;
        if (LastEntry(life.History) is not [.., var last])
        {
            return new Problem(
                "piece",
                $"nothing was entered of {serial} since it was put together, and that is not taken back here",
                serial,
                "exchange a coil, or scrap the piece"
            );
        }

        return last.Kind switch
        {
            PieceEventKind.PartOut => new Problem(
                "piece",
                $"{serial}: an exchange of coils is not taken back, since both coils changed places",
                serial,
                "exchange them the other way round"
            ),
            PieceEventKind.Shipped when DayOf(last.TimeUtc, zone) != DayOf(nowUtc, zone) => new Problem(
                "piece",
                $"{serial} was shipped {ShopTime.Words(last.TimeUtc, zone)}: after that day its parcel has left",
                serial,
                "book its return when it comes back"
            ),
            PieceEventKind.Held when alarms.Contains(last.Id) => new Problem(
                "piece",
                $"{serial} is held because of what the bath read: that is not taken back",
                serial,
                "take the reading back if it was mistyped; else lift the hold with what the inspection found"
            ),
            _ => null,
        };
    }

    /// <summary>The newest entry in a few words, for a button: "marking done", "final test".</summary>
    public static string Words(IReadOnlyList<PieceEventRecord> entry) =>
        entry switch
        {
            [] => "",
            [{ Kind: PieceEventKind.StepBegun, Step: var step }, { Kind: PieceEventKind.StepEnded }] => step + " done",
            _ => PieceEventFormatter.Short(entry[0])
                + (entry.Count > 1 && entry[1].Kind == PieceEventKind.MadeGolden ? ", kept as the shop's measure" : ""),
        };

    /// <summary>
    /// One entry makes a step begun and ended at once, a test of a golden piece, or the lifting of several holds; all at one moment.
    /// </summary>
    private static bool AreOneEntry(PieceEventRecord before, PieceEventRecord after, PieceEventLog history) =>
        before.TimeUtc == after.TimeUtc
        && (before.Kind, after.Kind) switch
        {
            (PieceEventKind.StepBegun, PieceEventKind.StepEnded) => before.Step == after.Step
                && history.LateOf(before) == history.LateOf(after), // two entries that waited on a tablet may arrive at one moment
            (PieceEventKind.Tested, PieceEventKind.MadeGolden) or (PieceEventKind.Lifted, PieceEventKind.Lifted) => true,
            _ => false,
        };

    private static DateTime DayOf(DateTimeOffset utc, TimeZoneInfo zone) => TimeZoneInfo.ConvertTime(utc, zone).Date;
}
