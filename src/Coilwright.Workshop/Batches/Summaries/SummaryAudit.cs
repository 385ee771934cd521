using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Batches.Summaries;

/// <summary>A batch whose kept summary is not what its records give.</summary>
/// <param name="Batch">The batch.</param>
/// <param name="What">What differs, in words.</param>
public sealed record UnsoundSummary(BatchRecord Batch, string What);

/// <summary>What came of holding every kept summary against a fresh one.</summary>
/// <param name="Compared">How many were compared.</param>
/// <param name="Unsound">Those that say other than their records.</param>
/// <param name="Missing">Batches without one: it is made when a page asks for it.</param>
/// <param name="JudgedOtherwise">
/// Batches of which only verdicts differ, since a cause was found or taken back in the shop after their newest record: such a summary tells
/// the verdicts of its day.
/// </param>
public sealed record SummaryAuditResult(
    int Compared,
    IReadOnlyList<UnsoundSummary> Unsound,
    IReadOnlyList<BatchRecord> Missing,
    IReadOnlyList<BatchRecord> JudgedOtherwise
);

/// <summary>Holds what is kept of each batch in short against its records.</summary>
/// <param name="records">The shop's records; nothing is written to them.</param>
/// <param name="clock">The shop's clock.</param>
public sealed class SummaryAudit(IShopRecords records, TimeProvider clock)
{
    private readonly BatchDossiers _dossiers = new(records, clock);

    /// <summary>Compares every summary.</summary>
    /// <param name="progress">Told how many batches were looked at, of how many; null for nobody.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<SummaryAuditResult> RunAsync(IProgress<(int Done, int Of)>? progress, CancellationToken cancel)
    {
        IReadOnlyList<BatchRecord> batches = await records.Batches.AllAsync(cancel).ConfigureAwait(false);
        List<UnsoundSummary> unsound = [];
        List<BatchRecord> missing = [];
        List<(BatchRecord Batch, DateTimeOffset NewestUtc)> otherwise = [];
        DateTimeOffset causesUtc = DateTimeOffset.MinValue;
        for (int at = 0; at < batches.Count; at++)
        {
            progress?.Report((at, batches.Count));
            BatchRecord batch = batches[at];
            IReadOnlyList<BatchEvent> events = await records.Batches.EventsAsync(batch.Id, cancel).ConfigureAwait(false);
            causesUtc = Later(causesUtc, CausesUtc(events));
            KeptSummary? kept = await records.Summaries.FindAsync(batch.Id, cancel).ConfigureAwait(false);
            if (kept is null)
            {
                missing.Add(batch);
                continue;
            }

            IReadOnlyList<ReadingRecord> readings = await records.Readings.OfBatchAsync(batch.Id, cancel).ConfigureAwait(false);
            SummaryDifference difference = await DifferenceAsync(batch, kept, readings, events, cancel).ConfigureAwait(false);
            if (difference.IsNone || !await StandsAsync(batch, kept, cancel).ConfigureAwait(false))
            {
                continue;
            }

            if (difference.Facts.Count > 0)
            {
                unsound.Add(new UnsoundSummary(batch, difference.Words));
            }
            else
            {
                otherwise.Add((batch, NewestUtc(batch, readings, events)));
            }
        }

        unsound.AddRange(otherwise.Where(one => one.NewestUtc >= causesUtc).Select(one => new UnsoundSummary(one.Batch, "verdicts")));
        return new SummaryAuditResult(
            batches.Count - missing.Count,
            unsound,
            missing,
            [.. otherwise.Where(one => one.NewestUtc < causesUtc).Select(one => one.Batch)]
        );
    }

    private async Task<SummaryDifference> DifferenceAsync(
        BatchRecord batch,
        KeptSummary kept,
        IReadOnlyList<ReadingRecord> readings,
        IReadOnlyList<BatchEvent> events,
        CancellationToken cancel
    )
    {
        if (kept.Summary is not { } summary)
        {
            return new SummaryDifference([kept.Complaint], []);
        }

        RecordStatus<BatchSummary> fresh = await RecordStatus
            .ReadAsync(
                "Batch " + batch.Name,
                async () => BatchSummary.Of(await _dossiers.MakeAsync(batch, readings, events, cancel).ConfigureAwait(false)),
                batch.Id
            )
            .ConfigureAwait(false);
        return SummaryDifference.Of(summary, fresh.Value ?? BatchSummary.Unreadable(batch.Id));
    }

    /// <summary>True when the summary is still kept: with a record that came meanwhile it would be gone.</summary>
    private async Task<bool> StandsAsync(BatchRecord batch, KeptSummary kept, CancellationToken cancel) =>
        await records.Summaries.FindAsync(batch.Id, cancel).ConfigureAwait(false) is { } now && now.Text == kept.Text;

    /// <summary>When a cause was last found or taken back in a batch.</summary>
    private static DateTimeOffset CausesUtc(IReadOnlyList<BatchEvent> events)
    {
        HashSet<Guid> causes = [.. events.OfType<CauseFound>().Select(one => one.Id)];
        return events
            .Where(one => one is CauseFound || (one is Undone undone && causes.Contains(undone.Undoes)))
            .Select(one => one.TimeUtc)
            .DefaultIfEmpty(DateTimeOffset.MinValue)
            .Max();
    }

    private static DateTimeOffset NewestUtc(BatchRecord batch, IReadOnlyList<ReadingRecord> readings, IReadOnlyList<BatchEvent> events) =>
        readings.Select(one => one.TimeUtc).Concat(events.Select(one => one.TimeUtc)).Append(batch.BegunUtc).Max();

    private static DateTimeOffset Later(DateTimeOffset one, DateTimeOffset other) => one > other ? one : other;
}
