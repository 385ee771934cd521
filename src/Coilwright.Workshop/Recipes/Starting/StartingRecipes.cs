using System.Reflection;
using System.Text.Json.Nodes;

namespace Coilwright.Workshop.Recipes.Starting;

/// <summary>The shapes that a recipe may begin from. Their sizes are common practice, no source; every one is a valid recipe.</summary>
public static class StartingRecipes
{
    /// <summary>Said of a value that still is the shape's own.</summary>
    public const string Origin = "common practice";

    /// <summary>All of them, in the order in which they are offered.</summary>
    public static IReadOnlyList<StartingRecipe> All { get; } =
    [
        Read("single-tall", "six rod magnets, 11 mm of winding height"),
        Read("single-wide", "six screws, a bar magnet on each side below"),
        Read("two-coils", "slugs in one, screws in the other, one bar magnet below"),
        Read("blade", "one steel blade under all strings, bar magnets below"),
        Read("bass-split", "two short coils, two strings each, two rods a string"),
        Read("bass-rows", "two long coils, in each a row of eight rods"),
        Read("seven-strings", "seven rod magnets, metric wire"),
        Read("no-poles", "an air coil, against hum or to measure with"),
        Read("free", "one part of each kind, to be set as you like"),
    ];

    /// <summary>The shape of a key; null when there is none.</summary>
    public static StartingRecipe? Find(string key) => All.FirstOrDefault(one => one.Key == key);

    /// <summary>The shape that a recipe was begun from, by the tag that it carries since; null when it was begun otherwise.</summary>
    public static StartingRecipe? Of(JsonNode document) =>
        document["tags"] is JsonArray tags ? All.FirstOrDefault(one => tags.Any(tag => tag?.ToString() == TagOf(one))) : null;

    private static string TagOf(StartingRecipe shape) => shape.Recipe.Tags[^1];

    private static StartingRecipe Read(string key, string description)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"shapes/{key}.json")!;
        using StreamReader reader = new(stream);
        string json = reader.ReadToEnd();
        return new StartingRecipe(key, JsonNode.Parse(json)!["name"]!.ToString(), description, json);
    }
}
