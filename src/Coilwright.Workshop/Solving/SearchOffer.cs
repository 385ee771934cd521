using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Solving;

/// <summary>What a recipe can be asked backwards about: quantities that can be wanted, and what may change.</summary>
/// <param name="Now">Quantities by key, with their values in the recipe; not a number where one does not exist yet.</param>
/// <param name="Choices">What may change.</param>
/// <param name="Build">Film of the recipe's wire, by its key.</param>
public sealed record SearchOffer(IReadOnlyDictionary<string, double> Now, IReadOnlyList<OfferedChoice> Choices, string Build)
{
    /// <summary>The offer of a recipe.</summary>
    public static SearchOffer Of(Recipe recipe, LoadCircuit load, CancellationToken cancel) =>
        new(RecipeSolver.Known(recipe, load, cancel), OfferedChoice.Of(recipe), recipe.Coils[0].Wire.Build);
}
