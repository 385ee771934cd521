using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes;

/// <summary>A stored revision as a recipe: one that an earlier program let through may be refused by this one.</summary>
public static class ReleasedRecipe
{
    private const string ToDo =
        "nothing entered is lost; open the recipe, mend the value, save it as the next revision with the reason, "
        + "release that and begin a new batch on it";

    private const int Most = 3;

    /// <summary>The recipe of a revision.</summary>
    /// <exception cref="UnreadableRecordException">It is refused by today's checks; the message says by which.</exception>
    public static Recipe Of(RevisionRecord revision)
    {
        ReadOutcome<Recipe> read = RecipeReader.Read(revision.Json);
        return read.Value
            ?? throw new UnreadableRecordException(
                $"revision {revision.Letter} of {revision.RecipeName} does not pass the checks of a recipe any more: {Told(read.Problems)}",
                ToDo
            );
    }

    /// <summary>Place of a coil in the recipe.</summary>
    /// <exception cref="UnreadableRecordException">There is no such coil.</exception>
    public static int PlaceOf(Recipe recipe, RevisionRecord revision, string coilName)
    {
        int index = recipe.Coils.ToList().FindIndex(coil => coil.Name == coilName);
        return index >= 0
            ? index
            : throw new UnreadableRecordException($"revision {revision.Letter} of {revision.RecipeName} has no coil \"{coilName}\"", ToDo);
    }

    private static string Told(IReadOnlyList<Problem> problems) =>
        string.Join("; ", problems.Take(Most).Select(Told)) + (problems.Count > Most ? More(problems.Count - Most) : "");

    private static string More(int count) =>
        string.Create(CultureInfo.InvariantCulture, $"; and {count} more, which the recipe's page shows");

    /// <summary>Which field, what is stored there, what is wrong with it, and the range.</summary>
    private static string Told(Problem problem)
    {
        string stored = problem.Understood is { Length: > 0 } value ? $", stored as {value}" : "";
        string allowed = problem.Allowed is null ? "" : $" (allowed: {problem.Allowed})";
        return $"{FieldLabels.Inside(problem.Field)}{stored}: {problem.Message}{allowed}";
    }
}
