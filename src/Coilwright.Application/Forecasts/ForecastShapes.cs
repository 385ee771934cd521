using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Circuits;
using Coilwright.Workshop.Recipes.Starting;

namespace Coilwright.Application.Forecasts;

/// <summary>A shape that a recipe may begin from, with its forecast.</summary>
/// <param name="Shape">The shape.</param>
/// <param name="Model">As modelled.</param>
/// <param name="Forecast">On a player's usual load.</param>
public sealed record ShapeForecast(StartingRecipe Shape, PickupModel Model, Prediction Forecast);

/// <summary>A person looks at the shapes that a recipe may begin from, and what each comes to.</summary>
public sealed class ForecastShapes
{
    private readonly Lazy<IReadOnlyList<ShapeForecast>> _all = new(() => [.. StartingRecipes.All.Select(Forecast)]);

    /// <summary>All shapes. They never change: each is forecast once, when it is first asked for.</summary>
    public IReadOnlyList<ShapeForecast> All => _all.Value;

    private static ShapeForecast Forecast(StartingRecipe shape)
    {
        PickupModel model = RecipeModelBuilder.ToModel(shape.Recipe);
        return new ShapeForecast(shape, model, Forecaster.Predict(model, UsualLoad.Player.Load));
    }
}
