using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes;

/// <summary>A stored revision as a recipe: one that an earlier program let through may be refused by this one.</summary>
public static class ReleasedRecipe
{
    private const string ToDo = "nothing entered is lost; save the recipe, mended, as its next revision, release it and begin a new batch on that";

    /// <summary>The recipe of a revision.</summary>
    /// <exception cref="UnreadableRecordException">It is refused by today's checks; the message says by which.</exception>
    public static Recipe Of(RevisionRecord revision)
    {
        ReadOutcome<Recipe> read = RecipeReader.Read(revision.Json);
        return read.Value ?? throw new UnreadableRecordException($"revision {revision.Letter} of {revision.RecipeName} does not pass the checks of a recipe any more: {Told(read.Problems)}", ToDo);
    }

    /// <summary>Place of a coil in the recipe.</summary>
    /// <exception cref="UnreadableRecordException">There is no such coil.</exception>
    public static int PlaceOf(Recipe recipe, RevisionRecord revision, string coilName)
    {
        int index = recipe.Coils.ToList().FindIndex(coil => coil.Name == coilName);
        return index >= 0 ? index : throw new UnreadableRecordException($"revision {revision.Letter} of {revision.RecipeName} has no coil \"{coilName}\"", ToDo);
    }

    private static string Told(IReadOnlyList<Problem> problems) =>
        string.Join("; ", problems.Take(3).Select(problem => $"{FieldLabels.Inside(problem.Field)}: {problem.Message}" + (problem.Allowed is null ? "" : $" (allowed: {problem.Allowed})"))) + (problems.Count > 3 ? " …" : "");
}
