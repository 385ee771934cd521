using System.Text.Json.Nodes;
using Coilwright.Application.Forecasts;
using Coilwright.Web.Views.Forecasts;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Web.Views.Recipes;

/// <summary>Gathers what the page of a recipe shows: the forecast as the form stands, beside the revision before it.</summary>
public sealed class ShowRecipe(ForecastRecipe forecast, SavedForecasts saved)
{
    /// <summary>The five answers and the view in sight.</summary>
    /// <param name="on">The revision that the form was filled in on.</param>
    /// <param name="revisions">All revisions of the recipe.</param>
    /// <param name="parts">What the shop knows of its parts.</param>
    /// <param name="document">The recipe and the load as the form has them.</param>
    /// <param name="shown">The view in sight.</param>
    /// <param name="settled">False while a field moves: what takes longer than a slider may wait is left out.</param>
    public ForecastViewModel View(
        RevisionRecord on,
        IReadOnlyList<RevisionRecord> revisions,
        KnownParts parts,
        (string Recipe, string Load) document,
        RecipeView shown,
        bool settled
    )
    {
        bool changed = !JsonNode.DeepEquals(JsonNode.Parse(document.Recipe), JsonNode.Parse(on.Json));
        RevisionRecord? before = changed ? on : revisions.FirstOrDefault(one => one.Number == on.Number - 1);
        RecipeForecast? behind = before is null ? null : saved.Of(before, document.Load, parts);
        return ForecastView.Of(
            forecast.Forecast(document.Recipe, document.Load, parts, DetailOf(shown, settled)),
            shown,
            changed && behind is not null ? (on.Letter, behind) : null,
            behind is null ? null : ($"revision {before!.Letter}", behind)
        );
    }

    private static ForecastDetail DetailOf(RecipeView shown, bool settled)
    {
        if (shown == RecipeView.Sound)
        {
            return settled ? ForecastDetail.Band : ForecastDetail.None;
        }

        return shown == RecipeView.Strings || shown == RecipeView.Numbers ? ForecastDetail.Pictures : ForecastDetail.None;
    }
}
