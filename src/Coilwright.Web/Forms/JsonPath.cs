using System.Globalization;
using System.Text.Json.Nodes;

namespace Coilwright.Web.Forms;

/// <summary>
/// Reads and writes one value of a JSON document by a path like "coils[0].winding.turns". Everything else in the document stays as it is.
/// </summary>
public static class JsonPath
{
    /// <summary>The node at a path, or null.</summary>
    public static JsonNode? Find(JsonNode? root, string path)
    {
        JsonNode? node = root;
        foreach (object step in Steps(path))
        {
            node = (node, step) switch
            {
                (JsonObject fields, string name) => fields[name],
                (JsonArray items, int index) when index < items.Count => items[index],
                _ => null,
            };
        }

        return node;
    }

    /// <summary>What a form shows for a path: strings bare, numbers in invariant form, nothing for a missing value.</summary>
    public static string TextAt(JsonNode? root, string path) =>
        Find(root, path) switch
        {
            null => "",
            JsonValue value when value.TryGetValue(out string? text) => text,
            { } node => node.ToJsonString(),
        };

    /// <summary>Writes a value; null takes the field away. Missing objects on the way are made, missing array items are not.</summary>
    public static void Set(JsonNode root, string path, JsonNode? value)
    {
        List<object> steps = [.. Steps(path)];
        JsonNode node = root;
        foreach (object step in steps.SkipLast(1))
        {
            JsonNode? next = Child(node, step, makeMissing: value is not null);
            if (next is null)
            {
                return;
            }

            node = next;
        }

        Put(node, steps[^1], value);
    }

    private static JsonNode? Child(JsonNode node, object step, bool makeMissing)
    {
        if (node is JsonArray items)
        {
            return step is int index && index < items.Count ? items[index] : null;
        }

        if (node is not JsonObject fields || step is not string name)
        {
            return null;
        }

        if (fields[name] is null && makeMissing)
        {
            fields[name] = new JsonObject();
        }

        return fields[name];
    }

    private static void Put(JsonNode node, object step, JsonNode? value)
    {
        if (node is JsonArray items && step is int index && index < items.Count && value is not null)
        {
            items[index] = value;
        }
        else if (node is JsonObject fields && step is string name)
        {
            if (value is null)
            {
                fields.Remove(name);
            }
            else
            {
                fields[name] = value;
            }
        }
    }

    private static IEnumerable<object> Steps(string path)
    {
        foreach (string part in path.Split('.', '['))
        {
            yield return part.EndsWith(']') && int.TryParse(part[..^1], NumberStyles.None, CultureInfo.InvariantCulture, out int index)
                ? index
                : part;
        }
    }
}
