using Coilwright.Analysis.Forecasts;
using Coilwright.Application.Forecasts;
using Coilwright.Papers.Figures;
using Coilwright.Physics;

namespace Coilwright.Web.Views.Forecasts;

/// <summary>A forecast as its panel shows it.</summary>
internal static class ForecastView
{
    /// <summary>Everything the panel shows.</summary>
    public static ForecastViewModel Of(RecipeForecast found) =>
        found is { Model: { } model, Prediction: { } prediction }
            ? new ForecastViewModel
            {
                Engine = found.Engine,
                Prediction = prediction,
                Response = ResponseOf(prediction),
                Plots = StringPlots.Of(model, prediction),
                Drawings = DrawingsOf(model, prediction),
            }
            : new ForecastViewModel { Problems = found.Problems };

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
