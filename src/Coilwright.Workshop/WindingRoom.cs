using System.Collections.Concurrent;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop;

/// <summary>What happens at the winder: batches are begun, coils are read and judged, a slip is undone. Safe for several callers at once.</summary>
public sealed partial class WindingRoom(IShopRecords records, TimeProvider clock)
{
    private static readonly Limits s_room = new(QuantityKind.Temperature, -10, 60, "°C", "23.5 °C") { Outside = "this is no room to wind in" };

    /// <summary>Coils as judged last, with what of the records that was; judged anew when those have grown.</summary>
    private readonly ConcurrentDictionary<Guid, ((int Readings, Guid? Last, int Events) State, IReadOnlyList<CoilStanding> Coils)>
        _judged = new();

    /// <summary>Begins a batch on a released revision; sent twice it is begun once.</summary>
    /// <returns>Every problem and nothing stored, or none.</returns>
    public async Task<IReadOnlyList<Problem>> BeginBatchAsync(BatchRecord batch, CancellationToken cancel)
    {
        RevisionRecord? revision = await records.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel).ConfigureAwait(false);
        IReadOnlyList<Problem> problems = BatchRules.Check(batch, revision);
        if (problems.Count == 0)
        {
            await records.AddBatchAsync(batch with { Name = batch.Name.Trim(), TagPrefix = batch.TagPrefix.Trim() }, cancel).ConfigureAwait(false);
        }

        return problems;
    }

    /// <summary>A batch with all its coils; null when there is none of this id.</summary>
    public async Task<BatchStanding?> StandingAsync(Guid batchId, CancellationToken cancel)
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
            _judged[batchId] = judged = (state, coils.Judge(found.Limits));
        }

        return new BatchStanding(
            found.Batch, found.Revision.RecipeName, found.Revision.Letter, judged.Coils, NextTag(found.Batch, readings),
            await RoomAsync(cancel).ConfigureAwait(false))
        {
            Limits = found.Limits.Resistance,
            Questions = coils.Questions,
        };
    }

    /// <summary>Enters the room's temperature, −10 to 60 °C. It holds for two hours.</summary>
    public async Task<IReadOnlyList<Problem>> SetRoomTemperatureAsync(string typed, string person, CancellationToken cancel)
    {
        if (!QuantityText.TryParse(typed, QuantityKind.Temperature, unitRequired: false, out Entered entered, out string why))
        {
            return [new Problem("room", why, null, s_room.Range)];
        }

        if (!s_room.Allows(entered.Si))
        {
            return [new Problem("room", s_room.Outside, QuantityText.Echo(entered, QuantityKind.Temperature), s_room.Range)];
        }

        await records.AddRoomTemperatureAsync(new RoomTemperature(entered.Si, typed, person.Trim(), clock.GetUtcNow()), cancel).ConfigureAwait(false);
        return [];
    }

    private Task<RoomTemperature?> RoomAsync(CancellationToken cancel) => RoomInForce.AtAsync(records, clock.GetUtcNow(), cancel);

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

    private static string? NextTag(BatchRecord batch, IReadOnlyList<ReadingRecord> readings) =>
        BatchTags.Next(batch, [.. ReadingChain.InForce(readings).Select(reading => reading.Tag)]);
}
