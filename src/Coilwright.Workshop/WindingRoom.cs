using System.Collections.Concurrent;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop;

/// <summary>What happens at the winder: batches are begun, coils are read and judged, a slip is undone. Safe for several callers at once.</summary>
public sealed partial class WindingRoom(IShopRecords records, TimeProvider clock)
{
    /// <summary>How long a room temperature holds.</summary>
    public static readonly TimeSpan RoomHolds = TimeSpan.FromHours(2);

    private static readonly Limits s_room = new(QuantityKind.Temperature, -10, 60, "°C", "23.5 °C") { Outside = "this is no room to wind in" };

    /// <summary>Limits of released revisions; those never change.</summary>
    private readonly ConcurrentDictionary<(Guid RecipeId, int Number, string Coil), VerdictLimits> _limits = new();

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
        IReadOnlyList<CoilStanding> coils = [.. CoilsOf(found.Limits, readings)];
        return new BatchStanding(found.Batch, found.Revision.RecipeName, found.Revision.Letter, coils, NextTag(found.Batch, readings), await RoomAsync(cancel).ConfigureAwait(false));
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

    private async Task<RoomTemperature?> RoomAsync(CancellationToken cancel)
    {
        RoomTemperature? latest = await records.LatestRoomTemperatureAsync(cancel).ConfigureAwait(false);
        return latest is not null && clock.GetUtcNow() - latest.TimeUtc <= RoomHolds ? latest : null;
    }

    private sealed record Found(BatchRecord Batch, RevisionRecord Revision, VerdictLimits Limits);

    private async Task<Found?> FindAsync(Guid batchId, CancellationToken cancel)
    {
        if (await records.FindBatchAsync(batchId, cancel).ConfigureAwait(false) is not { } batch)
        {
            return null;
        }

        RevisionRecord revision = await records.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel).ConfigureAwait(false)
            ?? throw new InvalidOperationException($"Batch {batch.Id} stands on a revision that is not there.");
        return new Found(batch, revision, _limits.GetOrAdd((batch.RecipeId, batch.RevisionNumber, batch.CoilName), _ => LimitsOf(batch, revision)));
    }

    private static VerdictLimits LimitsOf(BatchRecord batch, RevisionRecord revision)
    {
        Recipe recipe = RecipeReader.Read(revision.Json).Value ?? throw new InvalidOperationException($"Revision {revision.Letter} of {revision.RecipeName} was released and cannot be read any more.");
        return VerdictLimits.ForCoil(recipe, recipe.Coils.ToList().FindIndex(coil => coil.Name == batch.CoilName));
    }

    private static IEnumerable<CoilStanding> CoilsOf(VerdictLimits limits, IReadOnlyList<ReadingRecord> readings, string? onlyTag = null)
    {
        HashSet<Guid> inForce = [.. ReadingChain.InForce(readings).Select(reading => reading.Id)];
        IEnumerable<ReadingRecord> wanted = onlyTag is null ? readings : readings.Where(reading => reading.Tag == onlyTag);
        return wanted.GroupBy(reading => reading.Tag, StringComparer.Ordinal).Where(coil => coil.Any(reading => inForce.Contains(reading.Id))).Select(coil =>
        {
            ReadingRecord[] valid = [.. coil.Where(reading => inForce.Contains(reading.Id))];
            return new CoilStanding(coil.Key, valid, [.. coil.Where(reading => !inForce.Contains(reading.Id) && !reading.Withdraws)], VerdictRule.Judge(limits, valid), valid.Max(reading => reading.TimeUtc));
        });
    }

    private static string? NextTag(BatchRecord batch, IReadOnlyList<ReadingRecord> readings) =>
        BatchTags.Next(batch, [.. ReadingChain.InForce(readings).Select(reading => reading.Tag)]);
}
