using System.Globalization;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Batches;

/// <summary>The number of coils a batch ends at, and the coils beyond it.</summary>
public static class BatchNumber
{
    /// <summary>Coils wanted: the batch's number and what was asked for since.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="inForce">Its events, those taken back left out.</param>
    public static int Wanted(BatchRecord batch, IEnumerable<BatchEvent> inForce) =>
        batch.Quantity + inForce.OfType<MoreWanted>().Sum(one => one.Coils);

    /// <summary>True when every coil that is wanted was entered.</summary>
    /// <param name="begun">Coils that are there.</param>
    /// <param name="beyond">Those of them that are beyond the number.</param>
    /// <param name="wanted">Coils wanted.</param>
    public static bool IsDone(int begun, int beyond, int wanted) => begun - beyond >= wanted;

    /// <summary>Where a batch stands.</summary>
    /// <param name="begun">Coils that are there.</param>
    /// <param name="beyond">Those of them that are beyond the number.</param>
    /// <param name="wanted">Coils wanted.</param>
    /// <param name="closing">Why it ended before its number; null while it did not.</param>
    public static BatchState State(int begun, int beyond, int wanted, Closed? closing)
    {
        BatchState counted = IsDone(begun, beyond, wanted) ? BatchState.Done : BatchState.UnderWay;
        return closing is null ? counted : BatchState.Closed;
    }

    /// <summary>Tags beyond the number: of a higher number than is wanted, or entered when all that are wanted were there.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="wanted">Coils wanted.</param>
    /// <param name="tagsInOrder">Tags of the coils that are there, in order of first entry.</param>
    public static IReadOnlySet<string> Beyond(BatchRecord batch, int wanted, IEnumerable<string> tagsInOrder)
    {
        HashSet<string> beyond = new(StringComparer.Ordinal);
        int within = 0;
        foreach (string tag in tagsInOrder)
        {
            if (within >= wanted || BatchTags.NumberOf(batch, tag) > wanted)
            {
                beyond.Add(tag);
            }
            else
            {
                within++;
            }
        }

        return beyond;
    }

    /// <summary>
    /// Why a coil may not be entered: it would be one more than is wanted. Null for a coil that is there already, or one that is wanted.
    /// </summary>
    public static Problem? Refusal(BatchRecord batch, int wanted, IReadOnlyList<string> tagsInOrder, string tag)
    {
        if (tagsInOrder.Contains(tag) || !Beyond(batch, wanted, [.. tagsInOrder, tag]).Contains(tag))
        {
            return null;
        }

        int within = tagsInOrder.Count - Beyond(batch, wanted, tagsInOrder).Count;
        string message = $"{Count(within, wanted)} of batch {batch.Name}: {tag} would be one more than is wanted";
        string own = $"the tag of a coil of this batch ({BatchTags.Of(batch, 1)} to {BatchTags.Of(batch, wanted)})";
        string more =
            $"say first how many more are wanted and why, on the page of the batch or with coilwright batch more "
            + $"{batch.Name} COUNT --reason TEXT";
        return new Problem("tag", message, tag, $"{own}; or {more}");
    }

    /// <summary>Why nothing is entered into a batch that was closed.</summary>
    /// <param name="field">The field that the problem belongs to.</param>
    /// <param name="batch">The batch.</param>
    /// <param name="closing">Its closing.</param>
    public static Problem IsClosed(string field, BatchRecord batch, Closed closing) =>
        new(
            field,
            $"batch {batch.Name} was {closing.Sentence}; nothing more is wound or entered into it",
            null,
            $"reopen it first, on its page or with coilwright batch reopen {batch.Name}"
        );

    /// <summary>How far it is, how many coils are beyond the number, and why it ended before it.</summary>
    public static string Words(int coils, int beyond, int wanted, Closed? closing = null) =>
        Count(coils - beyond, wanted)
        + (beyond > 0 ? $", {beyond} beyond the number" : "")
        + (closing is null ? "" : $", closed: {closing.Why}");

    /// <summary>How far it is: "24 of 24 done", "20 of 24".</summary>
    public static string Count(int within, int wanted) =>
        string.Create(CultureInfo.InvariantCulture, $"{within:#,##0} of {wanted:#,##0}{(within >= wanted ? " done" : "")}");
}
