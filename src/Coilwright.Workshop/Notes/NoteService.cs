using System.Globalization;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Notes;

/// <summary>Brings old notes of coils into a batch: each value is read as one that is typed at the winder; all of them or none.</summary>
/// <param name="records">The shop's records.</param>
/// <param name="clock">The shop's clock.</param>
/// <param name="winding">Begins batches.</param>
public sealed class NoteService(IShopRecords records, TimeProvider clock, WindingService winding)
{
    /// <summary>The batch that notes would begin: its number, and the beginning that their tags have in common.</summary>
    /// <param name="name">Name of the batch.</param>
    /// <param name="revision">The revision it stands on.</param>
    /// <param name="coilName">Which of its coils.</param>
    /// <param name="notes">The notes.</param>
    /// <param name="person">Who brings them in.</param>
    public BatchRecord NewBatch(string name, RevisionRecord revision, string coilName, IReadOnlyList<CoilNote> notes, string person)
    {
        string[] tags = [.. notes.Select(note => note.Written(NoteRole.Tag).Trim()).Where(tag => tag.Length > 0)];
        string prefix = tags.Length == 0 ? "" : PrefixOf(tags[0]);
        prefix = Array.TrueForAll(tags, tag => PrefixOf(tag) == prefix) ? prefix : "";
        BatchRecord batch = new(
            Guid.NewGuid(),
            name,
            revision.RecipeId,
            revision.Number,
            coilName,
            1,
            prefix,
            "",
            "",
            person,
            notes.Min(note => note.TimeUtc) ?? clock.GetUtcNow()
        );
        int highest = tags.Select(tag => BatchTags.NumberOf(batch, tag) ?? 0).DefaultIfEmpty(0).Max();
        return batch with { Quantity = Math.Clamp(Math.Max(highest, tags.Length), 1, BatchRules.MostCoils) };
    }

    /// <summary>Checks all of it and, when nothing is wrong and it is wished, keeps all of it.</summary>
    /// <param name="batch">The batch; begun when the shop has none of its id.</param>
    /// <param name="notes">The notes.</param>
    /// <param name="person">Who brings them in; for notes that name nobody.</param>
    /// <param name="dryRun">True to check alone.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<NoteOutcome> KeepAsync(
        BatchRecord batch,
        IReadOnlyList<CoilNote> notes,
        string person,
        bool dryRun,
        CancellationToken cancel
    )
    {
        bool isNew = await records.Batches.FindAsync(batch.Id, cancel).ConfigureAwait(false) is null;
        List<Problem> problems = [];
        VerdictLimits? limits = null;
        if (isNew)
        {
            RevisionRecord? revision = await records
                .Recipes.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel)
                .ConfigureAwait(false);
            problems.AddRange(BatchRules.Check(batch, revision, await KnownNames.ReadAsync(records, cancel).ConfigureAwait(false)));
            limits =
                problems.Count == 0 ? await winding.Dossiers.Limits.WouldBeAsync(batch, revision!, cancel).ConfigureAwait(false) : null;
        }
        else
        {
            limits = await winding.Dossiers.Limits.OfAsync(batch, [], cancel).ConfigureAwait(false);
        }

        IReadOnlyList<ReadingRecord> before = await records.Readings.OfBatchAsync(batch.Id, cancel).ConfigureAwait(false);
        NoteReadings reader = new(batch, before, limits?.Resistance.Nominal ?? 0, clock.GetUtcNow(), person.Trim());
        reader.Read(notes, await WantedAsync(batch, problems, cancel).ConfigureAwait(false));
        problems.AddRange(reader.Problems);
        if (problems.Count == 0 && !dryRun && reader.Readings.Count > 0)
        {
            problems.AddRange(isNew ? await winding.BeginBatchAsync(batch, cancel).ConfigureAwait(false) : []);
            if (problems.Count == 0)
            {
                AddReading added = await records.Readings.AddAsync(reader.Readings, cancel).ConfigureAwait(false);
                problems.AddRange(added is AddReading.Added or AddReading.AlreadyThere ? [] : [SentAgain.Reading]);
            }
        }

        return new NoteOutcome(problems, reader.Coils, reader.AlreadyThere, reader.Notes);
    }

    private async Task<int> WantedAsync(BatchRecord batch, List<Problem> problems, CancellationToken cancel)
    {
        IReadOnlyList<BatchEvent> inForce = BatchEventLog.Holding(
            await records.Batches.EventsAsync(batch.Id, cancel).ConfigureAwait(false)
        );
        if (BatchEventLog.ClosingOf(inForce) is { } closing)
        {
            problems.Add(BatchNumber.IsClosed("batch", batch, closing));
        }

        return BatchNumber.Wanted(batch, inForce);
    }

    /// <summary>What stands before the number that a tag ends with.</summary>
    private static string PrefixOf(string tag)
    {
        string prefix = tag.TrimEnd([.. Enumerable.Range(0, 10).Select(digit => digit.ToString(CultureInfo.InvariantCulture)[0])]);
        return prefix.Length < tag.Length ? prefix : "";
    }
}
