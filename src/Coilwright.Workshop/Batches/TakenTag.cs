using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Batches;

/// <summary>
/// A tag that was proposed for a new coil, and that another bench has used meanwhile: two coils never get one tag unasked.
/// </summary>
internal static class TakenTag
{
    /// <summary>The question, with the free tag that answers it; none when the tag is free, or was typed or scanned.</summary>
    /// <param name="entry">As typed.</param>
    /// <param name="batch">Its batch.</param>
    /// <param name="tag">Its tag, tidied.</param>
    /// <param name="takenInOrder">Tags that have readings in force, in order of entry.</param>
    /// <param name="wanted">Coils wanted.</param>
    public static IReadOnlyList<Problem> Problems(
        CoilEntry entry,
        BatchRecord batch,
        string tag,
        IReadOnlyList<string> takenInOrder,
        int wanted
    )
    {
        if (!entry.Proposed || entry.Supersedes is not null || !takenInOrder.Contains(tag, StringComparer.Ordinal))
        {
            return [];
        }

        return BatchTags.Next(batch, takenInOrder, wanted) is { } free
            ?
            [
                new Problem("tag", $"another bench has entered {tag} meanwhile; save again and this coil is {free}", tag)
                {
                    Readings = [free],
                },
            ]
            : [new Problem("tag", $"another bench has entered {tag} meanwhile, and it was the last of the batch", tag)];
    }
}
