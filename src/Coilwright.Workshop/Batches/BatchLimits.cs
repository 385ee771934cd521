using System.Collections.Concurrent;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Batches;

/// <summary>What the coils of a batch are judged against: the one answer for verdict, pages and charts.</summary>
internal static class BatchLimits
{
    /// <summary>Limits of released revisions; those never change, and their forecast takes a while.</summary>
    private static readonly ConcurrentDictionary<(Guid RecipeId, int Number, string Json, string Coil), VerdictLimits> s_known = new();

    public static VerdictLimits Of(RevisionRecord revision, string coilName) =>
        s_known.GetOrAdd((revision.RecipeId, revision.Number, revision.Json, coilName), _ => Make(revision, coilName));

    private static VerdictLimits Make(RevisionRecord revision, string coilName)
    {
        Recipe recipe = ReleasedRecipe.Of(revision);
        return VerdictLimits.ForCoil(recipe, ReleasedRecipe.PlaceOf(recipe, revision, coilName));
    }
}
