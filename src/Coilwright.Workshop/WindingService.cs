using System.Collections.Concurrent;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop;

/// <summary>
/// What happens at the winder: batches are begun, coils are read and judged, a slip is undone. Safe for several callers at once.
/// </summary>
public sealed partial class WindingService(IShopRecords records, TimeProvider clock)
{
    internal static readonly Limits Room = new(QuantityKind.Temperature, -10, 60, "°C", "23.5 °C")
    {
        Outside = "this is no room to wind in",
    };

    /// <summary>Coils as judged last, with what of the records that was; judged anew when those have grown.</summary>
    private readonly ConcurrentDictionary<Guid, Judged> _judged = new();

    /// <summary>Begins a batch on a released revision; sent twice it is begun once.</summary>
    /// <returns>Every problem and nothing stored, or none.</returns>
    public async Task<IReadOnlyList<Problem>> BeginBatchAsync(BatchRecord batch, CancellationToken cancel)
    {
        RevisionRecord? revision = await records.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel).ConfigureAwait(false);
        KnownNames known = await KnownNames.ReadAsync(records, cancel).ConfigureAwait(false);
        IReadOnlyList<Problem> problems = BatchRules.Check(batch, revision, known);
        if (problems.Count > 0)
        {
            return problems;
        }

        BatchRecord tidy = batch with
        {
            Name = batch.Name.Trim(),
            TagPrefix = batch.TagPrefix.Trim(),
            Spool = known.SpoolOf(batch.Spool),
            Machine = known.WinderOf(batch.Machine),
        };
        return await records.AddBatchAsync(tidy, cancel).ConfigureAwait(false) ? [] : [BatchRules.NameTaken(batch.Name, null)];
    }

    /// <summary>A batch with all its coils; null when there is none of this id.</summary>
    public async Task<BatchStatus?> StatusAsync(Guid batchId, CancellationToken cancel)
    {
        if (await FindAsync(batchId, cancel).ConfigureAwait(false) is not { } found)
        {
            return null;
        }

        IReadOnlyList<ReadingRecord> readings = await records.ReadingsAsync(batchId, cancel).ConfigureAwait(false);
        IReadOnlyList<BatchEventRecord> events = await records.BatchEventsAsync(batchId, cancel).ConfigureAwait(false);
        BatchCoils coils = new(found.Batch, readings, events);
        (int, Guid?, int) state = (readings.Count, readings.Count == 0 ? null : readings[^1].Id, events.Count); // records only grow
        if (!_judged.TryGetValue(batchId, out var judged) || judged.State != state)
        {
            _judged[batchId] = judged = new(state, coils.Judge(found.Limits), coils.Remarks(found.Limits), new ReadingUndo(readings).Words);
        }

        return new BatchStatus(
            found.Batch,
            found.Revision.RecipeName,
            found.Revision.Letter,
            judged.Coils,
            NextTag(found.Batch, readings, events),
            await RoomAsync(cancel).ConfigureAwait(false)
        )
        {
            Limits = found.Limits.Resistance,
            Questions = coils.Questions,
            Remarks = judged.Remarks,
            UndoWords = judged.Undo,
            Wanted = BatchNumber.Wanted(found.Batch, BatchEventLog.Holding(events)),
        };
    }

    /// <summary>A batch by its stored numbers alone, to be shown whatever its recipe is; null when there is none of this id.</summary>
    public async Task<StoredBatch?> StoredAsync(Guid batchId, CancellationToken cancel)
    {
        if (
            await records.FindBatchAsync(batchId, cancel).ConfigureAwait(false) is not { } batch
            || await records.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel).ConfigureAwait(false) is not { } revision
        )
        {
            return null;
        }

        IReadOnlyList<ReadingRecord> readings = await records.ReadingsAsync(batchId, cancel).ConfigureAwait(false);
        IReadOnlyDictionary<Guid, string> tags = ReadingChain.TagsNow(readings);
        IReadOnlyList<ReadingRecord> inForce = ReadingChain.InForce(readings);
        return new StoredBatch(batch, revision, [.. inForce.Select(reading => new StoredReading(tags[reading.Id], reading))]);
    }

    /// <summary>Every batch with all its coils, or why it cannot be shown.</summary>
    public async Task<IReadOnlyList<RecordStatus<BatchStatus>>> StatusesAsync(CancellationToken cancel)
    {
        List<RecordStatus<BatchStatus>> standings = [];
        foreach (BatchRecord batch in await records.BatchesAsync(cancel).ConfigureAwait(false))
        {
            standings.Add(
                await RecordStatus
                    .ReadAsync(
                        "Batch " + batch.Name,
                        async () =>
                            await StatusAsync(batch.Id, cancel).ConfigureAwait(false)
                            ?? throw new InvalidOperationException("a batch that was listed is gone"),
                        batch.Id
                    )
                    .ConfigureAwait(false)
            );
        }

        return standings;
    }

    /// <summary>Enters the room's temperature, −10 to 60 °C. It holds for two hours.</summary>
    public async Task<IReadOnlyList<Problem>> SetRoomTemperatureAsync(string typed, string person, CancellationToken cancel)
    {
        if (!QuantityParser.TryParse(typed, Room, unitRequired: false, out Entered entered, out string why))
        {
            return [new Problem("room", why, null, Room.Range)];
        }

        if (!Room.Allows(entered.Si))
        {
            return [new Problem("room", Room.Outside, QuantityParser.Echo(entered, QuantityKind.Temperature), Room.Range)];
        }

        await records
            .AddRoomTemperatureAsync(new RoomTemperature(entered.Si, typed, person.Trim(), clock.GetUtcNow()), cancel)
            .ConfigureAwait(false);
        return [];
    }

    private Task<RoomTemperature?> RoomAsync(CancellationToken cancel) => RoomInForce.AtAsync(records, clock.GetUtcNow(), cancel);

    private sealed record Judged(
        (int Readings, Guid? Last, int Events) State,
        IReadOnlyList<CoilStatus> Coils,
        IReadOnlyList<string> Remarks,
        string Undo
    );

    private sealed record Found(BatchRecord Batch, RevisionRecord Revision, VerdictLimits Limits);

    private async Task<Found?> FindAsync(Guid batchId, CancellationToken cancel)
    {
        if (await records.FindBatchAsync(batchId, cancel).ConfigureAwait(false) is not { } batch)
        {
            return null;
        }

        RevisionRecord revision = await records.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel).ConfigureAwait(false)
            ?? throw new InvalidOperationException($"Batch {batch.Id} stands on a revision that is not there.");
        return new Found(batch, revision, BatchLimits.Of(revision, batch.CoilName));
    }

    private static string? NextTag(BatchRecord batch, IReadOnlyList<ReadingRecord> readings, IReadOnlyList<BatchEventRecord> events)
    {
        int wanted = BatchNumber.Wanted(batch, BatchEventLog.Holding(events));
        string[] tags = TagsOf(readings);
        return tags.Length - BatchNumber.Beyond(batch, wanted, tags).Count >= wanted
            ? null
            : BatchTags.Next(batch, [.. ReadingChain.InForce(readings).Select(reading => reading.Tag)], wanted);
    }

    private static string CountWords(BatchRecord batch, IReadOnlyList<ReadingRecord> readings, IReadOnlyList<BatchEventRecord> events)
    {
        int wanted = BatchNumber.Wanted(batch, BatchEventLog.Holding(events));
        string[] tags = TagsOf(readings);
        return BatchNumber.Words(tags.Length, BatchNumber.Beyond(batch, wanted, tags).Count, wanted);
    }

    /// <summary>Tags of the coils that have a reading in force, in order of first entry.</summary>
    private static string[] TagsOf(IReadOnlyList<ReadingRecord> readings)
    {
        HashSet<string> there = [.. ReadingChain.InForce(readings).Select(reading => reading.Tag)];
        return [.. readings.Select(reading => reading.Tag).Distinct(StringComparer.Ordinal).Where(there.Contains)];
    }
}
