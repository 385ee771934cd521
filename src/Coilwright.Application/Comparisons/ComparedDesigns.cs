using System.Collections.Concurrent;
using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Forecasts;
using Coilwright.Application.Forecasts;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Application.Comparisons;

/// <summary>
/// Designs of recipes kept by their text and what the shop knows of its parts, so that dragging a control computes responses alone.
/// </summary>
public sealed class ComparedDesigns(SolvedDesigns solved)
{
    private const int MostKept = 60;

    private readonly ConcurrentDictionary<(string Json, KnownParts Known), (ForecastBranch Branch, SolvedPickup Solved)> _kept = new();

    /// <summary>A recipe's design, or its problems.</summary>
    /// <param name="revision">The recipe.</param>
    /// <param name="parts">What the shop knows of its parts.</param>
    /// <param name="name">What to call it; name and revision unless said.</param>
    public (ComparedDesign? Design, IReadOnlyList<Problem> Problems) Of(RevisionRecord revision, KnownParts parts, string? name = null)
    {
        if (!_kept.TryGetValue((revision.Json, parts), out (ForecastBranch Branch, SolvedPickup Solved) kept))
        {
            ReadOutcome<Recipe> recipe = RecipeReader.Read(revision.Json);
            if (recipe.Value is null)
            {
                return (null, [.. recipe.Problems.Select(problem => problem with { Field = $"{revision.RecipeName}: {problem.Field}" })]);
            }

            Recipe filled = parts.Fill(recipe.Value);
            kept = (ForecastBranch.Forecast(RecipeModelBuilder.ToModel(filled)), solved.Of(filled));
            if (_kept.Count >= MostKept)
            {
                _kept.Clear();
            }

            _kept[(revision.Json, parts)] = kept;
        }

        ForecastBranch branch = kept.Branch;
        return (
            new ComparedDesign(name ?? $"{revision.RecipeName} {revision.Letter}", branch.Branch, branch.CapacitanceF, null, branch.Pickup)
            {
                Solved = kept.Solved,
            },
            []
        );
    }
}
