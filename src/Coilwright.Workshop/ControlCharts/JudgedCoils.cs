using System.Collections.Concurrent;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.ControlCharts;

/// <summary>Verdicts on the coils of batches, for charts: kept until a batch has grown.</summary>
internal sealed class JudgedCoils
{
    private readonly ConcurrentDictionary<Guid, ((int Readings, int Events) State, IReadOnlyDictionary<string, Verdict> Verdicts)> _known =
        new();

    /// <summary>Verdicts on every coil of some batches, by batch and tag.</summary>
    public async Task<IReadOnlyDictionary<Guid, IReadOnlyDictionary<string, Verdict>>> OfAsync(
        IShopRecords records,
        IEnumerable<BatchRecord> batches,
        CancellationToken cancel
    )
    {
        Dictionary<Guid, IReadOnlyDictionary<string, Verdict>> found = [];
        foreach (BatchRecord batch in batches)
        {
            found[batch.Id] = await OfAsync(records, batch, cancel).ConfigureAwait(false);
        }

        return found;
    }

    /// <summary>Those of some batches that have no limits to judge by, with the reasons.</summary>
    public static async Task<IReadOnlyList<UnreadableRecord>> UnreadableAsync(
        IShopRecords records,
        IEnumerable<BatchRecord> batches,
        CancellationToken cancel
    )
    {
        List<RecordStatus<VerdictLimits>> read = [];
        foreach (BatchRecord batch in batches)
        {
            read.Add(await LimitsAsync(records, batch, cancel).ConfigureAwait(false));
        }

        return read.Unreadable();
    }

    private static Task<RecordStatus<VerdictLimits>> LimitsAsync(IShopRecords records, BatchRecord batch, CancellationToken cancel) =>
        RecordStatus.ReadAsync(
            "Batch " + batch.Name,
            async () =>
                BatchLimits.Of(
                    await records.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel).ConfigureAwait(false)
                        ?? throw new InvalidOperationException("it stands on a revision that is not there"),
                    batch.CoilName
                ),
            batch.Id
        );

    private async Task<IReadOnlyDictionary<string, Verdict>> OfAsync(IShopRecords records, BatchRecord batch, CancellationToken cancel)
    {
        IReadOnlyList<ReadingRecord> readings = await records.ReadingsAsync(batch.Id, cancel).ConfigureAwait(false);
        IReadOnlyList<BatchEventRecord> events = await records.BatchEventsAsync(batch.Id, cancel).ConfigureAwait(false);
        (int, int) state = (readings.Count, events.Count); // records only grow
        if (_known.TryGetValue(batch.Id, out var kept) && kept.State == state)
        {
            return kept.Verdicts;
        }

        RecordStatus<VerdictLimits> limits = await LimitsAsync(records, batch, cancel).ConfigureAwait(false);
        IReadOnlyDictionary<string, Verdict> verdicts = limits.Value is { } known
            ? new BatchCoils(batch, readings, events).Weigh(known)
            : new Dictionary<string, Verdict>();
        _known[batch.Id] = (state, verdicts);
        return verdicts;
    }
}
