using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Batches.Summaries;

/// <summary>Keeps the summaries of batches in step with their records, and lists batches by them.</summary>
/// <param name="records">The shop's records.</param>
/// <param name="dossiers">The dossiers that summaries are made of.</param>
public sealed class BatchSummaries(IShopRecords records, BatchDossiers dossiers)
{
    /// <summary>A page waits for no more missing summaries than these; the rest is made in the background.</summary>
    public const int AtOnce = 40;

    private IBatchSummaryRecords Kept => records.Summaries;

    /// <summary>Makes summaries that are missing, those of the newest batches first.</summary>
    /// <param name="most">No more than these.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>How many were made and kept, and how many are missing still.</returns>
    public async Task<(int Kept, int Missing)> CatchUpAsync(int most, CancellationToken cancel)
    {
        int kept = 0;
        foreach (BatchRecord batch in await Kept.MissingAsync(most, cancel).ConfigureAwait(false))
        {
            kept += await TryKeepAsync(batch, cancel).ConfigureAwait(false) ? 1 : 0;
        }

        return (kept, await Kept.MissingCountAsync(cancel).ConfigureAwait(false));
    }

    /// <summary>
    /// Batches that may need a person: under way, with coils on hold, not to be shown, and the newest of those that were not looked through
    /// yet.
    /// </summary>
    /// <returns>In order of beginning, and how many others were not looked through yet.</returns>
    public async Task<(IReadOnlyList<BatchRecord> Batches, int NotYet)> OpenAsync(CancellationToken cancel)
    {
        (_, int missing) = await CatchUpAsync(AtOnce, cancel).ConfigureAwait(false);
        IReadOnlyList<BatchRecord> open = await Kept.OpenAsync(cancel).ConfigureAwait(false),
            newest = missing > 0 ? await Kept.MissingAsync(AtOnce, cancel).ConfigureAwait(false) : [];
        return ([.. open.Concat(newest).DistinctBy(batch => batch.Id).OrderBy(batch => batch.BegunUtc)], missing - newest.Count);
    }

    private async Task<bool> TryKeepAsync(BatchRecord batch, CancellationToken cancel)
    {
        IReadOnlyList<ReadingRecord> readings = await records.Readings.OfBatchAsync(batch.Id, cancel).ConfigureAwait(false);
        IReadOnlyList<BatchEvent> events = await records.Batches.EventsAsync(batch.Id, cancel).ConfigureAwait(false);
        RecordStatus<BatchSummary> made = await RecordStatus
            .ReadAsync(batch.Name, async () =>
                BatchSummary.Of(await dossiers.LookAsync(batch, readings, events, cancel).ConfigureAwait(false))
            )
            .ConfigureAwait(false);
        BatchSummary summary = made.Value ?? BatchSummary.Unreadable(batch.Id);
        return await Kept.TryKeepAsync(summary, readings.Count, events.Count, cancel).ConfigureAwait(false);
    }
}
