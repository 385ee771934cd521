using System.Collections.Concurrent;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Batches.Summaries;

/// <summary>Keeps the summaries of batches in step with their records, and lists batches by them.</summary>
/// <param name="records">The shop's records.</param>
/// <param name="dossiers">The dossiers that summaries are made of.</param>
public sealed class BatchSummaries(IShopRecords records, BatchDossiers dossiers)
{
    /// <summary>A page waits for no more missing summaries than these; the rest is made in the background.</summary>
    public const int AtOnce = 40;

    /// <summary>Names of recipes and letters of revisions: batches stand on released ones, which never change.</summary>
    private readonly ConcurrentDictionary<(Guid, int), (string Name, string Letter)> _recipes = new();

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
            kept += (await MakeAsync(batch, cancel).ConfigureAwait(false)).IsKept ? 1 : 0;
        }

        return (kept, await Kept.MissingCountAsync(cancel).ConfigureAwait(false));
    }

    /// <summary>Makes the summary of a batch again, whatever is kept.</summary>
    /// <returns>False when it could not be kept.</returns>
    public async Task<bool> RemakeAsync(BatchRecord batch, CancellationToken cancel) =>
        (await MakeAsync(batch, cancel).ConfigureAwait(false)).IsKept;

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

    /// <summary>
    /// Every batch in order of beginning, or why it cannot be shown; what is missing is made first, however long that takes.
    /// </summary>
    public async Task<IReadOnlyList<RecordStatus<BatchLine>>> EveryAsync(CancellationToken cancel)
    {
        IReadOnlyDictionary<Guid, BatchSummary> kept = await Kept.AllAsync(cancel).ConfigureAwait(false);
        List<RecordStatus<BatchLine>> lines = [];
        foreach (BatchRecord batch in await records.Batches.AllAsync(cancel).ConfigureAwait(false))
        {
            lines.Add(
                kept.GetValueOrDefault(batch.Id) is { State: not null } known
                    ? new RecordStatus<BatchLine>(await LineAsync(batch, known, cancel).ConfigureAwait(false), null)
                    : await OfAsync(batch, cancel).ConfigureAwait(false)
            );
        }

        return lines;
    }

    /// <summary>One batch as its records are now, or why it cannot be shown.</summary>
    public async Task<RecordStatus<BatchLine>> OfAsync(BatchRecord batch, CancellationToken cancel)
    {
        (RecordStatus<BatchSummary> made, _) = await MakeAsync(batch, cancel).ConfigureAwait(false);
        return made.Value is { } summary
            ? new RecordStatus<BatchLine>(await LineAsync(batch, summary, cancel).ConfigureAwait(false), null)
            : new RecordStatus<BatchLine>(null, made.Fault);
    }

    /// <summary>A batch with its summary, as a list shows it.</summary>
    public async Task<BatchLine> LineAsync(BatchRecord batch, BatchSummary summary, CancellationToken cancel)
    {
        (Guid, int) key = (batch.RecipeId, batch.RevisionNumber);
        if (!_recipes.TryGetValue(key, out (string Name, string Letter) recipe))
        {
            RevisionRecord? revision = await records
                .Recipes.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel)
                .ConfigureAwait(false);
            recipe = (revision?.RecipeName ?? "", revision?.Letter ?? "");
            _recipes[key] = recipe;
        }

        return new BatchLine(batch, recipe.Name, recipe.Letter, summary);
    }

    /// <summary>Makes a summary, and keeps it where it can be kept.</summary>
    private async Task<(RecordStatus<BatchSummary> Made, bool IsKept)> MakeAsync(BatchRecord batch, CancellationToken cancel)
    {
        IReadOnlyList<ReadingRecord> readings = await records.Readings.OfBatchAsync(batch.Id, cancel).ConfigureAwait(false);
        IReadOnlyList<BatchEvent> events = await records.Batches.EventsAsync(batch.Id, cancel).ConfigureAwait(false);
        RecordStatus<BatchSummary> made = await RecordStatus
            .ReadAsync(
                "Batch " + batch.Name,
                async () => BatchSummary.Of(await dossiers.LookAsync(batch, readings, events, cancel).ConfigureAwait(false)),
                batch.Id
            )
            .ConfigureAwait(false);
        BatchSummary summary = made.Value ?? BatchSummary.Unreadable(batch.Id);
        return (made, await Kept.TryKeepAsync(summary, readings.Count, events.Count, cancel).ConfigureAwait(false));
    }
}
