using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Forms;

/// <summary>
/// The load that a response is drawn for. It belongs to the page, not to the recipe; its fields are named "load." and their path.
/// </summary>
public static class LoadForm
{
    private const string Prefix = "load.";

    /// <summary>Two controls, a cable and an input that are common on guitars: common practice, no source.</summary>
    private const string Usual = """
        { "format": "coilwright.load/1",
          "volume": { "resistance": "500 kΩ", "setting": 1 },
          "tone": { "resistance": "500 kΩ", "capacitor": "22 nF", "setting": 1 },
          "cable": { "capacitance": "500 pF" },
          "input": { "resistance": "1 MΩ" } }
        """;

    public static IReadOnlyList<RecipeField> Fields { get; } =
    [
        new("load.volume.resistance", "Volume control", "500 kΩ", []),
        new("load.volume.setting", "Volume, 0 to 1", "1", [], true),
        new("load.tone.resistance", "Tone control", "500 kΩ", []),
        new("load.tone.capacitor", "Tone capacitor", "22 nF", []),
        new("load.tone.setting", "Tone, 0 to 1", "1", [], true),
        new("load.cable.capacitance", "Cable", "500 pF", []),
        new("load.input.resistance", "Input", "1 MΩ", []),
    ];

    /// <summary>The load before anybody has changed it.</summary>
    public static JsonNode Default() => JsonNode.Parse(Usual)!;

    /// <summary>True for a field of the load, false for one of the recipe.</summary>
    public static bool Has(RecipeField field) => field.Path.StartsWith(Prefix, StringComparison.Ordinal);

    public static string Text(JsonNode load, RecipeField field) => JsonPath.TextAt(load, field.Path[Prefix.Length..]);

    /// <summary>The load as a posted form has it.</summary>
    public static JsonNode Read(IFormCollection form)
    {
        JsonNode load = Default();
        foreach (RecipeField field in Fields.Where(field => form.ContainsKey(field.Path)))
        {
            JsonPath.Set(load, field.Path[Prefix.Length..], FormValue.NodeOf(field.Path, form[field.Path].ToString()));
        }

        foreach (string part in new[] { "volume", "tone", "cable", "input" })
        {
            RemoveWithoutSize(load, part);
        }

        return load;
    }

    /// <summary>A part whose size was emptied is not there.</summary>
    private static void RemoveWithoutSize(JsonNode load, string part)
    {
        string size = part == "cable" ? "capacitance" : "resistance";
        if (load[part] is JsonObject fields && fields[size] is null)
        {
            load.AsObject().Remove(part);
        }
    }
}
