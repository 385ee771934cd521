using Coilwright.Workshop.Recipes;

namespace Coilwright.Papers.Tests;

/// <summary>Recipes of the invented demo workshop.</summary>
internal static class ExampleRecipe
{
    public static Recipe Read(string file)
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Coilwright.slnx")))
            {
                return RecipeReader.Read(File.ReadAllText(Path.Combine(folder.FullName, "demo", "recipes", file))).Value!;
            }
        }

        throw new InvalidOperationException("The repository was not found above the tests.");
    }
}
