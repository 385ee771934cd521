using System.Collections.Concurrent;
using System.Globalization;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Application.Forecasts;

/// <summary>Forecasts of saved revisions, kept: what a draft is compared with stays the same while somebody types.</summary>
public sealed class SavedForecasts(ForecastRecipe forecast)
{
    private const int MostKept = 60;
    private readonly ConcurrentDictionary<string, RecipeForecast> _kept = new(StringComparer.Ordinal);

    /// <summary>The numbers and the response of a revision.</summary>
    /// <param name="revision">The revision as saved.</param>
    /// <param name="loadJson">A load document.</param>
    /// <param name="parts">
    /// What the shop knows of its parts: its limits of fill move warnings, which nobody asks of a saved revision here.
    /// </param>
    public RecipeForecast Of(RevisionRecord revision, string loadJson, KnownParts parts)
    {
        string key = string.Create(
            CultureInfo.InvariantCulture,
            $"{revision.RecipeId} {revision.Number} {revision.TimeUtc.UtcTicks} {loadJson} {parts.Sizes} {parts.Learning}"
        );
        if (_kept.TryGetValue(key, out RecipeForecast? known))
        {
            return known;
        }

        if (_kept.Count >= MostKept)
        {
            _kept.Clear();
        }

        return _kept[key] = forecast.Forecast(revision.Json, loadJson, parts, ForecastDetail.None);
    }
}
