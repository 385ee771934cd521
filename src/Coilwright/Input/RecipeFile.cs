using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Input;

/// <summary>A recipe as read from a file, and its physics.</summary>
public sealed record RecipeFile(Recipe Recipe, PickupModel Model)
{
    /// <summary>Reads a recipe file.</summary>
    /// <exception cref="WrongInputException">The file or the recipe is wrong; carries every problem.</exception>
    public static async Task<RecipeFile> ReadAsync(string path, CancellationToken cancel) =>
        FromText(await InputFile.ReadAsync(path, cancel).ConfigureAwait(false), path);

    /// <summary>Reads a recipe from its text.</summary>
    /// <param name="text">The document.</param>
    /// <param name="path">What to call it in messages.</param>
    public static RecipeFile FromText(string text, string path)
    {
        Recipe recipe = RecipeReader.ReadFile(text).OrRefuse(path);
        return new RecipeFile(recipe, RecipeModelBuilder.ToModel(recipe));
    }

    /// <summary>Reads a load file; null when no path was given.</summary>
    public static async Task<LoadCircuit?> ReadLoadAsync(string? path, CancellationToken cancel) =>
        path is null ? null : LoadReader.ReadFile(await InputFile.ReadAsync(path, cancel).ConfigureAwait(false)).OrRefuse(path);
}
