using Coilwright.Workshop;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Formats.Records;

/// <summary>Every batch as JSON for programs (coilwright.batches/1); one that cannot be shown keeps its place.</summary>
public static class BatchListJson
{
    /// <summary>Name of the format.</summary>
    public const string Format = "coilwright.batches/1";

    /// <summary>Writes the list.</summary>
    /// <param name="statuses">Every batch, or why it cannot be shown.</param>
    /// <param name="names">Names of batches by id.</param>
    public static string Write(IEnumerable<RecordStatus<BatchStatus>> statuses, IReadOnlyDictionary<Guid, string> names) =>
        JsonListWriter.Write(
            new
            {
                format = Format,
                batches = statuses.Select(one => one.Value is { } standing ? Shown(standing) : Marked(one.Fault!, names)),
            }
        );

    private static object Shown(BatchStatus one) =>
        new
        {
            batch = one.Batch.Name,
            id = one.Batch.Id,
            recipe = one.RecipeName,
            revision = one.RevisionLetter,
            coil = one.Batch.CoilName,
            quantity = one.Batch.Quantity,
            wanted = one.Wanted,
            done = one.IsDone,
            closed = one.Closing is { } closing ? Closed(closing) : null,
            beyond = one.Beyond.Count,
            begun = one.Coils.Count,
            pass = Count(one, VerdictKind.Pass),
            hold = Count(one, VerdictKind.Hold),
            reject = Count(one, VerdictKind.Reject),
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

    private static int Count(BatchStatus standing, VerdictKind kind) => standing.Coils.Count(coil => coil.Verdict.Kind == kind);
}
