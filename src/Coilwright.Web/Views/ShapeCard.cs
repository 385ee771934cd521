using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Figures;
using Coilwright.Physics;
using Coilwright.Web.Endpoints;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Starting;

namespace Coilwright.Web.Views;

/// <summary>A shape that a recipe may begin from, drawn, with what it comes to.</summary>
/// <param name="Shape">The shape.</param>
/// <param name="Sketch">The pickup from above; all shapes to one scale.</param>
/// <param name="Drawing">The same by itself, with its sizes.</param>
/// <param name="Numbers">Resistance, inductance and peak on a usual load.</param>
public sealed record ShapeCard(StartingRecipe Shape, string Sketch, string Drawing, string Numbers)
{
    private static readonly Lazy<IReadOnlyList<ShapeCard>> s_all = new(Draw);

    /// <summary>All shapes. They never change: each is forecast once, when the first page asks for it.</summary>
    public static IReadOnlyList<ShapeCard> All => s_all.Value;

    /// <summary>The card of a shape; null when there is no such shape.</summary>
    public static ShapeCard? Find(string key) => All.FirstOrDefault(card => card.Shape.Key == key);

    private static ShapeCard[] Draw()
    {
        (StartingRecipe Shape, PickupModel Model, Prediction Forecast)[] all = [.. StartingRecipes.All.Select(Forecast)];
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

    private static (StartingRecipe Shape, PickupModel Model, Prediction Forecast) Forecast(StartingRecipe shape)
    {
        PickupModel model = RecipeModelBuilder.ToModel(shape.Recipe);
        return (shape, model, Forecaster.Predict(model, NewestRevision.Load()));
    }

    private static double[] BuildsM(Prediction forecast) => [.. forecast.Coils.Select(coil => coil.Build.Value)];

    private static string Words(PickupForecast pickup)
    {
        string ohms = ForecastNumberFormatter.Value(pickup.DcResistance),
            henries = ForecastNumberFormatter.Value(pickup.Inductance);
        return $"{ohms}, {henries}, peak {ForecastNumberFormatter.Value((pickup.LoadedResonance ?? pickup.UnloadedResonance)!.Frequency)}";
    }
}
