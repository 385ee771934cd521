using System.Collections.Concurrent;
using Coilwright.Analysis.Diagnosis;
using Coilwright.Workshop.Batches.Events;

namespace Coilwright.Workshop.Batches;

/// <summary>
/// What a shop's coils really had, as rates of faults; read again when a batch has a new case, and at least every minute.
/// </summary>
/// <param name="records">The shop's records.</param>
/// <param name="clock">The shop's clock.</param>
internal sealed class ConfirmedCauses(IBatchRecords records, TimeProvider clock)
{
    private static readonly TimeSpan s_fresh = TimeSpan.FromMinutes(1);

    private readonly ConcurrentDictionary<Guid, (int Cases, Guid? Last)> _seen = new();
    private volatile Known? _known;

    /// <summary>The rates; the same instance for as long as no case came or went.</summary>
    /// <param name="batchId">The batch that is judged.</param>
    /// <param name="events">Its events.</param>
    /// <param name="cancel">Ends the reading.</param>
    public async Task<CauseRates> RatesAsync(Guid batchId, IReadOnlyList<BatchEvent> events, CancellationToken cancel)
    {
        BatchEvent[] own = [.. BatchEventLog.Holding(events).Where(one => one is CauseFound)];
        (int, Guid?) state = (own.Length, own.Length == 0 ? null : own[^1].Id);
        DateTimeOffset now = clock.GetUtcNow();
        bool isNew = _seen.GetValueOrDefault(batchId) != state;
        if (_known is { } known && !isNew && now - known.ReadUtc < s_fresh && now >= known.ReadUtc)
        {
            return known.Rates;
        }

        IReadOnlyList<CauseFound> cases = await records.CausesFoundAsync(cancel).ConfigureAwait(false);
        string[] causes = [.. cases.GroupBy(one => (one.BatchId, one.Tag)).Select(coil => coil.Last().Cause)];
        string key = string.Join(' ', causes);
        CauseRates rates = _known is { } before && before.Key == key ? before.Rates : CauseRates.Learn(causes);
        _known = new Known(key, rates, now);
        _seen[batchId] = state;
        return rates;
    }

    private sealed record Known(string Key, CauseRates Rates, DateTimeOffset ReadUtc);
}
