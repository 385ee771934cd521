using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop;

/// <summary>Entry of coils, correction and undo.</summary>
public sealed partial class WindingRoom
{
    private const string Restored = "undone: the reading before holds again";

    /// <summary>Records what was typed for a coil. An impossible reading is kept and flagged; only a request that names no batch, no coil or no value is refused.</summary>
    public async Task<CoilEntryOutcome> RecordCoilAsync(CoilEntry entry, CancellationToken cancel)
    {
        if (await FindAsync(entry.BatchId, cancel).ConfigureAwait(false) is not { } found)
        {
            return Refused([new Problem("batch", "there is no such batch")]);
        }

        IReadOnlyList<ReadingRecord> before = await records.ReadingsAsync(entry.BatchId, cancel).ConfigureAwait(false);
        string tag = BatchTags.Tidy(found.Batch, entry.Tag);
        if (before.FirstOrDefault(reading => reading.Id == entry.Id) is { } there)
        {
            bool same = there.Tag == tag && (there.Typed == entry.Resistance || there.Typed == entry.Inductance);
            return same ? await StandsAsync(found, before, there.Tag, EntryOf(before, there), duplicate: true, cancel).ConfigureAwait(false) : Refused([IdTaken]);
        }

        EntryReader reader = new(entry, tag, await RoomAsync(cancel).ConfigureAwait(false), clock.GetUtcNow(), found.Limits.Resistance.Nominal);
        IReadOnlyList<ReadingRecord> readings = reader.Read();
        List<Problem> problems =
        [
            .. Check(tag, readings), .. reader.Problems,
            .. TextLimit.Check([("tag", tag), ("person", entry.Person), ("instrument", entry.Instrument), ("reason", entry.Reason)]),
        ];
        readings = Correct(entry, before, readings, problems);
        return problems.Count > 0 ? Refused(problems) : await StoreAsync(found, before, readings, tag, cancel).ConfigureAwait(false);
    }

    /// <summary>Takes the entry made last in a batch away; a correction undone puts the reading before it back in force. Both are appended, nothing is erased.</summary>
    /// <param name="batchId">The batch.</param>
    /// <param name="undoId">Client-made id; sent twice it undoes once.</param>
    /// <param name="person">Who undoes.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<CoilEntryOutcome> UndoLastAsync(Guid batchId, Guid undoId, string person, CancellationToken cancel)
    {
        if (await FindAsync(batchId, cancel).ConfigureAwait(false) is not { } found)
        {
            return Refused([new Problem("batch", "there is no such batch")]);
        }

        IReadOnlyList<ReadingRecord> before = await records.ReadingsAsync(batchId, cancel).ConfigureAwait(false);
        if (before.FirstOrDefault(reading => reading.Id == undoId) is { } there)
        {
            return await StandsAsync(found, before, there.Tag, [there], duplicate: true, cancel).ConfigureAwait(false);
        }

        IReadOnlyList<ReadingRecord> last = ReadingChain.LastEntry(ReadingChain.InForce(before));
        if (last.Count == 0)
        {
            return Refused([new Problem("batch", "there is nothing to undo", found.Batch.Name)]);
        }

        DateTimeOffset now = clock.GetUtcNow();
        ReadingRecord[] undoing = [.. last.Select((reading, place) => Undoing(reading, before) with
        {
            Id = place == 0 ? undoId : ReadingChain.IdWithin(undoId, reading.Quantity),
            Supersedes = reading.Id,
            Person = person.Trim(),
            TimeUtc = now,
        })];
        return await StoreAsync(found, before, undoing, last[0].Tag, cancel).ConfigureAwait(false);
    }

    /// <summary>Undoes without an id of the client's; sent twice it undoes twice.</summary>
    public Task<CoilEntryOutcome> UndoLastAsync(Guid batchId, string person, CancellationToken cancel) => UndoLastAsync(batchId, Guid.NewGuid(), person, cancel);

    private static Problem IdTaken => new("id", "another entry has this id already; nothing was changed");

    private static CoilEntryOutcome Refused(IReadOnlyList<Problem> problems) => new(problems, null, "", Duplicate: false, null);

