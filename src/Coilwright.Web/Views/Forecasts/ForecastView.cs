using Coilwright.Analysis.Forecasts;
using Coilwright.Application.Forecasts;
using Coilwright.Papers.Figures;
using Coilwright.Physics;
using Coilwright.Web.Views.Recipes;

namespace Coilwright.Web.Views.Forecasts;

/// <summary>A forecast as the page of its recipe shows it.</summary>
internal static class ForecastView
{
    /// <summary>The five answers, and the view in sight alone.</summary>
    /// <param name="found">The forecast.</param>
    /// <param name="shown">The view in sight.</param>
    /// <param name="saved">Letter and forecast of what the answers' changes are told against; null when nothing has changed.</param>
    /// <param name="before">Name and forecast of what stands behind the response; null for nothing.</param>
    public static ForecastViewModel Of(
        RecipeForecast found,
        RecipeView shown,
        (string Letter, RecipeForecast Forecast)? saved = null,
        (string Name, RecipeForecast Forecast)? before = null
    ) =>
        found is { Model: { } model, Prediction: { } prediction }
            ? new ForecastViewModel
            {
                Engine = found.Engine,
                Prediction = prediction,
                Shown = shown,
                Answers = RecipeAnswers.Of(prediction, saved?.Forecast.Prediction),
                Against = saved?.Letter ?? "",
                Drawing = RecipeDrawing.Svg(model, [.. prediction.Coils.Select(coil => coil.Build.Value)]),
                Response = ResponseOf(prediction, before),
                Plots = PlotsOf(model, prediction, shown),
            }
            : new ForecastViewModel
            {
                Problems = found.Problems,
                Shown = shown,
                Answers = RecipeAnswers.Of(null, null),
            };

    private static IReadOnlyList<DrawingViewModel> PlotsOf(PickupModel model, Prediction prediction, RecipeView shown)
    {
        if (shown == RecipeView.Strings)
        {
            return StringPlots.OfStrings(model, prediction);
        }

        return shown == RecipeView.Numbers ? StringPlots.OfBranch(prediction) : [];
    }

    /// <summary>Loaded first, bare dashed behind it, then what it is compared with; a silent curve (volume shut) is left out.</summary>
    private static ResponseViewModel? ResponseOf(Prediction prediction, (string Name, RecipeForecast Forecast)? before)
    {
        ForecastCurve[] heard = HeardOf(prediction);
        if (heard.Length == 0)
        {
            return null;
        }

        bool loaded = heard[0].Loaded;
        ResonanceForecast? peak = PeakOf(prediction, loaded);
        ForecastCurve? behind = before?.Forecast.Prediction is { } other
            ? Array.Find(HeardOf(other), curve => curve.Loaded == loaded)
            : null;
        return new ResponseViewModel(
            [.. heard[0].Response.Points.Select(point => point.FrequencyHz)],
            [
                .. heard.Select((curve, i) => CurveOf(curve, curve.Loaded ? "on this load" : "unloaded", i > 0)),
                .. behind is null ? Array.Empty<CurveViewModel>() : [CurveOf(behind, before!.Value.Name, dashed: true)],
            ],
            peak?.Frequency.Value
        )
        {
            Svg = RecipeResponseFigure.Svg(
                heard[0].Response,
                peak,
                prediction.Band,
                behind is null ? null : (before!.Value.Name, behind.Response)
            ),
            BeforeName = behind is null ? "" : before!.Value.Name,
            BeforePeak = behind is null ? null : PeakOf(before!.Value.Forecast.Prediction!, loaded),
        };
    }

    private static ForecastCurve[] HeardOf(Prediction prediction) =>
        [.. prediction.Curves.Where(curve => !curve.Response.IsSilent).OrderByDescending(curve => curve.Loaded)];

    private static ResonanceForecast? PeakOf(Prediction prediction, bool loaded) =>
        loaded ? prediction.Pickup.LoadedResonance : prediction.Pickup.UnloadedResonance;

    private static CurveViewModel CurveOf(ForecastCurve curve, string name, bool dashed) =>
        new(name, [.. curve.Response.Points.Select(point => (double?)point.GainDb)], dashed);
}
