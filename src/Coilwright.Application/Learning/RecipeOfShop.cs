using Coilwright.Workshop;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Learning;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Stock;

namespace Coilwright.Application.Learning;

/// <summary>A person forecasts a recipe as this shop would wind it now: with what it knows of its parts and has learnt.</summary>
public sealed class RecipeOfShop(IShopRecords records, TimeProvider clock)
{
    /// <summary>The recipe with what the shop knows.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="spool">Label of the spool that it is wound from; empty when none is named.</param>
    /// <param name="withLearning">False leaves out what the readings taught.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<ReadOutcome<Recipe>> FillAsync(Recipe recipe, string spool, bool withLearning, CancellationToken cancel)
    {
        IReadOnlyList<SpoolRecord> spools = await records.Stock.SpoolsAsync(cancel).ConfigureAwait(false);
        if (spool.Length > 0 && !spools.Any(one => NameKey.Same(one.Label, spool)))
        {
            string labels = string.Join(", ", spools.Select(one => one.Label).Take(20));
            return new ReadOutcome<Recipe>(
                null,
                [new Problem("--spool", "this shop has no such spool", spool, labels.Length > 0 ? labels : "no spool is on record")]
            );
        }

        KnownParts known = await LearntParts.AtAsync(records, clock.GetUtcNow(), spool.Trim(), cancel).ConfigureAwait(false);
        return new ReadOutcome<Recipe>((withLearning ? known : known.With(learning: null)).Fill(recipe), []);
    }
}
