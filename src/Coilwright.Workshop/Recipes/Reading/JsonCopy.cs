using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>
/// A document's part as nodes that can be changed. A field given twice is a problem and its first value is kept: nodes hold each name once.
/// </summary>
public static class JsonCopy
{
    public static JsonNode? Of(JsonElement element, string path, ProblemList problems) =>
        element.ValueKind switch
        {
            JsonValueKind.Object => Fields(element, path, problems),
            JsonValueKind.Array => new JsonArray([
                .. element
                    .EnumerateArray()
                    .Select((item, i) => Of(item, string.Create(CultureInfo.InvariantCulture, $"{path}[{i}]"), problems)),
            ]),
            _ => JsonNode.Parse(element.GetRawText()),
        };

    private static JsonObject Fields(JsonElement element, string path, ProblemList problems)
    {
        JsonObject copy = [];
        foreach (JsonProperty field in element.EnumerateObject())
        {
            string at = $"{path}.{field.Name}";
            JsonNode? value = Of(field.Value, at, problems);
            if (!copy.TryAdd(field.Name, value))
            {
                problems.Add(at, "this field is given twice; keep one of them");
            }
        }

        return copy;
    }
}
