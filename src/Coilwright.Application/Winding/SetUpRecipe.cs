using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Application.Winding;

/// <summary>A person sets up a winder for a recipe.</summary>
public sealed class SetUpRecipe
{
    /// <summary>The set-up of a recipe, its forecast made anew.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="parts">What the shop knows of its parts; null without a shop.</param>
    /// <param name="machine">What the winder is called when none is known.</param>
    /// <param name="roomC">Room temperature the warm figures stand for.</param>
    /// <param name="on">The winder, or null.</param>
    /// <param name="cancel">Stops it.</param>
    public WindingSetUp SetUp(
        Recipe recipe,
        KnownParts? parts = null,
        string machine = "",
        double roomC = WindingSetUp.UsualRoomC,
        Machine? on = null,
        CancellationToken cancel = default
    )
    {
        PickupModel model = RecipeModelBuilder.ToModel(parts is null ? recipe : parts.Fill(recipe));
        return WindingSetUp.For(recipe, model, Forecaster.Predict(model, load: null, cancel: cancel), machine, roomC, on);
    }

    /// <summary>The wire that a recipe's first coil is wound with.</summary>
    public static string GaugeOf(Recipe recipe) => RecipeModelBuilder.ToModel(recipe).Coils[0].Wire.Gauge;
}
