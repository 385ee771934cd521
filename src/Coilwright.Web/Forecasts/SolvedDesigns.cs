using System.Collections.Concurrent;
using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Forecasts;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Web.Forecasts;

/// <summary>Recipes solved once and kept by their text, so that another load or another neighbour costs no field solution.</summary>
internal static class SolvedDesigns
{
    private const int MostKept = 80;

    private static readonly ForecastOptions s_options = new() { FrequenciesHz = ForecastBranch.FrequenciesHz };
    private static readonly ConcurrentDictionary<string, SolvedPickup> s_kept = new(StringComparer.Ordinal);

    /// <summary>The design of a recipe that was read.</summary>
    public static SolvedPickup Of(Recipe recipe)
    {
        if (s_kept.TryGetValue(recipe.Json, out SolvedPickup? known))
        {
            return known;
        }

        if (s_kept.Count >= MostKept)
        {
            s_kept.Clear();
        }

        return s_kept[recipe.Json] = new SolvedPickup(RecipeModelBuilder.ToModel(recipe), null, s_options);
    }
}
