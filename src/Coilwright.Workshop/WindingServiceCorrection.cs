using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop;

/// <summary>Correction of a coil's readings and of its tag.</summary>
public sealed partial class WindingService
{
    /// <summary>
    /// Puts right what was read of a coil, or its tag. The old readings stay on record, superseded with reason, person and time.
    /// </summary>
    /// <param name="correction">What is to stand.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<CoilEntryOutcome> CorrectCoilAsync(CoilCorrection correction, CancellationToken cancel) =>
        CorrectAsync(correction, store: true, cancel);

    /// <summary>What a correction would come to: how it is understood, and the verdict then. Nothing is stored.</summary>
    public Task<CoilEntryOutcome> LookAtCorrectionAsync(CoilCorrection correction, CancellationToken cancel) =>
        CorrectAsync(correction, store: false, cancel);

    private async Task<CoilEntryOutcome> CorrectAsync(CoilCorrection correction, bool store, CancellationToken cancel)
    {
        if (await FindAsync(correction.BatchId, cancel).ConfigureAwait(false) is not { } found)
        {
            return Refused([new Problem("batch", "there is no such batch")]);
        }

        IReadOnlyList<ReadingRecord> before = await records.Readings.OfBatchAsync(correction.BatchId, cancel).ConfigureAwait(false);
        if (before.FirstOrDefault(reading => reading.Id == correction.Id) is { } there)
        {
            return await SentAgainAsync(found, before, there, correction, cancel).ConfigureAwait(false);
        }

        CoilCorrector corrector = new(found.Batch, before, correction, clock.GetUtcNow(), found.Limits.Resistance.Nominal);
        IReadOnlyList<ReadingRecord> made = corrector.Read();
        List<Problem> problems = [.. corrector.Problems];
        if (
            corrector.NewTag != corrector.Tag
            && await PieceWithAsync(found.Batch, corrector.Tag, cancel).ConfigureAwait(false) is { } piece
        )
        {
            string why = $"{corrector.Tag} was built into piece {piece.Serial}, whose record names it: its tag stays";
            problems.Add(new Problem("newTag", why, corrector.NewTag));
        }

        if (problems.Count > 0)
        {
            return Refused(problems);
        }

        return store
            ? await StoreKnownAsync(found, before, made, corrector.NewTag, cancel).ConfigureAwait(false)
            : await StandsAsync(found, [.. before, .. made], corrector.NewTag, made, duplicate: false, cancel, stored: false)
                .ConfigureAwait(false);
    }

    private async Task<CoilEntryOutcome> SentAgainAsync(
        Found found,
        IReadOnlyList<ReadingRecord> all,
        ReadingRecord first,
        CoilCorrection correction,
        CancellationToken cancel
    )
    {
        ReadingRecord[] earlier = [.. all.TakeWhile(reading => reading.Id != first.Id)];
        CoilCorrector corrector = new(found.Batch, earlier, correction, first.TimeUtc, found.Limits.Resistance.Nominal);
        IReadOnlyList<ReadingRecord> made = corrector.Read();
        ReadingRecord[] stored = [.. made.Select(one => all.FirstOrDefault(reading => reading.Id == one.Id)).OfType<ReadingRecord>()];
        bool same =
            made.Count > 0
            && stored.Length == made.Count
            && made.Zip(stored).All(pair => ReadingChain.SaysTheSame(pair.First, pair.Second));
        return same
            ? await StandsAsync(found, all, corrector.NewTag, stored, duplicate: true, cancel).ConfigureAwait(false)
            : Refused([SentAgain.Reading]);
    }

    private async Task<PieceRecord?> PieceWithAsync(BatchRecord batch, string tag, CancellationToken cancel)
    {
        IReadOnlyList<PieceRecord> pieces = await records
            .Pieces.WithAsync(new PieceQuery(Coils: (batch.Id, [tag])), cancel)
            .ConfigureAwait(false);
        return pieces.Count > 0 ? pieces[0] : null;
    }
}
