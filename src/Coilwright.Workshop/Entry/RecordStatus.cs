using System.Data.Common;

namespace Coilwright.Workshop.Entry;

/// <summary>A stored record that this program cannot show.</summary>
/// <param name="Name">What a person calls it, for example "Batch PX".</param>
/// <param name="Why">Why not, in workshop words.</param>
/// <param name="ToDo">What to do about it.</param>
public sealed record UnreadableRecord(string Name, string Why, string ToDo)
{
    /// <summary>Its id, where it has one of its own.</summary>
    public Guid? Id { get; init; }
}

/// <summary>A record's status, or why it cannot be shown.</summary>
public sealed record RecordStatus<T>(T? Value, UnreadableRecord? Fault)
    where T : class;

/// <summary>
/// The one way by which lists read their records: one that cannot be shown stands in the list, marked, and takes nothing with it.
/// </summary>
public static class RecordStatus
{
    private const string Report = "everything entered is kept; report it to whoever looks after this program, with the shop's file";

    /// <summary>Reads one record of a list.</summary>
    /// <param name="name">What a person calls it.</param>
    /// <param name="read">Reads it; whatever it throws becomes the reason, except that the file itself fails or the reader gives
    /// up.</param>
    /// <param name="id">Its id; null for none of its own.</param>
    public static async Task<RecordStatus<T>> ReadAsync<T>(string name, Func<Task<T>> read, Guid? id = null)
        where T : class
    {
        try
        {
            return new RecordStatus<T>(await read().ConfigureAwait(false), null);
        }
        catch (UnreadableRecordException known)
        {
            return new RecordStatus<T>(null, new UnreadableRecord(name, known.Message, known.ToDo) { Id = id });
        }
#pragma warning disable CA1031 // a list outlives whatever is wrong with one of its records
        catch (Exception failure) when (failure is not OperationCanceledException and not DbException and not IOException)
#pragma warning restore CA1031
        {
            return new RecordStatus<T>(
                null,
                new UnreadableRecord(
                    name,
                    $"this program fails on it ({failure.GetType().Name}: {failure.Message.Split('\n')[0].Trim()})",
                    Report
                )
                {
                    Id = id,
                }
            );
        }
    }

    /// <summary>The records that can be shown.</summary>
    public static IReadOnlyList<T> Readable<T>(this IEnumerable<RecordStatus<T>> statuses)
        where T : class => [.. statuses.Select(status => status.Value).OfType<T>()];

    /// <summary>Those that cannot, with the reasons.</summary>
    public static IReadOnlyList<UnreadableRecord> Unreadable<T>(this IEnumerable<RecordStatus<T>> statuses)
        where T : class => [.. statuses.Select(status => status.Fault).OfType<UnreadableRecord>()];
}
