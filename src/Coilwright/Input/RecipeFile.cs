using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Input;

/// <summary>Reads the recipe and load files that commands name.</summary>
public static class RecipeFile
{
    /// <summary>Reads a recipe file.</summary>
    /// <exception cref="WrongInputException">The file or the recipe is wrong; carries every problem.</exception>
    public static async Task<Recipe> ReadAsync(string path, CancellationToken cancel) =>
        RecipeReader.ReadFile(await InputFile.ReadAsync(path, cancel).ConfigureAwait(false)).OrRefuse(path);

    /// <summary>Reads a load file; null when no path was given.</summary>
    public static async Task<LoadCircuit?> ReadLoadAsync(string? path, CancellationToken cancel) =>
        path is null ? null : LoadReader.ReadFile(await InputFile.ReadAsync(path, cancel).ConfigureAwait(false)).OrRefuse(path);
}
