using Coilwright.Analysis.Forecasts;
using Coilwright.Application.Forecasts;
using Coilwright.Papers.Figures;
using Coilwright.Workshop.Recipes.Starting;

namespace Coilwright.Web.Views;

/// <summary>A shape that a recipe may begin from, drawn, with what it comes to.</summary>
/// <param name="Shape">The shape.</param>
/// <param name="Sketch">The pickup from above; all shapes to one scale.</param>
/// <param name="Drawing">The same by itself, with its sizes.</param>
/// <param name="Numbers">Resistance, inductance and peak on a usual load.</param>
public sealed record ShapeCard(StartingRecipe Shape, string Sketch, string Drawing, string Numbers)
{
    /// <summary>The cards of some shapes, drawn to one scale.</summary>
    public static IReadOnlyList<ShapeCard> Draw(IReadOnlyList<ShapeForecast> all)
    {
        (double WidthMm, double HeightMm)[] frames = [.. all.Select(one => PickupTopFigure.FrameOf(one.Model, BuildsM(one.Forecast)))];
        (double, double) frame = (frames.Max(one => one.WidthMm), frames.Max(one => one.HeightMm));
        return
        [
            .. all.Select(one => new ShapeCard(
                one.Shape,
                PickupTopFigure.Sketch(one.Model, BuildsM(one.Forecast), frame, "shape-" + one.Shape.Key),
                PickupTopFigure.Svg(one.Model, BuildsM(one.Forecast), "drawing-" + one.Shape.Key),
                Words(one.Forecast.Pickup)
            )),
        ];
    }

    private static double[] BuildsM(Prediction forecast) => [.. forecast.Coils.Select(coil => coil.Build.Value)];

    private static string Words(PickupForecast pickup)
    {
        string ohms = ForecastNumberFormatter.Value(pickup.DcResistance),
            henries = ForecastNumberFormatter.Value(pickup.Inductance);
        return $"{ohms}, {henries}, peak {ForecastNumberFormatter.Value((pickup.LoadedResonance ?? pickup.UnloadedResonance)!.Frequency)}";
    }
}
