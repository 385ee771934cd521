using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Solving;

namespace Coilwright.Application.Forecasts;

/// <summary>A person asks what a pickup will measure, and what small changes of it do.</summary>
public sealed class ForecastRecipe
{
    /// <summary>Enough for a band that is smooth at its peak.</summary>
    private const int BandPoints = 120;

    private static readonly ForecastOptions s_onPage = new() { CurvePoints = 240 };

    /// <summary>Forecasts a recipe; what its targets leave out stands among the warnings.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="load">What hangs on the pickup, or null for nothing.</param>
    /// <param name="options">Engine, frequencies and the like.</param>
    /// <param name="cancel">Stops it.</param>
    public Prediction Forecast(Recipe recipe, LoadCircuit? load, ForecastOptions options, CancellationToken cancel) =>
        Warned(recipe, Forecaster.Predict(RecipeModelBuilder.ToModel(recipe), load, options, cancel));

    /// <summary>Forecasts a recipe document on a load document, as pages and programs ask; problems of both are told together.</summary>
    /// <param name="recipeJson">A recipe document.</param>
    /// <param name="loadJson">A load document, or null for none.</param>
    /// <param name="parts">What the shop knows of its parts.</param>
    /// <param name="detail">What is drawn beside the numbers.</param>
    public RecipeForecast Forecast(string recipeJson, string? loadJson, KnownParts parts, ForecastDetail detail = ForecastDetail.Pictures)
    {
        (Recipe? recipe, LoadCircuit? load, IReadOnlyList<Problem> problems) = Read(recipeJson, loadJson);
        if (recipe is null)
        {
            return new RecipeForecast { Problems = problems };
        }

        PickupModel model = RecipeModelBuilder.ToModel(parts.Fill(recipe));
        ForecastOptions options = s_onPage with
        {
            Pictures = detail.HasFlag(ForecastDetail.Pictures),
            BandPoints = detail.HasFlag(ForecastDetail.Band) ? BandPoints : 0,
        };
        ReadOutcome<Prediction> made = ForecastRule.Try(() => Forecaster.Predict(model, load, options));
        return made.Value is { } forecast
            ? new RecipeForecast
            {
                Engine = s_onPage.Engine.Name,
                Model = model,
                Prediction = Warned(recipe, forecast),
            }
            : new RecipeForecast { Problems = made.Problems };
    }

    /// <summary>Changes one thing at a time.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="load">What hangs on the pickup, or null for nothing.</param>
    /// <param name="options">Those of the forecast that it stands beside.</param>
    /// <param name="cancel">Stops it.</param>
    public IReadOnlyList<SensitivityLine> Changes(Recipe recipe, LoadCircuit? load, ForecastOptions options, CancellationToken cancel) =>
        RecipeSensitivity.Of(recipe, load, null, options, cancel);

    /// <summary>As above, of documents, with the engine that the forecast beside it is shown with.</summary>
    /// <param name="recipeJson">A recipe document.</param>
    /// <param name="loadJson">A load document.</param>
    /// <param name="parts">What the shop knows of its parts.</param>
    /// <param name="cancel">Stops it when nobody waits any longer.</param>
    public ReadOutcome<IReadOnlyList<SensitivityLine>> Changes(
        string recipeJson,
        string loadJson,
        KnownParts parts,
        CancellationToken cancel
    )
    {
        (Recipe? recipe, LoadCircuit? load, IReadOnlyList<Problem> problems) = Read(recipeJson, loadJson);
        return recipe is null
            ? new ReadOutcome<IReadOnlyList<SensitivityLine>>(null, problems)
            : new ReadOutcome<IReadOnlyList<SensitivityLine>>(RecipeSensitivity.Of(recipe, load, parts, new ForecastOptions(), cancel), []);
    }

    private static (Recipe? Recipe, LoadCircuit? Load, IReadOnlyList<Problem> Problems) Read(string recipeJson, string? loadJson)
    {
        ReadOutcome<Recipe> recipe = RecipeReader.Read(recipeJson);
        ReadOutcome<LoadCircuit>? load = loadJson is null ? null : LoadReader.Read(loadJson);
        Problem[] problems =
        [
            .. recipe.Problems,
            .. (load?.Problems ?? []).Select(problem => problem with { Field = "load." + problem.Field }),
        ];
        return (problems.Length > 0 ? null : recipe.Value, load?.Value, problems);
    }

    private static Prediction Warned(Recipe recipe, Prediction forecast) =>
        forecast with
        {
            Warnings = [.. forecast.Warnings, .. RecipeTargets.LeavingOutForecast(recipe, forecast)],
        };
}
