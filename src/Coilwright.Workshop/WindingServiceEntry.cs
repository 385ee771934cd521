using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop;

/// <summary>Entry of coils, correction and undo.</summary>
public sealed partial class WindingService
{
    /// <summary>
    /// Records what was typed for a coil. What is no reading of a coil is refused, and so is a coil beyond the number of the batch, with
    /// what to do instead.
    /// An entry that waited on a tablet is kept all the same, and marked: nobody stands there any more to type it again. Into a batch that
    /// was closed nothing is entered until it is reopened; the tablet keeps it and says why. A correction is taken.
    /// What can mean two things is stored never: the tablet keeps it and asks which.
    /// </summary>
    /// <param name="entry">As typed.</param>
    /// <param name="cancel">Gives up.</param>
    /// <param name="late">When it was made and sent, for an entry that waited; null for one made now.</param>
    public async Task<CoilEntryOutcome> RecordCoilAsync(CoilEntry entry, CancellationToken cancel, LateEntry? late = null)
    {
        if (await FindAsync(entry.BatchId, cancel).ConfigureAwait(false) is not { } found)
        {
            return Refused([new Problem("batch", "there is no such batch")]);
        }

        IReadOnlyList<ReadingRecord> before = await records.Readings.OfBatchAsync(entry.BatchId, cancel).ConfigureAwait(false);
        string tag = BatchTags.Tidy(found.Batch, entry.Tag);
        if (before.FirstOrDefault(reading => reading.Id == entry.Id) is { } there)
        {
            IReadOnlyList<ReadingRecord> stored = EntryOf(before, there);
            bool same = SentBefore(
                entry,
                tag,
                stored,
                await records.Room.LatestAsync(cancel).ConfigureAwait(false),
                found.Limits.Resistance.Nominal
            );
            return same
                ? await StandsAsync(found, before, TagNow(before, there), stored, duplicate: true, cancel).ConfigureAwait(false)
                : Refused([SentAgain.Reading]);
        }

        EntryReader reader = new(
            entry,
            tag,
            await RoomAsync(cancel).ConfigureAwait(false),
            clock.GetUtcNow(),
            found.Limits.Resistance.Nominal
        );
        IReadOnlyList<ReadingRecord> readings = reader.Read();
        List<Problem> problems =
        [
            .. Check(tag, readings),
            .. TextLimit.Check([("tag", tag), ("person", entry.Person), ("instrument", entry.Instrument), ("reason", entry.Reason)]),
        ];
        IReadOnlyList<BatchEvent> inForce = BatchEventLog.Holding(
            await records.Batches.EventsAsync(entry.BatchId, cancel).ConfigureAwait(false)
        );
        if (entry.Supersedes is null && BatchEventLog.ClosingOf(inForce) is { } closing)
        {
            problems.Add(BatchNumber.IsClosed("tag", found.Batch, closing));
        }
        else if (late is null)
        {
            int wanted = BatchNumber.Wanted(found.Batch, inForce);
            problems.AddRange(
                tag.Length > 0 && BatchNumber.Refusal(found.Batch, wanted, TagsOf(before), tag) is { } beyond ? [beyond] : []
            );
        }

        problems.AddRange(TakenTag.Problems(entry, found.Batch, tag, TagsOf(before), BatchNumber.Wanted(found.Batch, inForce)));
        problems.AddRange(late is null ? reader.Problems : reader.Problems.Where(problem => problem.Readings is not null));

        if (entry.Coil is not ("" or SpoolQuestion.Same or SpoolQuestion.New))
        {
            string allowed = $"{SpoolQuestion.Same}, {SpoolQuestion.New}, or nothing";
            problems.Add(new Problem("coil", "say whether it is the same coil or a new one", entry.Coil, allowed));
        }

        readings = Correct(entry, before, readings, problems);
        if (problems.Count > 0)
        {
            return Refused(problems);
        }

        CoilEntryOutcome? kept = await StoreAsync(found, before, readings, (tag, entry.Proposed), cancel).ConfigureAwait(false);
        return kept ?? await RecordCoilAsync(entry, cancel, late).ConfigureAwait(false); // the tag was used this moment: asked about
    }

    /// <summary>
    /// Takes the entry made last in a batch away; a correction undone puts the reading before it back in force. Both are appended, nothing
    /// is erased.
    /// </summary>
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

        if (undoId == Guid.Empty)
        {
            return Refused([NoId]);
        }

        IReadOnlyList<ReadingRecord> before = await records.Readings.OfBatchAsync(batchId, cancel).ConfigureAwait(false);
        if (before.FirstOrDefault(reading => reading.Id == undoId) is { } there)
        {
            return ReadingUndo.IsUndo(there)
                ? await StandsAsync(found, before, there.Tag, [there], duplicate: true, cancel).ConfigureAwait(false)
                : Refused([SentAgain.Reading]);
        }

        ReadingUndo undo = new(before);
        if (undo.Last.Count == 0)
        {
            return Refused([new Problem("batch", "there is nothing to undo", found.Batch.Name)]);
        }

