using Coilwright.Analysis.Forecasts;
using Coilwright.Physics.Circuit;
using Coilwright.Web.Views;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Solving;

namespace Coilwright.Web.Forecasts;

/// <summary>One call from a recipe document to what small changes of it do; slower than the forecast, so asked after it.</summary>
internal static class SensitivityService
{
    /// <summary>Changes one thing at a time, with the engine that the forecast beside it is shown with.</summary>
    /// <param name="recipeJson">A recipe document.</param>
    /// <param name="loadJson">A load document.</param>
    /// <param name="limits">What the shop knows of its bobbins.</param>
    /// <param name="cancel">Stops it when nobody waits any longer.</param>
    public static SensitivityViewModel Of(string recipeJson, string loadJson, FillLimits limits, CancellationToken cancel)
    {
        ReadOutcome<Recipe> recipe = RecipeReader.Read(recipeJson);
        ReadOutcome<LoadCircuit> load = LoadReader.Read(loadJson);
        Problem[] problems = [.. recipe.Problems, .. load.Problems.Select(problem => problem with { Field = "load." + problem.Field })];
        return problems.Length > 0 || recipe.Value is null
            ? new SensitivityViewModel([], problems)
            : new SensitivityViewModel(RecipeSensitivity.Of(recipe.Value, load.Value, limits, new ForecastOptions(), cancel), []);
    }
}
