using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Solving;

namespace Coilwright.Application.Solving;

/// <summary>A person asks what to hold on a spool that is off: the turns or the resistance.</summary>
public sealed class ChooseForSpool
{
    /// <summary>Both choices, with what each does.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="ohmPerM">What a metre of the spool reads at 20 °C.</param>
    /// <param name="load">What hangs on the pickup.</param>
    /// <param name="cancel">Stops it.</param>
    public SpoolChoice Choose(Recipe recipe, Estimate ohmPerM, LoadCircuit load, CancellationToken cancel) =>
        SpoolChoice.Of(RecipeModelBuilder.ToModel(recipe), null, ohmPerM, load, cancel);
}
