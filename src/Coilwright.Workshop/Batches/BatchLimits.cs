using System.Collections.Concurrent;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Learning;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Batches;

/// <summary>
/// What the coils of a batch are judged against: worked out once, kept with the batch, and from then on the one answer for verdict, pages
/// and charts, whatever the program learns to forecast better.
/// </summary>
/// <param name="records">The shop's records.</param>
/// <param name="clock">Time of what is kept later than the batch began.</param>
/// <param name="forecast">Limits of a revision's coil; null for this program's own.</param>
internal sealed class BatchLimits(IShopRecords records, TimeProvider clock, Func<RevisionRecord, string, VerdictLimits>? forecast = null)
{
    /// <summary>Forecasts of released revisions; those never change, and a forecast takes a while.</summary>
    private static readonly ConcurrentDictionary<
        (Guid RecipeId, int Number, string Json, string Coil, KnownParts Known),
        VerdictLimits
    > s_known = new();

    private readonly ConcurrentDictionary<Guid, IReadOnlyList<BatchLimitsRecord>> _kept = new();

    /// <summary>What is written as a batch begins; nothing for a revision that gives no limits.</summary>
    public async Task<IReadOnlyList<BatchLimitsRecord>> BeginAsync(BatchRecord batch, RevisionRecord revision, CancellationToken cancel)
    {
        KnownParts parts = await LearntParts.AtAsync(records, batch.BegunUtc, batch.Spool, cancel).ConfigureAwait(false);
        RecordStatus<IReadOnlyList<BatchLimitsRecord>> made = await RecordStatus
            .ReadAsync("Batch " + batch.Name, () => Task.FromResult(Begin(batch, revision, parts)))
            .ConfigureAwait(false);
        return made.Value ?? [];
    }

    /// <summary>The limits that a batch would have; null for a revision that gives none. Nothing is written.</summary>
    public async Task<VerdictLimits?> WouldBeAsync(BatchRecord batch, RevisionRecord revision, CancellationToken cancel) =>
        await BeginAsync(batch, revision, cancel).ConfigureAwait(false) is { Count: > 0 } rows ? KeptLimits.Read(rows) : null;

    /// <summary>The limits of a batch.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="frequenciesHz">Frequencies of its readings: what a good coil reads there is kept with the batch.</param>
    /// <param name="cancel">Gives up.</param>
    /// <exception cref="UnreadableRecordException">Nothing is kept, and its revision gives no limits.</exception>
    public async Task<VerdictLimits> OfAsync(BatchRecord batch, IEnumerable<double> frequenciesHz, CancellationToken cancel)
    {
        IReadOnlyList<BatchLimitsRecord> kept = _kept.TryGetValue(batch.Id, out IReadOnlyList<BatchLimitsRecord>? known)
            ? known
            : await records.Batches.LimitsAsync(batch.Id, cancel).ConfigureAwait(false);
        double[] wanted =
        [
            .. frequenciesHz.Append(VerdictLimits.UsualHz).Where(hz => hz > 0).Distinct().Where(hz => !KeptLimits.Knows(kept, hz)),
        ];
        if (kept.Count == 0 || wanted.Length > 0)
        {
            kept = await AddAsync(batch, kept, wanted, cancel).ConfigureAwait(false);
        }

        _kept[batch.Id] = kept;
        return KeptLimits.Read(kept) ?? throw new InvalidOperationException("Limits of a batch without their first record.");
    }

    private async Task<IReadOnlyList<BatchLimitsRecord>> AddAsync(
        BatchRecord batch,
        IReadOnlyList<BatchLimitsRecord> kept,
        double[] wanted,
        CancellationToken cancel
    )
    {
        RevisionRecord revision = await RevisionAsync(batch, cancel).ConfigureAwait(false);
        KnownParts parts = await (
            kept.Count > 0
                ? LearntParts.UnderAsync(records, kept[0].Calibration, batch, cancel)
                : LearntParts.AtAsync(records, batch.BegunUtc, batch.Spool, cancel)
        ).ConfigureAwait(false);
        RecordStatus<VerdictLimits> forecast = await RecordStatus
            .ReadAsync("Batch " + batch.Name, () => Task.FromResult(Forecast(revision, batch.CoilName, parts)))
            .ConfigureAwait(false);
        if (kept.Count > 0 && forecast.Value is null)
        {
            return kept; // judged as it was begun; a reading at another frequency is held against nothing
        }

        VerdictLimits limits = forecast.Value ?? Forecast(revision, batch.CoilName, parts); // throws with the reason
        DateTimeOffset nowUtc = clock.GetUtcNow();
        List<BatchLimitsRecord> made = [];
        if (kept.Count == 0)
        {
            made.Add(Row(batch, 0, KeptLimits.Write(limits), atBegin: false, nowUtc, parts));
        }

        bool atBegin = kept.Count > 0 && kept[0].AtBegin;
        made.AddRange(wanted.Select(hz => Row(batch, hz, KeptLimits.Write(limits.Expected(hz)), atBegin, nowUtc, parts)));
        return await records.Batches.TryAddLimitsAsync(made, cancel).ConfigureAwait(false)
            ? await records.Batches.LimitsAsync(batch.Id, cancel).ConfigureAwait(false)
            : [.. kept, .. made];
    }

    private IReadOnlyList<BatchLimitsRecord> Begin(BatchRecord batch, RevisionRecord revision, KnownParts parts)
    {
        VerdictLimits limits = Forecast(revision, batch.CoilName, parts);
        double[] usual = [VerdictLimits.UsualHz, limits.Inductance?.AtHz ?? VerdictLimits.UsualHz];
        return
        [
            Row(batch, 0, KeptLimits.Write(limits), atBegin: true, batch.BegunUtc, parts),
            .. usual.Distinct().Select(hz => Row(batch, hz, KeptLimits.Write(limits.Expected(hz)), atBegin: true, batch.BegunUtc, parts)),
        ];
    }

    private static BatchLimitsRecord Row(
        BatchRecord batch,
        double hz,
        string json,
        bool atBegin,
        DateTimeOffset timeUtc,
        KnownParts parts
    ) =>
        new()
        {
            Id = Guid.NewGuid(),
            BatchId = batch.Id,
            AtHz = hz,
            Json = json,
            RevisionNumber = batch.RevisionNumber,
            Program = ProgramVersion.Text,
            Calibration = parts.Learning?.Set.Number ?? 0,
            AtBegin = atBegin,
            TimeUtc = timeUtc,
        };

    private async Task<RevisionRecord> RevisionAsync(BatchRecord batch, CancellationToken cancel) =>
        await records.Recipes.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel).ConfigureAwait(false)
        ?? throw new InvalidOperationException($"Batch {batch.Id} stands on a revision that is not there.");

    private VerdictLimits Forecast(RevisionRecord revision, string coilName, KnownParts parts) =>
        forecast?.Invoke(revision, coilName)
        ?? s_known.GetOrAdd((revision.RecipeId, revision.Number, revision.Json, coilName, parts), _ => Make(revision, coilName, parts));

    private static VerdictLimits Make(RevisionRecord revision, string coilName, KnownParts parts)
    {
        Recipe recipe = parts.Fill(ReleasedRecipe.Of(revision));
        return VerdictLimits.ForCoil(recipe, ReleasedRecipe.PlaceOf(recipe, revision, coilName));
    }
}