    private static ReadingRecord Undoing(ReadingRecord last, IReadOnlyList<ReadingRecord> all) =>
        last.Supersedes is { } earlier && last.Reason != Restored
            ? all.Single(reading => reading.Id == earlier) with { Reason = Restored }
            : last with { Typed = "", Si = null, Flag = "", Turns = null, Reason = "undone", Withdraws = true };

    private static IReadOnlyList<ReadingRecord> EntryOf(IReadOnlyList<ReadingRecord> readings, ReadingRecord first) =>
        [.. readings.Where(reading => reading.Id == first.Id || reading.Id == ReadingChain.IdWithin(first.Id, reading.Quantity))];

    private static List<Problem> Check(string tag, IReadOnlyList<ReadingRecord> readings)
    {
        List<Problem> problems = [];
        if (tag.Length == 0)
        {
            problems.Add(new Problem("tag", "a coil needs a tag", null, TextLimit.Tag.Allowed));
        }

        if (readings.Count == 0)
        {
            problems.Add(new Problem("resistance", "nothing was measured", null, "for example 7.43 k, 7k43, 7430 or open"));
        }

        return problems;
    }

    /// <summary>Says of each new reading which one it takes the place of, when the entry is a correction.</summary>
    private static IReadOnlyList<ReadingRecord> Correct(CoilEntry entry, IReadOnlyList<ReadingRecord> before, IReadOnlyList<ReadingRecord> readings, List<Problem> problems)
    {
        if (entry.Supersedes is not { } oldId)
        {
            return readings;
        }

        if (string.IsNullOrWhiteSpace(entry.Reason))
        {
            problems.Add(new Problem("reason", "a correction needs a reason", null, "a few words"));
        }

        IReadOnlyList<ReadingRecord> inForce = ReadingChain.InForce(before);
        if (inForce.FirstOrDefault(reading => reading.Id == oldId) is not { } old)
        {
            bool known = before.Any(reading => reading.Id == oldId);
            problems.Add(new Problem("supersedes", known ? "that reading has been superseded already; look at the coil again" : "there is no such reading in this batch"));
            return readings;
        }

        if (readings.Count > 0 && readings.All(reading => reading.Quantity != old.Quantity))
        {
            problems.Add(new Problem("supersedes", "a reading is superseded by one of the same quantity", old.Quantity));
        }

        return [.. readings.Select(reading => reading with { Supersedes = PlaceOf(reading, old, inForce), Reason = entry.Reason.Trim() })];
    }

    private static Guid? PlaceOf(ReadingRecord reading, ReadingRecord old, IReadOnlyList<ReadingRecord> inForce)
    {
        if (reading.Quantity == old.Quantity)
        {
            return old.Id;
        }

        ReadingRecord[] beside = [.. inForce.Where(other => other.Tag == old.Tag && other.Quantity == reading.Quantity)];
        return beside.Length == 1 ? beside[0].Id : null;
    }

    private async Task<CoilEntryOutcome> StoreAsync(Found found, IReadOnlyList<ReadingRecord> before, IReadOnlyList<ReadingRecord> readings, string tag, CancellationToken cancel)
    {
        AddReading added = await records.AddReadingsAsync(readings, cancel).ConfigureAwait(false);
        return added switch
        {
            AddReading.SupersededByAnother => Refused([new Problem("supersedes", "somebody else has superseded that reading meanwhile; look at the coil again")]),
            AddReading.IdTaken => Refused([IdTaken]),
            AddReading.Added => await StandsAsync(found, [.. before, .. readings], tag, readings, duplicate: false, cancel).ConfigureAwait(false),
            _ => await StandsAsync(found, await records.ReadingsAsync(found.Batch.Id, cancel).ConfigureAwait(false), tag, readings, duplicate: true, cancel).ConfigureAwait(false),
        };
    }

    private async Task<CoilEntryOutcome> StandsAsync(Found found, IReadOnlyList<ReadingRecord> all, string tag, IReadOnlyList<ReadingRecord> entered, bool duplicate, CancellationToken cancel)
    {
        BatchCoils coils = new(found.Batch, all, await records.BatchEventsAsync(found.Batch.Id, cancel).ConfigureAwait(false));
        return new CoilEntryOutcome([], coils.JudgeOne(found.Limits, tag), entered.All(reading => reading.Withdraws) ? $"{tag} undone" : EntryReader.Echo(entered), duplicate, NextTag(found.Batch, all));
    }
}
