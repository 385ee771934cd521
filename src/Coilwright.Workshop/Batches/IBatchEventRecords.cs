using Coilwright.Workshop.Batches.Events;

namespace Coilwright.Workshop.Batches;

/// <summary>What a store must do for the events of batches.</summary>
public interface IBatchEventRecords
{
    /// <summary>Every event of a batch in order of entry, those taken back too.</summary>
    Task<IReadOnlyList<BatchEvent>> BatchEventsAsync(Guid batchId, CancellationToken cancel);

    /// <summary>Adds an event; false when its id is there already or what it undoes was undone before.</summary>
    Task<bool> AddBatchEventAsync(BatchEvent happened, CancellationToken cancel);

    /// <summary>What coils of the shop really had, in order of entry; what was taken back is left out.</summary>
    Task<IReadOnlyList<CauseFound>> CausesFoundAsync(CancellationToken cancel);

    /// <summary>Batches that were begun on a spool or took it later, in order of beginning.</summary>
    Task<IReadOnlyList<BatchRecord>> BatchesWithSpoolAsync(string label, CancellationToken cancel);
}
