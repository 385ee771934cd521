using Coilwright.Analysis.Forecasts;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes;

/// <summary>A recipe that cannot be forecast is no recipe to release or to wind.</summary>
public static class ForecastRule
{
    private const string Allowed = "a recipe of which every number can be forecast: check sizes, places and gaps of its parts";

    /// <summary>The problem of a recipe that passes the checks, if there is one.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="forecast">Makes the forecast; the fast engine's unless said.</param>
    public static IReadOnlyList<Problem> Check(Recipe recipe, Func<Recipe, Prediction>? forecast = null) =>
        Try(() => forecast is null ? Forecaster.Predict(RecipeModelBuilder.ToModel(recipe), load: null) : forecast(recipe)).Problems;

    /// <summary>A forecast, or the problem in words.</summary>
    public static ReadOutcome<Prediction> Try(Func<Prediction> forecast)
    {
        try
        {
            Prediction prediction = forecast();
            Figure? wrong = prediction
                .Coils.SelectMany(coil => coil.All)
                .Concat(prediction.Pickup.All)
                .FirstOrDefault(figure =>
                    !double.IsFinite(figure.Estimate.Value)
                    || !double.IsFinite(figure.Estimate.Low)
                    || !double.IsFinite(figure.Estimate.High)
                );
            return wrong is null
                ? new(prediction, [])
                : new(
                    null,
                    [
                        new Problem(
                            "coils",
                            $"this recipe cannot be forecast: {wrong.Derivation.Symbols.Split('=')[0].Trim()} comes out without a number",
                            null,
                            Allowed
                        ),
                    ]
                );
        }
        catch (Exception failure)
            when (failure is ArgumentException or ArithmeticException or InvalidOperationException or IndexOutOfRangeException)
        {
            return new(
                null,
                [new Problem("coils", "this recipe cannot be forecast: " + failure.Message.Split('\n')[0].Trim(), null, Allowed)]
            );
        }
    }
}
