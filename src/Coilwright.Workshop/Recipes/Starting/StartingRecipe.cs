namespace Coilwright.Workshop.Recipes.Starting;

/// <summary>A drawn shape that a recipe may begin from: complete, of common practice, and of nobody's make.</summary>
/// <param name="Key">Its name in addresses, for example "single-tall".</param>
/// <param name="Title">What it is called.</param>
/// <param name="Description">What it has, in a few words.</param>
/// <param name="Json">The recipe (coilwright.recipe/1), named as the shape.</param>
public sealed record StartingRecipe(string Key, string Title, string Description, string Json)
{
    /// <summary>The recipe as read.</summary>
    public Recipe Recipe { get; } = RecipeReader.Read(Json).Value ?? throw new InvalidOperationException($"The shape {Key} does not read.");
}
