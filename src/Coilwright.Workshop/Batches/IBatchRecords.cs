using Coilwright.Workshop.Batches.Events;

namespace Coilwright.Workshop.Batches;

/// <summary>What a store must do for batches, their events, and what their coils are judged against.</summary>
public interface IBatchRecords
{
    /// <summary>Every batch in order of beginning.</summary>
    Task<IReadOnlyList<BatchRecord>> AllAsync(CancellationToken cancel);

    /// <summary>One batch; null when there is none of that id.</summary>
    Task<BatchRecord?> FindAsync(Guid batchId, CancellationToken cancel);

    /// <summary>Batches that were begun on a spool or took it later, in order of beginning.</summary>
    Task<IReadOnlyList<BatchRecord>> WithSpoolAsync(string label, CancellationToken cancel);

    /// <summary>Adds a batch; a second one with the same id is not added again.</summary>
    /// <returns>False when another batch has its name (<see cref="Entry.NameKey"/>): nothing was added.</returns>
    Task<bool> AddAsync(BatchRecord batch, CancellationToken cancel);

    /// <summary>Adds a batch together with what its coils are judged against, both or neither.</summary>
    /// <returns>False when another batch has its name: nothing was added.</returns>
    Task<bool> AddAsync(BatchRecord batch, IReadOnlyList<BatchLimitsRecord> limits, CancellationToken cancel);

    /// <summary>Every event of a batch in order of entry, those taken back too.</summary>
    Task<IReadOnlyList<BatchEvent>> EventsAsync(Guid batchId, CancellationToken cancel);

    /// <summary>Adds an event; false when its id is there already or what it undoes was undone before.</summary>
    Task<bool> AddEventAsync(BatchEvent happened, CancellationToken cancel);

    /// <summary>All that is kept of a batch's limits, in order of entry; nothing for one begun before limits were kept.</summary>
    Task<IReadOnlyList<BatchLimitsRecord>> LimitsAsync(Guid batchId, CancellationToken cancel);

    /// <summary>Adds limits, all or none; where there are some of a batch at that frequency already, those stay and hold.</summary>
    /// <returns>False when the shop's file cannot be written: nothing was kept, and the shop can be looked at all the same.</returns>
    Task<bool> TryAddLimitsAsync(IReadOnlyList<BatchLimitsRecord> limits, CancellationToken cancel);
}
