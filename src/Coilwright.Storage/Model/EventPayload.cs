using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace Coilwright.Storage.Model;

/// <summary>What an event says beyond the columns that the database looks for: its own properties as a JSON object.</summary>
internal static class EventPayload
{
    private const string Kind = "kind";

    private static readonly JsonSerializerOptions s_options = new(JsonSerializerDefaults.Web)
    {
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { LeaveOutWhatFollows } },
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Every property of an event but its kind and those that every event has a column for.</summary>
    public static JsonObject Write<T>(T happened, params ReadOnlySpan<string> columns)
    {
        JsonObject all = JsonSerializer.SerializeToNode(happened, s_options)!.AsObject();
        all.Remove(Kind);
        foreach (string column in columns)
        {
            all.Remove(column);
        }

        return all;
    }

    /// <summary>Takes a property out, for a column; nothing where the event has none of that name.</summary>
    public static T? Take<T>(this JsonObject all, string name)
    {
        T? value = all[name] is { } node ? node.Deserialize<T>(s_options) : default;
        all.Remove(name);
        return value;
    }

    /// <summary>What is left, as it is kept.</summary>
    public static string Text(this JsonObject all) => all.ToJsonString(s_options);

    /// <summary>The event that these columns and what was kept beside them make.</summary>
    /// <param name="kind">Name of its kind.</param>
    /// <param name="payload">What is kept beside the columns.</param>
    /// <param name="columns">Columns by the names of their properties; what is null is left out.</param>
    public static T Read<T>(string kind, string payload, params ReadOnlySpan<(string Name, JsonNode? Value)> columns)
    {
        JsonObject all = JsonNode.Parse(payload)!.AsObject();
        all.Insert(0, Kind, kind); // the reader looks for it first
        foreach ((string name, JsonNode? value) in columns)
        {
            if (value is not null)
            {
                all[name] = value;
            }
        }

        return all.Deserialize<T>(s_options)!;
    }

    /// <summary>What can only be read follows from the rest, and is not kept.</summary>
    private static void LeaveOutWhatFollows(JsonTypeInfo type)
    {
        for (int at = type.Properties.Count - 1; at >= 0; at--)
        {
            if (type.Properties[at].Set is null)
            {
                type.Properties.RemoveAt(at);
            }
        }
    }
}
