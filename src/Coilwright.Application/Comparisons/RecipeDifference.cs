using System.Text.Json;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Application.Comparisons;

/// <summary>What differs between recipes, field by field.</summary>
public static class RecipeDifference
{
    private const int MostRows = 60;
    private static readonly string[] s_left = ["format", "name", "notes", "tags"];

    /// <summary>Fields whose values are not all alike, with the value in each recipe; – where a recipe has none.</summary>
    public static IReadOnlyList<(string Path, IReadOnlyList<string> Values)> Between(IReadOnlyList<RevisionRecord> recipes)
    {
        if (recipes.Count < 2)
        {
            return [];
        }

        Dictionary<string, string>[] all = [.. recipes.Select(recipe => Flat(recipe.Json))];
        return
        [
            .. all.SelectMany(one => one.Keys)
                .Distinct(StringComparer.Ordinal)
                .Select(path => (path, Values: (IReadOnlyList<string>)[.. all.Select(one => one.GetValueOrDefault(path, "–"))]))
                .Where(row => row.Values.Distinct(StringComparer.Ordinal).Count() > 1)
                .Take(MostRows),
        ];
    }

    private static Dictionary<string, string> Flat(string json)
    {
        Dictionary<string, string> flat = new(StringComparer.Ordinal);
        using JsonDocument document = JsonDocument.Parse(json);
        foreach (JsonProperty property in document.RootElement.EnumerateObject().Where(property => !s_left.Contains(property.Name)))
        {
            Walk(property.Value, property.Name, flat);
        }

        return flat;
    }

    private static void Walk(JsonElement element, string path, Dictionary<string, string> flat)
    {
        if (element.ValueKind == JsonValueKind.Object)
        {
            foreach (JsonProperty property in element.EnumerateObject())
            {
                Walk(property.Value, $"{path}.{property.Name}", flat);
            }
        }
        else if (element.ValueKind == JsonValueKind.Array)
        {
            int index = 0;
            foreach (JsonElement item in element.EnumerateArray())
            {
                Walk(item, FormattableString.Invariant($"{path}[{index++}]"), flat);
            }
        }
        else
        {
            flat[path] = element.ToString();
        }
    }
}
