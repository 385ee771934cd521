using System.Collections.Concurrent;
using Coilwright.Analysis.Diagnosis;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Batches;

/// <summary>The dossiers of a shop's batches, each kept until its records have grown. One for all use cases of a shop.</summary>
public sealed class BatchDossiers
{
    private readonly ConcurrentDictionary<Guid, BatchDossier> _known = new();
    private readonly IShopRecords _records;
    private readonly ConfirmedCauses _causes;

    /// <summary>Dossiers of a shop.</summary>
    /// <param name="records">Its records.</param>
    /// <param name="clock">Time of limits that are kept later than their batch began.</param>
    /// <param name="forecast">What the coil of a revision is judged against; null for the recipe's targets and this program.</param>
    public BatchDossiers(IShopRecords records, TimeProvider clock, Func<RevisionRecord, string, VerdictLimits>? forecast = null)
    {
        _records = records;
        _causes = new ConfirmedCauses(records.Batches, clock);
        Limits = new BatchLimits(records, clock, forecast);
    }

    /// <summary>What batches are judged against.</summary>
    internal BatchLimits Limits { get; }

    /// <summary>What a batch is judged against, or why there is nothing to judge it by; reads none of its readings.</summary>
    public Task<RecordStatus<VerdictLimits>> LimitsOfAsync(BatchRecord batch, CancellationToken cancel) =>
        RecordStatus.ReadAsync("Batch " + batch.Name, () => Limits.OfAsync(batch, [], cancel), batch.Id);

    /// <summary>The dossiers of some batches, by batch.</summary>
    public async Task<IReadOnlyDictionary<Guid, BatchDossier>> OfAsync(IEnumerable<BatchRecord> batches, CancellationToken cancel)
    {
        Dictionary<Guid, BatchDossier> found = [];
        foreach (BatchRecord batch in batches)
        {
            found[batch.Id] = await OfAsync(batch, cancel).ConfigureAwait(false);
        }

        return found;
    }

    /// <summary>A batch's dossier as its records are now.</summary>
    public async Task<BatchDossier> OfAsync(BatchRecord batch, CancellationToken cancel)
    {
        IReadOnlyList<ReadingRecord> readings = await _records.Readings.OfBatchAsync(batch.Id, cancel).ConfigureAwait(false);
        IReadOnlyList<BatchEvent> events = await _records.Batches.EventsAsync(batch.Id, cancel).ConfigureAwait(false);
        return await KeepAsync(batch, readings, events, cancel).ConfigureAwait(false);
    }

    /// <summary>The dossier of records that are stored, and kept as such.</summary>
    internal async Task<BatchDossier> KeepAsync(
        BatchRecord batch,
        IReadOnlyList<ReadingRecord> readings,
        IReadOnlyList<BatchEvent> events,
        CancellationToken cancel
    )
    {
        CauseRates rates = await _causes.RatesAsync(batch.Id, events, cancel).ConfigureAwait(false);
        if (
            _known.TryGetValue(batch.Id, out BatchDossier? known)
            && State(known.Readings, known.Events) == State(readings, events)
            && ReferenceEquals(known.Rates, rates)
        )
        {
            return known;
        }

        BatchDossier made = await MakeAsync(batch, readings, events, cancel).ConfigureAwait(false);
        if (made.Fault is null)
        {
            _known[batch.Id] = made;
        }

        return made;
    }

    /// <summary>The dossier of records that are stored: the one that is known of them, or a new one, which is not kept.</summary>
    internal async Task<BatchDossier> LookAsync(
        BatchRecord batch,
        IReadOnlyList<ReadingRecord> readings,
        IReadOnlyList<BatchEvent> events,
        CancellationToken cancel
    ) =>
        _known.TryGetValue(batch.Id, out BatchDossier? known) && State(known.Readings, known.Events) == State(readings, events)
            ? known
            : await MakeAsync(batch, readings, events, cancel).ConfigureAwait(false);

    /// <summary>The dossier of records that are not stored: what would come of them.</summary>
    internal async Task<BatchDossier> MakeAsync(
        BatchRecord batch,
        IReadOnlyList<ReadingRecord> readings,
        IReadOnlyList<BatchEvent> events,
        CancellationToken cancel
    )
    {
        IEnumerable<double> hz = readings.Select(reading => reading.AtHz).OfType<double>();
        RecordStatus<VerdictLimits> limits = await RecordStatus
            .ReadAsync("Batch " + batch.Name, () => Limits.OfAsync(batch, hz, cancel), batch.Id)
            .ConfigureAwait(false);
        return new BatchDossier(batch, readings, events, limits, await _causes.RatesAsync(batch.Id, events, cancel).ConfigureAwait(false));
    }

    /// <summary>Records only grow, so that their number and the last one tell their state.</summary>
    private static (int, Guid?, int, Guid?) State(IReadOnlyList<ReadingRecord> readings, IReadOnlyList<BatchEvent> events) =>
        (readings.Count, readings.Count == 0 ? null : readings[^1].Id, events.Count, events.Count == 0 ? null : events[^1].Id);
}
