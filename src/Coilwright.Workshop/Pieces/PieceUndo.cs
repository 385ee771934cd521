using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces.Events;

namespace Coilwright.Workshop.Pieces;

/// <summary>What may be taken back: the newest entry that holds, whole, and nothing that the world outside has acted on.</summary>
public static class PieceUndo
{
    /// <summary>
    /// Events of the newest entry that holds, in order; several where one entry made several. Empty when nothing happened yet.
    /// </summary>
    public static IReadOnlyList<PieceEvent> LastEntry(PieceEventLog history)
    {
        IReadOnlyList<PieceEvent> inForce = history.InForce;
        int first = inForce.Count - 1;
        while (first > 0 && AreOneEntry(inForce[first - 1], inForce[first], history))
        {
            first--;
        }

        return [.. inForce.Skip(Math.Max(0, first))];
    }

    /// <summary>Why the newest entry may not be taken back; null when it may.</summary>
    public static Problem? Refusal(UndoGround ground) =>
        LastEntry(ground.Life.History) is [.., var last]
            ? last.UndoRefusal(ground)
            : new Problem(
                "piece",
                $"nothing was entered of {ground.Serial} since it was put together, and that is not taken back here",
                ground.Serial,
                "exchange a coil, or scrap the piece"
            );

    /// <summary>The newest entry in a few words, for a button: "marking done", "final test".</summary>
    public static string Words(IReadOnlyList<PieceEvent> entry) => entry.Count > 0 ? entry[0].EntryWords([.. entry.Skip(1)]) : "";

    /// <summary>One entry makes events at one moment: a step begun and ended at once, a test of a golden piece.</summary>
    private static bool AreOneEntry(PieceEvent before, PieceEvent after, PieceEventLog history) =>
        before.TimeUtc == after.TimeUtc && before.IsOneEntryWith(after, history);
}
