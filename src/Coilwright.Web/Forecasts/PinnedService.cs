using Coilwright.Analysis.Comparisons;
using Coilwright.Physics.Circuit;
using Coilwright.Web.Forms;
using Coilwright.Web.Views;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Solving;

namespace Coilwright.Web.Forecasts;

/// <summary>Pinned answers side by side with the recipe that was asked about.</summary>
internal static class PinnedService
{
    /// <summary>Everything the pinned part shows; null when nothing is pinned.</summary>
    /// <param name="newest">The recipe asked about.</param>
    /// <param name="found">Its answers.</param>
    /// <param name="address">What is pinned of them.</param>
    /// <param name="load">What all hang on.</param>
    public static PinnedViewModel? Of(RevisionRecord newest, Solutions found, SolveAddress address, LoadCircuit load)
    {
        Solution[] all = [.. found.Ranked.Concat(found.Front).DistinctBy(SolveAddress.KeyOf)];
        PinnedDesign[] pinned =
        [
            .. address
                .Pins.Select(pin => all.FirstOrDefault(one => SolveAddress.KeyOf(one) == pin))
                .OfType<Solution>()
                .Select(one => new PinnedDesign(SolveAddress.KeyOf(one), Words(one), one.RecipeJson, one)),
        ];
        if (pinned.Length == 0)
        {
            return null;
        }

        PinnedDesign recipe = new("", $"{newest.RecipeName} as it stands", newest.Json, null);
        PinnedDesign against = pinned.FirstOrDefault(one => one.Key == address.Against) ?? recipe;
        PinnedDesign[] others = [.. pinned.Prepend(recipe).Where(one => one != against)];
        SolvedPickup first = Solved(against).On(load);
        return new PinnedViewModel(
            against,
            [.. others.Select(one => (one, PickupComparison.Between(first, Solved(one).On(load))))],
            CompareService.Compare(
                [.. others.Prepend(against).Select(one => newest with { RecipeName = one.Words, Json = one.Json })],
                load
            ) with
            {
                ResultDifferences = [],
            },
            address.Pins.Count - pinned.Length
        );
    }

    /// <summary>What was changed, in words.</summary>
    public static string Words(Solution solution) =>
        string.Join(", ", solution.Changes.Select(change => $"{change.Key} {ChangeFormatter.Told(change.Value)}"));

    private static SolvedPickup Solved(PinnedDesign design) => SolvedDesigns.Of(RecipeReader.Read(design.Json).Value!);
}
