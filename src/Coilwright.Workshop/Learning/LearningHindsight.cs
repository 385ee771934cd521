using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Learning;

/// <summary>A coil as it was read once.</summary>
/// <param name="Batch">Its batch.</param>
/// <param name="OhmAt20C">Its DC resistance at 20 °C, Ω.</param>
internal sealed record CoilRead(BatchRecord Batch, double OhmAt20C);

/// <summary>Coils of batches without a target of their own, held against the limits that a set would have given.</summary>
/// <param name="Coils">How many there are.</param>
/// <param name="Otherwise">How many of them would have lain on the other side of a limit.</param>
public sealed record LearningHindsight(int Coils, int Otherwise)
{
    /// <summary>Counts them; nothing of what is kept is changed.</summary>
    /// <param name="records">The shop's records.</param>
    /// <param name="coils">Its coils as they were read.</param>
    /// <param name="learnt">What the shop would know of its parts on a spool.</param>
    /// <param name="cancel">Gives up.</param>
    internal static async Task<LearningHindsight> CountAsync(
        IShopRecords records,
        IReadOnlyList<CoilRead> coils,
        Func<(string Label, string Lot), KnownParts> learnt,
        CancellationToken cancel
    )
    {
        int all = 0,
            otherwise = 0;
        foreach (IGrouping<BatchRecord, CoilRead> batch in coils.GroupBy(coil => coil.Batch))
        {
            if (await KeptAsync(records, batch.Key, cancel).ConfigureAwait(false) is not { IsTarget: false } kept)
            {
                continue;
            }

            (string Label, string Lot) spool = await LearntParts.SpoolAsync(records, batch.Key.Spool, cancel).ConfigureAwait(false);
            if (
                await records.Recipes.FindRevisionAsync(batch.Key.RecipeId, batch.Key.RevisionNumber, cancel).ConfigureAwait(false) is
                { } revision
            )
            {
                Recipe recipe = learnt(spool).Fill(ReleasedRecipe.Of(revision));
                Band now = VerdictLimits.ForCoil(recipe, ReleasedRecipe.PlaceOf(recipe, revision, batch.Key.CoilName)).Resistance;
                all += batch.Count();
                otherwise += batch.Count(coil => IsIn(kept, coil.OhmAt20C) != IsIn(now, coil.OhmAt20C));
            }
        }

        return new LearningHindsight(all, otherwise);
    }

    private static bool IsIn(Band band, double ohm) => ohm >= band.Low && ohm <= band.High;

    /// <summary>The limits kept with a batch; null where none are, or they cannot be read.</summary>
    private static async Task<Band?> KeptAsync(IShopRecords records, BatchRecord batch, CancellationToken cancel)
    {
        IReadOnlyList<BatchLimitsRecord> rows = await records.Batches.LimitsAsync(batch.Id, cancel).ConfigureAwait(false);
        return rows.Count == 0
            ? null
            : (await RecordStatus.ReadAsync("Batch " + batch.Name, () => Task.FromResult(KeptLimits.Read(rows)!)).ConfigureAwait(false))
                .Value
                ?.Resistance;
    }
}
