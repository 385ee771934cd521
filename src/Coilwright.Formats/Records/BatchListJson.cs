using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Batches.Summaries;
using Coilwright.Workshop.Entry;

namespace Coilwright.Formats.Records;

/// <summary>Every batch as JSON for programs (coilwright.batches/1); one that cannot be shown keeps its place.</summary>
public static class BatchListJson
{
    /// <summary>Name of the format.</summary>
    public const string Format = "coilwright.batches/1";

    /// <summary>Writes the list.</summary>
    /// <param name="statuses">Every batch, or why it cannot be shown.</param>
    /// <param name="names">Names of batches by id.</param>
    public static string Write(IEnumerable<RecordStatus<BatchLine>> statuses, IReadOnlyDictionary<Guid, string> names) =>
        JsonListWriter.Write(
            new { format = Format, batches = statuses.Select(one => one.Value is { } line ? Shown(line) : Marked(one.Fault!, names)) }
        );

    private static object Shown(BatchLine one) =>
        new
        {
            batch = one.Batch.Name,
            id = one.Batch.Id,
            recipe = one.RecipeName,
            revision = one.RevisionLetter,
            coil = one.Batch.CoilName,
            quantity = one.Batch.Quantity,
            wanted = one.Summary.Wanted,
            done = one.Summary.IsDone,
            closed = one.Summary.Closing is { } closing ? Closed(closing) : null,
            beyond = one.Summary.Beyond,
            begun = one.Summary.Begun,
            pass = one.Summary.Pass,
            hold = one.Summary.Hold,
            reject = one.Summary.Reject,
        };

    private static object Closed(Closed closing) =>
        new
        {
            coils = closing.Coils,
            wanted = closing.Wanted,
            reason = closing.Why,
            person = closing.Person,
            time = closing.TimeUtc,
        };

    private static object Marked(UnreadableRecord one, IReadOnlyDictionary<Guid, string> names) =>
        new
        {
            batch = one.Id is { } id && names.TryGetValue(id, out string? name) ? name : one.Name,
            id = one.Id,
            unreadable = one.Why,
            toDo = one.ToDo,
        };
}