        IReadOnlyList<ReadingRecord> undoing = undo.Make(undoId, person.Trim(), clock.GetUtcNow());
        return await StoreKnownAsync(found, before, undoing, undoing[0].Tag, cancel).ConfigureAwait(false);
    }

    private static Problem NoId => new("id", "an undo needs an id of its own, so that sent twice it undoes once", null, "a new UUID");

    /// <summary>
    /// True when an entry says what was stored under its id. Without a temperature it took the room's, and that may be another one by now.
    /// </summary>
    private static bool SentBefore(
        CoilEntry entry,
        string tag,
        IReadOnlyList<ReadingRecord> stored,
        RoomTemperature? latest,
        double expectedOhm
    )
    {
        ReadingRecord first = stored[0];
        bool roomIsOlder = latest is null || latest.TimeUtc < first.TimeUtc;
        RoomTemperature? asRead = first.TemperatureC is { } celsius ? new RoomTemperature(celsius, "", "", first.TimeUtc) : null;
        RoomTemperature? room = roomIsOlder ? RoomInForce.At(latest, first.TimeUtc) : asRead;
        IReadOnlyList<ReadingRecord> sent = new EntryReader(entry, tag, room, first.TimeUtc, expectedOhm).Read();
        string reason = entry.Supersedes is null ? "" : entry.Reason.Trim();
        bool replaces = entry.Supersedes is { } old
            ? stored.Any(reading => reading.Supersedes == old)
            : stored.All(reading => reading.Supersedes is null);
        return replaces
            && sent.Count == stored.Count
            && sent.Zip(stored)
                .All(pair =>
                    ReadingChain.SaysTheSame(pair.First with { Supersedes = pair.Second.Supersedes, Reason = reason }, pair.Second)
                );
    }

    private static string TagNow(IReadOnlyList<ReadingRecord> readings, ReadingRecord reading) =>
        ReadingChain.TagsNow(readings)[reading.Id];

    private static CoilEntryOutcome Refused(IReadOnlyList<Problem> problems) => new(problems, null, "", Duplicate: false, null);

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
    private static IReadOnlyList<ReadingRecord> Correct(
        CoilEntry entry,
        IReadOnlyList<ReadingRecord> before,
        IReadOnlyList<ReadingRecord> readings,
        List<Problem> problems
    )
    {
        if (entry.Supersedes is not { } oldId)
        {
            return readings;
        }

        if (string.IsNullOrWhiteSpace(entry.Reason) || ReadingUndo.IsReason(entry.Reason.Trim()))
        {
            problems.Add(new Problem("reason", "a correction needs a reason", null, "a few words"));
        }

        IReadOnlyList<ReadingRecord> inForce = ReadingChain.InForce(before);
        if (inForce.FirstOrDefault(reading => reading.Id == oldId) is not { } old)
        {
            bool known = before.Any(reading => reading.Id == oldId);
            problems.Add(
                new Problem(
                    "supersedes",
                    known ? "that reading has been superseded already; look at the coil again" : "there is no such reading in this batch"
                )
            );
            return readings;
        }

        if (readings.Count > 0 && readings[0].Tag != old.Tag)
        {
            problems.Add(new Problem("tag", $"a tag is corrected for the whole coil, on the page of {old.Tag}", readings[0].Tag, old.Tag));
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

    /// <summary>Stores readings of a coil that is there already.</summary>
    private async Task<CoilEntryOutcome> StoreKnownAsync(
        Found found,
        IReadOnlyList<ReadingRecord> before,
        IReadOnlyList<ReadingRecord> readings,
        string tag,
        CancellationToken cancel
    ) =>
        await StoreAsync(found, before, readings, (tag, IsNew: false), cancel).ConfigureAwait(false)
        ?? throw new InvalidOperationException("A coil that is there asks for no tag.");

    /// <returns>The coil as it stands or what is wrong; null when a tag that was to be a new coil's was used meanwhile.</returns>
    private async Task<CoilEntryOutcome?> StoreAsync(
        Found found,
        IReadOnlyList<ReadingRecord> before,
        IReadOnlyList<ReadingRecord> readings,
        (string Tag, bool IsNew) coil,
        CancellationToken cancel
    )
    {
        string tag = coil.Tag;
        int? withTag = coil.IsNew ? before.Count(reading => reading.Tag == tag) : null;
        AddReading added = await records.Readings.AddAsync(readings, cancel, withTag).ConfigureAwait(false);
        return added switch
        {
            AddReading.TagTaken => null,
            AddReading.SupersededByAnother => Refused([
                new Problem("supersedes", "somebody else has superseded that reading meanwhile; look at the coil again"),
            ]),
            AddReading.IdTaken => Refused([SentAgain.Reading]),
            AddReading.Added => await StandsAsync(found, [.. before, .. readings], tag, readings, duplicate: false, cancel)
                .ConfigureAwait(false),
            _ => await StandsAsync(
                    found,
                    await records.Readings.OfBatchAsync(found.Batch.Id, cancel).ConfigureAwait(false),
                    tag,
                    readings,
                    duplicate: true,
                    cancel
                )
                .ConfigureAwait(false),
        };
    }

    private async Task<CoilEntryOutcome> StandsAsync(
        Found found,
        IReadOnlyList<ReadingRecord> all,
        string tag,
        IReadOnlyList<ReadingRecord> entered,
        bool duplicate,
        CancellationToken cancel,
        bool stored = true
    )
    {
        IReadOnlyList<BatchEvent> events = await records.Batches.EventsAsync(found.Batch.Id, cancel).ConfigureAwait(false);
        BatchDossier dossier = stored
            ? await dossiers.KeepAsync(found.Batch, all, events, cancel).ConfigureAwait(false)
            : await dossiers.MakeAsync(found.Batch, all, events, cancel).ConfigureAwait(false);
        string echo = entered.All(reading => reading.Withdraws) ? $"{tag} undone" : EntryReader.Echo(entered);
        return new CoilEntryOutcome([], dossier.Coil(tag), echo, duplicate, dossier.NextTag, dossier.CountWords)
        {
            Signals = dossier.SignalsAt(tag),
        };
    }
}
