using Coilwright.Analysis.Comparisons;
using Coilwright.Application.Comparisons;
using Coilwright.Application.Forecasts;
using Coilwright.Papers.Formatting;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Solving;

namespace Coilwright.Application.Solving;

/// <summary>A person pins answers and sees them side by side with the recipe that was asked about.</summary>
public sealed class CompareSolutions(SolvedDesigns solved, CompareRecipes compare)
{
    /// <summary>Everything that is pinned, compared; null when nothing is.</summary>
    /// <param name="newest">The recipe asked about.</param>
    /// <param name="found">Its answers.</param>
    /// <param name="pins">Keys of the pinned answers.</param>
    /// <param name="against">Key of the one that the others are compared with; empty for the recipe as it stands.</param>
    /// <param name="load">What all hang on.</param>
    /// <param name="parts">What the shop knows of its parts.</param>
    public PinnedComparison? Compare(
        RevisionRecord newest,
        Solutions found,
        IReadOnlyList<string> pins,
        string against,
        LoadCircuit load,
        KnownParts parts
    )
    {
        string ownBuild = RecipeReader.Read(newest.Json).Value!.Coils[0].Wire.Build;
        Solution[] all = [.. found.Ranked.Concat(found.Front).DistinctBy(SolutionKey.Of)];
        PinnedDesign[] pinned =
        [
            .. pins.Select(pin => all.FirstOrDefault(one => SolutionKey.Of(one) == pin))
                .OfType<Solution>()
                .Select(one => new PinnedDesign(SolutionKey.Of(one), ChangeFormatter.Words(one, ownBuild), one.RecipeJson, one)),
        ];
        if (pinned.Length == 0)
        {
            return null;
        }

        PinnedDesign recipe = new("", $"{newest.RecipeName} as it stands", newest.Json, null);
        PinnedDesign first = pinned.FirstOrDefault(one => one.Key == against) ?? recipe;
        PinnedDesign[] others = [.. pinned.Prepend(recipe).Where(one => one != first)];
        SolvedPickup Solved(PinnedDesign design) => solved.Of(parts.Fill(RecipeReader.Read(design.Json).Value!));
        SolvedPickup onLoad = Solved(first).On(load);
        return new PinnedComparison(
            first,
            [.. others.Select(one => (one, PickupComparison.Between(onLoad, Solved(one).On(load))))],
            compare.Compare([.. others.Prepend(first).Select(one => newest with { RecipeName = one.Words, Json = one.Json })], load, parts),
            pins.Count - pinned.Length
        );
    }
}
