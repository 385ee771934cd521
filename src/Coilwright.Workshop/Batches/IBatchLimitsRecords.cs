namespace Coilwright.Workshop.Batches;

/// <summary>What a store must do for the limits of batches.</summary>
public interface IBatchLimitsRecords
{
    /// <summary>All that is kept of a batch's limits, in order of entry; nothing for one begun before limits were kept.</summary>
    Task<IReadOnlyList<BatchLimitsRecord>> BatchLimitsAsync(Guid batchId, CancellationToken cancel);

    /// <summary>Adds limits, all or none; where there are some of a batch at that frequency already, those stay and hold.</summary>
    /// <returns>False when the shop's file cannot be written: nothing was kept, and the shop can be looked at all the same.</returns>
    Task<bool> TryAddBatchLimitsAsync(IReadOnlyList<BatchLimitsRecord> limits, CancellationToken cancel);
}
