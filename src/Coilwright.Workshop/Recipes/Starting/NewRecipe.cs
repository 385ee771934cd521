using System.Text.Json;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Solving;

namespace Coilwright.Workshop.Recipes.Starting;

/// <summary>Begins a recipe: from a drawn shape, or as a copy of one that is there.</summary>
public sealed class NewRecipe(RecipeService recipes, IRecipeRecords records)
{
    /// <summary>Begins one from a shape.</summary>
    /// <param name="recipeId">Client-made id of the new recipe.</param>
    /// <param name="shape">Key of the shape.</param>
    /// <param name="name">What it is to be called.</param>
    /// <param name="person">Who begins it.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<RecipeOutcome> FromShapeAsync(Guid recipeId, string shape, string name, string person, CancellationToken cancel) =>
        StartingRecipes.Find(shape) is { } found
            ? await BeginAsync(recipeId, found.Json, name, person, cancel).ConfigureAwait(false)
            : Refused("shape", "take one of the shapes, or a recipe to copy");

    /// <summary>Begins one as a copy of the newest revision of another.</summary>
    /// <param name="recipeId">Client-made id of the new recipe.</param>
    /// <param name="copied">Id of the recipe that is copied.</param>
    /// <param name="name">What it is to be called.</param>
    /// <param name="person">Who begins it.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<RecipeOutcome> FromCopyAsync(Guid recipeId, Guid copied, string name, string person, CancellationToken cancel) =>
        (await records.RevisionsAsync(copied, cancel).ConfigureAwait(false)).MaxBy(one => one.Number) is { } newest
            ? await BeginAsync(recipeId, newest.Json, name, person, cancel).ConfigureAwait(false)
            : Refused("copy", "the recipe to copy is not in this shop");

    private async Task<RecipeOutcome> BeginAsync(Guid recipeId, string json, string name, string person, CancellationToken cancel)
    {
        if (name.Trim().Length == 0)
        {
            return Refused("name", "what is the recipe called?", "1 to 200 letters");
        }

        if ((await records.RevisionsAsync(recipeId, cancel).ConfigureAwait(false)).MinBy(one => one.Number) is { } sentAgain)
        {
            return new RecipeOutcome([], sentAgain);
        }

        try
        {
            string named = new RecipeEdit(json).Named(name.Trim()).Json;
            return await recipes.SaveAsync(recipeId, named, "", person, 0, cancel).ConfigureAwait(false);
        }
        catch (JsonException)
        {
            return Refused("copy", "the recipe to copy cannot be read any more");
        }
    }

    private static RecipeOutcome Refused(string field, string message, string? allowed = null) =>
        new([new Problem(field, message, null, allowed)], null);
}
