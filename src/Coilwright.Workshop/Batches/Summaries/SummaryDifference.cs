namespace Coilwright.Workshop.Batches.Summaries;

/// <summary>In what a summary that is kept differs from the one that the batch's records give now.</summary>
/// <param name="Facts">What follows from the batch's own records alone, in words.</param>
/// <param name="Verdicts">What also follows from causes that were found in other batches, in words.</param>
public sealed record SummaryDifference(IReadOnlyList<string> Facts, IReadOnlyList<string> Verdicts)
{
    /// <summary>True when they say the same.</summary>
    public bool IsNone => Facts.Count == 0 && Verdicts.Count == 0;

    /// <summary>Everything that differs, in words.</summary>
    public string Words => string.Join(", ", Facts.Concat(Verdicts));

    /// <summary>Holds a summary against another of the same batch.</summary>
    /// <param name="kept">The one that is kept.</param>
    /// <param name="fresh">The one worked out anew.</param>
    public static SummaryDifference Of(BatchSummary kept, BatchSummary fresh) =>
        new(
            [
                .. Unless(kept.BatchId == fresh.BatchId, "the batch"),
                .. Unless(kept.State == fresh.State, "where it stands"),
                .. Unless((kept.Wanted, kept.Begun, kept.Beyond) == (fresh.Wanted, fresh.Begun, fresh.Beyond), "number of coils"),
                .. Unless(kept.Closing == fresh.Closing, "why it ended early"),
                .. Unless(kept.CountWords == fresh.CountWords, "how far it is"),
                .. Unless(kept.NextTag == fresh.NextTag, "next tag"),
                .. Unless(kept.Newest.Select(one => one.Tag).SequenceEqual(fresh.Newest.Select(one => one.Tag)), "newest coils"),
                .. Unless(kept.Wire.SequenceEqual(fresh.Wire), "wire taken"),
                .. Unless(Judged(kept) == Judged(fresh), "number of coils judged"),
            ],
            [
                .. Unless(
                    (kept.Pass, kept.Hold, kept.Reject) == (fresh.Pass, fresh.Hold, fresh.Reject)
                        && kept.Newest.Select(one => one.Kind).SequenceEqual(fresh.Newest.Select(one => one.Kind)),
                    "verdicts"
                ),
            ]
        );

    private static int Judged(BatchSummary summary) => summary.Pass + summary.Hold + summary.Reject;

    private static IEnumerable<string> Unless(bool same, string words) => same ? [] : [words];
}
