using System.Collections.Concurrent;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Walls;

/// <summary>Verdicts on the coils of batches, for charts: kept until a batch has grown.</summary>
internal sealed class JudgedCoils
{
    private readonly ConcurrentDictionary<Guid, ((int Readings, int Events) State, IReadOnlyDictionary<string, Verdict> Verdicts)>
        _known = new();

    /// <summary>Verdicts on every coil of some batches, by batch and tag.</summary>
    public async Task<IReadOnlyDictionary<Guid, IReadOnlyDictionary<string, Verdict>>> OfAsync(
        IShopRecords records, IEnumerable<BatchRecord> batches, CancellationToken cancel)
    {
        Dictionary<Guid, IReadOnlyDictionary<string, Verdict>> found = [];
        foreach (BatchRecord batch in batches)
        {
            found[batch.Id] = await OfAsync(records, batch, cancel).ConfigureAwait(false);
        }

        return found;
    }

    private async Task<IReadOnlyDictionary<string, Verdict>> OfAsync(IShopRecords records, BatchRecord batch, CancellationToken cancel)
    {
        IReadOnlyList<ReadingRecord> readings = await records.ReadingsAsync(batch.Id, cancel).ConfigureAwait(false);
        IReadOnlyList<BatchEventRecord> events = await records.BatchEventsAsync(batch.Id, cancel).ConfigureAwait(false);
        (int, int) state = (readings.Count, events.Count); // records only grow
        if (_known.TryGetValue(batch.Id, out var known) && known.State == state)
        {
            return known.Verdicts;
        }

        RevisionRecord revision = await records.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel).ConfigureAwait(false)
            ?? throw new InvalidOperationException($"Batch {batch.Id} stands on a revision that is not there.");
        IReadOnlyDictionary<string, Verdict> verdicts = new BatchCoils(batch, readings, events).Weigh(BatchLimits.Of(revision, batch.CoilName));
        _known[batch.Id] = (state, verdicts);
        return verdicts;
    }
}
