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
        Recipe recipe = RecipeReader.Read(revision.Json).Value
            ?? throw new InvalidOperationException($"Revision {revision.Letter} of {revision.RecipeName} was released and cannot be read any more.");
        return VerdictLimits.ForCoil(recipe, recipe.Coils.ToList().FindIndex(coil => coil.Name == coilName));
    }
}
