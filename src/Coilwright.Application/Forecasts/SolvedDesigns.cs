using System.Collections.Concurrent;
using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Forecasts;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Application.Forecasts;

/// <summary>
/// Recipes solved once and kept by their text and the shop's rules of lengths, so that another load or another neighbour costs no field
/// solution.
/// </summary>
public sealed class SolvedDesigns
{
    private const int MostKept = 80;

    private static readonly ForecastOptions s_options = new() { FrequenciesHz = ForecastBranch.FrequenciesHz };
    private readonly ConcurrentDictionary<string, SolvedPickup> _kept = new(StringComparer.Ordinal);

    /// <summary>The design of a recipe that was read.</summary>
    public SolvedPickup Of(Recipe recipe)
    {
        string key = recipe.ForecastKey;
        if (_kept.TryGetValue(key, out SolvedPickup? known))
        {
            return known;
        }

        if (_kept.Count >= MostKept)
        {
            _kept.Clear();
        }

        return _kept[key] = new SolvedPickup(RecipeModelBuilder.ToModel(recipe), null, s_options);
    }
}
