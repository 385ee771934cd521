using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Polarity;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Batches;

/// <summary>What a person is told of a released revision before anything is wound to it. It may be meant so: nothing is refused.</summary>
public static class BeforeWinding
{
    /// <summary>Signs of coils that work against each other, and targets that leave out the recipe's own forecast.</summary>
    /// <param name="revision">The revision.</param>
    /// <param name="recipe">Its recipe.</param>
    /// <param name="parts">What the shop knows of its parts.</param>
    public static IReadOnlyList<Problem> Warnings(RevisionRecord revision, Recipe recipe, KnownParts parts) =>
        [
            .. RecipePhase.Of(recipe).Warnings,
            .. ForecastRule.Try(() => CoilPlan.Of(revision, recipe.Coils[0].Name, parts).Forecast).Value is { } forecast
                ? RecipeTargets.LeavingOutForecast(recipe, forecast).Select(warning => new Problem(warning.Field, warning.Message))
                : [],
        ];
}
