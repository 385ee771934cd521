using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Solving.Variations;

namespace Coilwright.Application.Solving;

/// <summary>A person asks one of the ready questions about a recipe: left-handed, longer, other wire.</summary>
public sealed class VaryRecipe
{
    /// <summary>The variant with what it changes, or every problem of the question.</summary>
    /// <param name="recipe">The base.</param>
    /// <param name="ask">Key of the question.</param>
    /// <param name="typed">What was typed for it; the usual value when empty.</param>
    /// <param name="load">What hangs on it, for the loaded peak.</param>
    /// <param name="cancel">Stops it.</param>
    public ReadOutcome<Variation> Vary(Recipe recipe, string ask, string typed, LoadCircuit load, CancellationToken cancel) =>
        VariationQuestion.Find(ask) is { } question
            ? RecipeVariation.Of(recipe, question, typed, load, cancel)
            : new(
                null,
                [new Problem("ask", "there is no such question", ask, string.Join(", ", VariationQuestion.All.Select(one => one.Key)))]
            );
}
