using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Summaries;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Winding;

/// <summary>Some of the batches that stand alike.</summary>
/// <param name="State">Where they stand.</param>
/// <param name="Count">How many there are in all.</param>
/// <param name="Lines">Those of this page, begun last first.</param>
public sealed record BatchGroup(BatchState State, int Count, IReadOnlyList<BatchLine> Lines);

/// <summary>Batches by where they stand.</summary>
/// <param name="Groups">Under way, done, closed.</param>
/// <param name="Unreadable">Those that cannot be shown, with the reasons.</param>
/// <param name="NotYet">How many older ones were not looked through yet.</param>
public sealed record BatchList(IReadOnlyList<BatchGroup> Groups, IReadOnlyList<UnreadableRecord> Unreadable, int NotYet)
{
    /// <summary>How many there are in all.</summary>
    public int Count => Groups.Sum(group => group.Count) + Unreadable.Count + NotYet;
}

/// <summary>Lists batches by their summaries: no coil is read for it, and a long list comes in pages.</summary>
public sealed class ListBatches(IBatchSummaryRecords kept, BatchSummaries summaries, WindingService winding)
{
    /// <summary>Batches on a page of one state.</summary>
    public const int OnPage = 30;

    /// <summary>Batches of each state that is over, where all states stand on one page.</summary>
    public const int OfEach = 12;

    /// <summary>A page of the list.</summary>
    /// <param name="only">The state; null for all of them, the first of each.</param>
    /// <param name="page">Which page of the state, from 1.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<BatchList> ReadAsync(BatchState? only, int page, CancellationToken cancel)
    {
        (_, int missing) = await summaries.CatchUpAsync(BatchSummaries.AtOnce, cancel).ConfigureAwait(false);
        IReadOnlyDictionary<BatchState, int> counts = await kept.CountsAsync(cancel).ConfigureAwait(false);
        List<BatchGroup> groups = [];
        foreach (BatchState state in Enum.GetValues<BatchState>())
        {
            (int skip, int take) = Part(state, only, page, counts.GetValueOrDefault(state));
            IReadOnlyList<BatchLine> lines = take > 0 ? await LinesAsync(state, skip, take, cancel).ConfigureAwait(false) : [];
            groups.Add(new BatchGroup(state, counts.GetValueOrDefault(state), lines));
        }

        IReadOnlyList<BatchRecord> unreadable = await kept.UnreadableAsync(cancel).ConfigureAwait(false);
        return new BatchList(groups, (await winding.StatusesAsync(unreadable, cancel).ConfigureAwait(false)).Unreadable(), missing);
    }

    /// <summary>Of all states, those under way are shown whole: they are what is worked on.</summary>
    private static (int Skip, int Take) Part(BatchState state, BatchState? only, int page, int count)
    {
        if (only is not null)
        {
            return (OnPage * (page - 1), only == state ? OnPage : 0);
        }

        return (0, state == BatchState.UnderWay ? count : OfEach);
    }

    private async Task<IReadOnlyList<BatchLine>> LinesAsync(BatchState state, int skip, int take, CancellationToken cancel)
    {
        List<BatchLine> lines = [];
        foreach ((BatchRecord batch, BatchSummary summary) in await kept.InStateAsync(state, skip, take, cancel).ConfigureAwait(false))
        {
            lines.Add(await summaries.LineAsync(batch, summary, cancel).ConfigureAwait(false));
        }

        return lines;
    }
}
