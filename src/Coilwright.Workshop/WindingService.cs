using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop;

/// <summary>
/// What happens at the winder: batches are begun, coils are read and judged, a slip is undone. Safe for several callers at once.
/// </summary>
/// <param name="records">The shop's records.</param>
/// <param name="clock">The shop's clock.</param>
/// <param name="dossiers">Its dossiers, shared with what else asks for them.</param>
public sealed partial class WindingService(IShopRecords records, TimeProvider clock, BatchDossiers dossiers)
{
    /// <summary>The winding room of a shop with dossiers of its own.</summary>
    public WindingService(IShopRecords records, TimeProvider clock)
        : this(records, clock, new BatchDossiers(records, clock)) { }

    /// <summary>The dossiers that this service judges by.</summary>
    public BatchDossiers Dossiers => dossiers;

    internal static readonly Limits Room = new(QuantityKind.Temperature, -10, 60, "°C", "23.5 °C")
    {
        Outside = "this is no room to wind in",
    };

    /// <summary>Begins a batch on a released revision; sent twice it is begun once.</summary>
    /// <returns>Every problem and nothing stored, or none.</returns>
    public async Task<IReadOnlyList<Problem>> BeginBatchAsync(BatchRecord batch, CancellationToken cancel)
    {
        RevisionRecord? revision = await records
            .Recipes.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel)
            .ConfigureAwait(false);
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
        IReadOnlyList<BatchLimitsRecord> limits = await dossiers.Limits.BeginAsync(tidy, revision!, cancel).ConfigureAwait(false);
        return await records.Batches.AddAsync(tidy, limits, cancel).ConfigureAwait(false) ? [] : [BatchRules.NameTaken(batch.Name, null)];
    }

    /// <summary>A batch with all its coils; null when there is none of this id.</summary>
    public async Task<BatchStatus?> StatusAsync(Guid batchId, CancellationToken cancel)
    {
        if (await FindAsync(batchId, cancel).ConfigureAwait(false) is not { } found)
        {
            return null;
        }

        BatchDossier dossier = await dossiers.OfAsync(found.Batch, cancel).ConfigureAwait(false);
        return new BatchStatus(
            found.Batch,
            found.Revision.RecipeName,
            found.Revision.Letter,
            dossier.Coils,
            dossier.NextTag,
            await RoomAsync(cancel).ConfigureAwait(false)
        )
        {
            Limits = dossier.RequireLimits(),
            Questions = dossier.Questions,
            Remarks = dossier.Remarks,
            UndoWords = dossier.UndoWords,
            Wanted = dossier.Wanted,
            Closing = dossier.History.Closing,
        };
    }

    /// <summary>A batch by its stored numbers alone, to be shown whatever its recipe is; null when there is none of this id.</summary>
    public async Task<StoredBatch?> StoredAsync(Guid batchId, CancellationToken cancel)
    {
        if (
            await records.Batches.FindAsync(batchId, cancel).ConfigureAwait(false) is not { } batch
            || await records.Recipes.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel).ConfigureAwait(false)
                is not { } revision
        )
        {
            return null;
        }

        IReadOnlyList<ReadingRecord> readings = await records.Readings.OfBatchAsync(batchId, cancel).ConfigureAwait(false);
        IReadOnlyDictionary<Guid, string> tags = ReadingChain.TagsNow(readings);
        IReadOnlyList<ReadingRecord> inForce = ReadingChain.InForce(readings);
        return new StoredBatch(batch, revision, [.. inForce.Select(reading => new StoredReading(tags[reading.Id], reading))]);
    }

    /// <summary>Every batch with all its coils, or why it cannot be shown.</summary>
    public async Task<IReadOnlyList<RecordStatus<BatchStatus>>> StatusesAsync(CancellationToken cancel) =>
        await StatusesAsync(await records.Batches.AllAsync(cancel).ConfigureAwait(false), cancel).ConfigureAwait(false);

    /// <summary>Some batches with all their coils, or why they cannot be shown.</summary>
    public async Task<IReadOnlyList<RecordStatus<BatchStatus>>> StatusesAsync(IEnumerable<BatchRecord> batches, CancellationToken cancel)
    {
        List<RecordStatus<BatchStatus>> standings = [];
        foreach (BatchRecord batch in batches)
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

        await records.Room.AddAsync(new RoomTemperature(entered.Si, typed, person.Trim(), clock.GetUtcNow()), cancel).ConfigureAwait(false);
        return [];
    }

    private Task<RoomTemperature?> RoomAsync(CancellationToken cancel) => RoomInForce.AtAsync(records, clock.GetUtcNow(), cancel);

    private sealed record Found(BatchRecord Batch, RevisionRecord Revision, VerdictLimits Limits);

    private async Task<Found?> FindAsync(Guid batchId, CancellationToken cancel)
    {
        if (await records.Batches.FindAsync(batchId, cancel).ConfigureAwait(false) is not { } batch)
        {
            return null;
        }

        RevisionRecord revision = await records
            .Recipes.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel)
            .ConfigureAwait(false)
            ?? throw new InvalidOperationException($"Batch {batch.Id} stands on a revision that is not there.");
        return new Found(batch, revision, await dossiers.Limits.OfAsync(batch, [], cancel).ConfigureAwait(false));
    }

    /// <summary>Tags of the coils that have a reading in force, in order of first entry.</summary>
    private static string[] TagsOf(IReadOnlyList<ReadingRecord> readings)
    {
        HashSet<string> there = [.. ReadingChain.InForce(readings).Select(reading => reading.Tag)];
        return [.. readings.Select(reading => reading.Tag).Distinct(StringComparer.Ordinal).Where(there.Contains)];
    }
}
