using System.Text.Json;
using System.Text.Json.Nodes;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Interpretations;

namespace Coilwright.Web.Forms;

/// <summary>How the text of a setting's field stands in its document.</summary>
public enum SettingKind
{
    /// <summary>As typed.</summary>
    Text,

    /// <summary>A number without a unit.</summary>
    Number,

    /// <summary>A value with its unit; a bare number is taken in the field's own unit.</summary>
    Quantity,

    /// <summary>Several numbers, parted by spaces or semicolons.</summary>
    Numbers,

    /// <summary>Several values with their unit, parted by semicolons or spaces between numbers.</summary>
    Quantities,
}

/// <summary>One field of a settings form; its name is its path in the document.</summary>
/// <param name="Path">For example "ink.potLife".</param>
/// <param name="Label">In workshop words.</param>
/// <param name="Kind">How its text stands in the document.</param>
/// <param name="Unit">Unit of a bare number; empty for none.</param>
/// <param name="Usual">What holds where the shop states nothing; empty for nothing.</param>
/// <param name="Changes">What it changes, in a sentence; empty where the label says it.</param>
public sealed record SettingField(
    string Path,
    string Label,
    SettingKind Kind = SettingKind.Text,
    string Unit = "",
    string Usual = "",
    string Changes = ""
)
{
    private readonly string? _name;

    /// <summary>Name in the form; the path unless said.</summary>
    public string Name
    {
        get => _name ?? Path;
        init => _name = value;
    }

    /// <summary>Words to choose from, with what a person reads of each; empty for free text.</summary>
    public IReadOnlyList<(string Word, string Label)> Choices { get; init; } = [];

    /// <summary>What may be typed, where nothing is usual.</summary>
    public string Example { get; init; } = "";

    /// <summary>Where <see cref="Usual"/> comes from: "common practice", "our assumption".</summary>
    public string Origin { get; init; } = "";

    /// <summary>What the field shows of a document.</summary>
    public string TextIn(JsonNode? document)
    {
        JsonNode? found = JsonPath.Find(document, Path);
        return found is JsonArray items
            ? string.Join("; ", items.Select(item => item?.GetValueKind() == JsonValueKind.String ? item.GetValue<string>() : $"{item}"))
            : FieldInterpreter.Shown(Path, JsonPath.TextAt(document, Path));
    }

    /// <summary>What a document holds for typed text; null for none.</summary>
    public JsonNode? NodeOf(string typed)
    {
        string text = typed.Trim();
        if (text.Length == 0)
        {
            return null;
        }

        return Kind switch
        {
            SettingKind.Number => Number(text),
            SettingKind.Quantity => Quantity(text),
            SettingKind.Numbers => new JsonArray([.. Parts(text).Select(Number)]),
            SettingKind.Quantities => new JsonArray([.. Parts(text).Select(Quantity)]),
            _ => FieldInterpreter.Read(Path, text).Value,
        };
    }

    private static JsonNode? Number(string text) =>
        CountParser.TryNumber(text, out double number) ? JsonValue.Create(number) : JsonValue.Create(text);

    private JsonNode? Quantity(string text)
    {
        string plain = FieldInterpreter.Read(Path, text).Value is JsonValue value && value.TryGetValue(out string? read) ? read : text;
        return JsonValue.Create(CountParser.TryNumber(plain, out _) ? $"{plain} {Unit}" : plain);
    }

    /// <summary>"400; 800 rpm", "400, 800" and "19 20 24" are lists; a unit stays with its number.</summary>
    private static List<string> Parts(string text)
    {
        string parted = text.Replace(", ", ";", StringComparison.Ordinal);
        List<string> parts = [];
        foreach (string part in parted.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            string[] words = part.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            bool allNumbers = words.All(word => CountParser.TryNumber(word, out _));
            parts.AddRange(allNumbers ? words : [part]);
        }

        return parts;
    }
}

/// <summary>Rows of a settings form: a list of the document, each entry with the same fields.</summary>
/// <param name="Path">The list, for example "bathLimits".</param>
/// <param name="Single">What one entry is called: "plastic".</param>
/// <param name="Columns">Fields of an entry; their paths are names inside it.</param>
public sealed record SettingRows(string Path, string Single, IReadOnlyList<SettingField> Columns)
{
    /// <summary>Fields of the entry at a place, with their whole paths.</summary>
    public IEnumerable<SettingField> At(int index) =>
        Columns.Select(column => column with { Path = FormattableString.Invariant($"{Path}[{index}].{column.Path}") });

    /// <summary>How many entries a document has.</summary>
    public int CountIn(JsonNode? document) => (JsonPath.Find(document, Path) as JsonArray)?.Count ?? 0;
}
