using Coilwright.Workshop.Boards;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Hosting.Access;

/// <summary>Recipes that are kept from whoever is there.</summary>
/// <param name="Recipes">Those that are secret.</param>
/// <param name="Batches">Their batches, where the page lists several.</param>
internal sealed record HiddenRecipes(IReadOnlySet<Guid> Recipes, IReadOnlySet<Guid> Batches)
{
    /// <summary>What the board may say of a line: of a secret recipe no cause and no sum.</summary>
    public static string WordsOf(HttpContext? context, TodayLine line)
    {
        if (context?.Features.Get<HiddenRecipes>() is not { } hidden)
        {
            return line.Words;
        }

        bool isKept = line.Brief.Length > 0 || (line.Do.BatchId is { } batch && hidden.Batches.Contains(batch));
        return isKept ? line.Brief : line.Words;
    }

    /// <summary>True when any recipe is kept from whoever is there: sums over several batches then say too much.</summary>
    public static bool Any(HttpContext? context) => context?.Features.Get<HiddenRecipes>() is not null;

    /// <summary>True when the recipe is kept from whoever is there.</summary>
    public static bool IsHidden(HttpContext? context, Guid recipe) =>
        context?.Features.Get<HiddenRecipes>()?.Recipes.Contains(recipe) ?? false;
}
