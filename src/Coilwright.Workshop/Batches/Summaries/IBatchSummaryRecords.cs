namespace Coilwright.Workshop.Batches.Summaries;

/// <summary>
/// What a store must do for summaries of batches. A summary goes in the same unit of work in which a record is added to its batch, and one
/// that another version of the program made counts as missing.
/// </summary>
public interface IBatchSummaryRecords
{
    /// <summary>Batches without a summary, those begun last first.</summary>
    /// <param name="most">No more than these.</param>
    /// <param name="cancel">Gives up.</param>
    Task<IReadOnlyList<BatchRecord>> MissingAsync(int most, CancellationToken cancel);

    /// <summary>How many batches have no summary.</summary>
    Task<int> MissingCountAsync(CancellationToken cancel);

    /// <summary>Batches that are under way, have coils on hold, or cannot be shown; in order of beginning.</summary>
    Task<IReadOnlyList<BatchRecord>> OpenAsync(CancellationToken cancel);

    /// <summary>Batches that cannot be shown, in order of beginning.</summary>
    Task<IReadOnlyList<BatchRecord>> UnreadableAsync(CancellationToken cancel);

    /// <summary>How many batches with a summary stand where.</summary>
    Task<IReadOnlyDictionary<BatchState, int>> CountsAsync(CancellationToken cancel);

    /// <summary>Batches in a state with their summaries, those begun last first.</summary>
    /// <param name="state">The state.</param>
    /// <param name="skip">Leaves out so many.</param>
    /// <param name="take">No more than these.</param>
    /// <param name="cancel">Gives up.</param>
    Task<IReadOnlyList<(BatchRecord Batch, BatchSummary Summary)>> InStateAsync(
        BatchState state,
        int skip,
        int take,
        CancellationToken cancel
    );

    /// <summary>What is kept of one batch by this version of the program; null when nothing is.</summary>
    Task<KeptSummary?> FindAsync(Guid batchId, CancellationToken cancel);

    /// <summary>Every summary that there is, by batch.</summary>
    Task<IReadOnlyDictionary<Guid, BatchSummary>> AllAsync(CancellationToken cancel);

    /// <summary>Keeps a summary, unless its batch has grown meanwhile.</summary>
    /// <param name="summary">The summary.</param>
    /// <param name="readings">Readings of the batch that it follows from.</param>
    /// <param name="events">Events of the batch that it follows from.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>False when it was not kept, also when the shop's file cannot be written: it can be looked at all the same.</returns>
    Task<bool> TryKeepAsync(BatchSummary summary, int readings, int events, CancellationToken cancel);
}
