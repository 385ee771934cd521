using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Figures;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Web.Views;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Web.Forecasts;

/// <summary>One call from a recipe document to everything the forecast panel shows.</summary>
internal static class ForecastService
{
    private static readonly ForecastOptions s_options = new() { CurvePoints = 240, Pictures = true };

    /// <summary>Forecasts a recipe on a load; problems of both are listed together.</summary>
    /// <param name="recipeJson">A recipe document.</param>
    /// <param name="loadJson">A load document, or null for none.</param>
    /// <param name="limits">What the shop knows of its bobbins.</param>
    public static ForecastViewModel Forecast(string recipeJson, string? loadJson, FillLimits limits)
    {
        ReadOutcome<Recipe> recipe = RecipeReader.Read(recipeJson);
        ReadOutcome<LoadCircuit>? load = loadJson is null ? null : LoadReader.Read(loadJson);
        List<Problem> problems =
        [
            .. recipe.Problems,
            .. (load?.Problems ?? []).Select(problem => problem with { Field = "load." + problem.Field }),
        ];
        if (problems.Count > 0 || recipe.Value is null)
        {
            return new ForecastViewModel { Problems = problems };
        }

        PickupModel model = RecipeModelBuilder.ToModel(limits.Fill(recipe.Value));
        ReadOutcome<Prediction> made = ForecastRule.Try(() => Forecaster.Predict(model, load?.Value, s_options));
        if (made.Value is not { } forecast)
        {
            return new ForecastViewModel { Problems = made.Problems };
        }

        Prediction prediction = forecast with
        {
            Warnings = [.. forecast.Warnings, .. RecipeTargets.LeavingOutForecast(recipe.Value, forecast)],
        };

        return new ForecastViewModel
        {
            Engine = s_options.Engine.Name,
            Prediction = prediction,
            Response = ResponseOf(prediction),
            Plots = StringPlots.Of(model, prediction),
            Drawings = DrawingsOf(model, prediction),
        };
    }

    /// <summary>Loaded first, bare dashed behind it; a silent curve (volume shut) is left out.</summary>
    private static ResponseViewModel? ResponseOf(Prediction prediction)
    {
        ForecastCurve[] heard = [.. prediction.Curves.Where(curve => !curve.Response.IsSilent).OrderByDescending(curve => curve.Loaded)];
        return heard.Length == 0
            ? null
            : new ResponseViewModel(
                [.. heard[0].Response.Points.Select(point => point.FrequencyHz)],
                [
                    .. heard.Select(
                        (curve, i) =>
                            new CurveViewModel(
                                curve.Loaded ? "on this load" : "unloaded",
                                [.. curve.Response.Points.Select(point => (double?)point.GainDb)],
                                i > 0
                            )
                    ),
                ],
                (prediction.Pickup.LoadedResonance ?? prediction.Pickup.UnloadedResonance)?.Frequency.Value
            );
    }

    private static IReadOnlyList<DrawingViewModel> DrawingsOf(PickupModel model, Prediction prediction) =>
        [
            new(
                "The pickup from above, to scale, sizes in millimetres.",
                PickupTopFigure.Svg(model, [.. prediction.Coils.Select(coil => coil.Build.Value)])
            ),
        ];
}
