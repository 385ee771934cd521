using System.Globalization;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Batches;

/// <summary>What a batch must be before it is begun.</summary>
internal static class BatchRules
{
    public const int MostCoils = 10_000;

    private const int LongestName = 60;
    private const int LongestPrefix = 20;

    /// <summary>Every problem at once.</summary>
    public static IReadOnlyList<Problem> Check(BatchRecord batch, RevisionRecord? revision, KnownNames known)
    {
        List<Problem> problems = [];
        if (
            string.IsNullOrWhiteSpace(batch.Name)
            || batch.Name.Length > LongestName
            || batch.Name.Trim().Any(letter => letter == '/' || char.IsControl(letter))
        )
        {
            problems.Add(
                new Problem(
                    "name",
                    "a batch needs a name",
                    batch.Name,
                    "1 to 60 letters without a stroke (/), which stands between batch and tag"
                )
            );
        }
        else if (known.Batches.FirstOrDefault(other => other.Id != batch.Id && NameKey.Same(other.Name, batch.Name)) is { } other)
        {
            problems.Add(NameTaken(batch.Name, other));
        }

        if (batch.Quantity is < 1 or > MostCoils)
        {
            problems.Add(
                new Problem("quantity", "so many coils are no batch", batch.Quantity.ToString(CultureInfo.InvariantCulture), "1 to 10,000")
            );
        }

        if (batch.TagPrefix.Length > LongestPrefix || batch.TagPrefix.Any(char.IsControl))
        {
            problems.Add(new Problem("tags", "this is too long to stand before a number", batch.TagPrefix, "up to 20 letters"));
        }

        problems.AddRange(((Problem?[])[known.SpoolProblem(batch.Spool), known.WinderProblem(batch.Machine)]).OfType<Problem>());
        if (revision is null)
        {
            problems.Add(new Problem("revision", "there is no such revision", RevisionRecord.LetterOf(batch.RevisionNumber)));
        }
        else if (revision.State != RevisionState.Released)
        {
            problems.Add(
                new Problem(
                    "revision",
                    $"revision {revision.Letter} is a draft; a batch is begun on a released one",
                    revision.Letter,
                    "release it first"
                )
            );
        }
        else
        {
            problems.AddRange(CheckRecipe(batch, RecipeReader.Read(revision.Json)));
        }

        return problems;
    }

    private static IReadOnlyList<Problem> CheckRecipe(BatchRecord batch, ReadOutcome<Recipe> read)
    {
        if (read.Value is not { } recipe)
        {
            return read.Problems;
        }

        return recipe.Coils.All(coil => coil.Name != batch.CoilName)
            ?
            [
                new Problem(
                    "coil",
                    "the recipe has no such coil",
                    batch.CoilName,
                    string.Join(", ", recipe.Coils.Select(coil => coil.Name))
                ),
            ]
            : ForecastRule.Check(recipe);
    }

    /// <summary>Another batch bears the name.</summary>
    public static Problem NameTaken(string name, BatchRecord? other) =>
        new(
            "name",
            other is null
                ? "another batch has this name"
                : string.Create(CultureInfo.InvariantCulture, $"batch {other.Name}, begun {other.BegunUtc:yyyy-MM-dd}, has this name"),
            name.Trim(),
            "a name of its own in this shop"
        );
}
