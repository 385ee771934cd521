using System.Globalization;
using System.Text.Json;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>
/// The fields of one object of a document: reads them with their paths, gathers every problem, and at the end reports unknown and missing
/// ones.
/// </summary>
public sealed class JsonFields
{
    private readonly Dictionary<string, JsonElement> _values = new(StringComparer.Ordinal);
    private readonly HashSet<string> _known = new(StringComparer.Ordinal);
    private readonly List<(string Name, string Example)> _missing = [];
    private readonly string _path;

    private JsonFields(JsonElement element, string path, ProblemList problems)
    {
        _path = path;
        Problems = problems;
        foreach (JsonProperty property in element.EnumerateObject())
        {
            if (!_values.TryAdd(property.Name, property.Value))
            {
                problems.Add(PathOf(property.Name), "this field is given twice; keep one of them");
            }
        }
    }

    public ProblemList Problems { get; }

    /// <summary>Reads an object; null, with a problem, when the element is none.</summary>
    public static T? Read<T>(JsonElement element, string path, ProblemList problems, Func<JsonFields, T> read)
        where T : class
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            problems.Add(path, "a group of fields is needed here, in braces { … }", Told(element));
            return null;
        }

        JsonFields fields = new(element, path, problems);
        T value = read(fields);
        fields.Finish();
        return value;
    }

    public string PathOf(string name) => _path.Length == 0 ? name : $"{_path}.{name}";

    public bool Has(string name) => _values.ContainsKey(name);

    public bool IsObject(string name) => _values.TryGetValue(name, out JsonElement value) && value.ValueKind == JsonValueKind.Object;

    public bool IsList(string name) => _values.TryGetValue(name, out JsonElement value) && value.ValueKind == JsonValueKind.Array;

    /// <summary>A quantity that must be there; <see cref="Entered.Unknown"/> when it is not, or not understood.</summary>
    public Entered Required(string name, Limits limits) => Optional(name, limits, limits.Example) ?? Entered.Unknown;

    /// <summary>A quantity that may be left out.</summary>
    public Entered? Optional(string name, Limits limits) => Optional(name, limits, null);

    /// <summary>A length of a part that must be there and may carry its ±.</summary>
    public Entered RequiredSize(string name, Limits limits) => Optional(name, limits, limits.Example, isSize: true) ?? Entered.Unknown;

    /// <summary>A length of a part that may be left out and may carry its ±.</summary>
    public Entered? OptionalSize(string name, Limits limits) => Optional(name, limits, null, isSize: true);

    private Entered? Optional(string name, Limits limits, string? exampleIfMissing, bool isSize = false)
    {
        string? asked = exampleIfMissing is null ? null : $"\"{exampleIfMissing}\"";
        return Take(name, asked) is JsonElement value ? QuantityAt(value, PathOf(name), limits, isSize) : null;
    }

    /// <summary>One quantity of the document; <see cref="Entered.Unknown"/>, with a problem, when it is not understood.</summary>
    /// <param name="value">As it stands.</param>
    /// <param name="path">Where it stands.</param>
    /// <param name="limits">Kind and range.</param>
    /// <param name="isSize">True where a ± may stand behind it.</param>
    public Entered QuantityAt(JsonElement value, string path, Limits limits, bool isSize = false)
    {
        if (value.ValueKind == JsonValueKind.Number)
        {
            Problems.Add(
                path,
                $"a bare number does not say its unit; write it as text with the unit, for example \"{limits.Example}\"",
                Told(value),
                limits.Range
            );
            return Entered.Unknown;
        }

        if (value.ValueKind != JsonValueKind.String)
        {
            Problems.Add(path, $"a quantity with its unit is needed, for example \"{limits.Example}\"", Told(value), limits.Range);
            return Entered.Unknown;
        }

        if (RefusesComma(path, value.GetString()!, typed => WaysToWrite(typed, limits), limits.Range))
        {
            return Entered.Unknown;
        }

        if (!isSize && SizeParser.HasInterval(value.GetString()!))
        {
            Problems.Add(path, "no ± is taken here; lengths of bobbin, poles, magnets, metalwork and the clearance take one", Told(value));
            return Entered.Unknown;
        }

        ParsedQuantity read = Understand(value.GetString()!, limits, isSize);
        Entered entered = read.Entered;
        if (!entered.IsKnown)
        {
            Problems.Add(path, Asked(read, limits), Told(value), read.Allowed ?? limits.Range);
            return Entered.Unknown;
        }

        if (limits.Allows(entered.Si))
        {
            return entered;
        }

        Problems.Add(path, limits.Outside, QuantityParser.Echo(entered, limits.Kind), limits.Range);
        return Entered.Unknown;
    }

    private static ParsedQuantity Understand(string typed, Limits limits, bool isSize) =>
        isSize ? SizeParser.Read(typed, limits, unitRequired: true) : QuantityParser.Read(typed, limits, unitRequired: true);

    private static string Asked(ParsedQuantity read, Limits limits) =>
        read.Allowed is null ? $"{read.Why}; for example \"{limits.Example}\"" : read.Why;

    /// <summary>
    /// True, with a problem that says what to write, for a comma in a number of a file: there the point alone is decimal.
    /// </summary>
    /// <param name="path">Where it stands.</param>
    /// <param name="typed">What stands there.</param>
    /// <param name="instead">What may stand there in its place.</param>
    /// <param name="allowed">What is allowed.</param>
    public bool RefusesComma(string path, string typed, Func<string, IReadOnlyList<string>> instead, string? allowed)
    {
        if (!Problems.PointOnly || !typed.Contains(',', StringComparison.Ordinal))
        {
            return false;
        }

        string ways = string.Join(" or ", instead(typed).Select(way => $"\"{way}\""));
        Problems.Add(path, $"in a file the point alone is the decimal sign; write {ways}", $"\"{typed}\"", allowed);
        return true;
    }

    private static IReadOnlyList<string> WaysToWrite(string typed, Limits limits)
    {
        ParsedQuantity read = Understand(typed, limits, SizeParser.HasInterval(typed));
        string one = read.Plain.Length > 0 ? read.Plain : limits.Example;
        return read.Readings.Count > 0 ? read.Readings : [one];
    }

    /// <summary>A plain number; NaN when missing or wrong.</summary>
    public double? Number(string name, double min, double max, bool required = false, bool whole = false)
    {
        string allowed = FormattableString.Invariant($"{(whole ? "a whole number, " : "")}{min} to {max}");
        if (Take(name, required ? min.ToString(CultureInfo.InvariantCulture) : null) is not JsonElement value)
        {
            return required ? double.NaN : null;
        }

        if (value.ValueKind != JsonValueKind.Number)
        {
            Problems.Add(
                PathOf(name),
                value.ValueKind == JsonValueKind.String && Problems.PointOnly
                    ? $"this is not a number; write it without quotes, for example {Sample(min, max)}"
                    : "this is not a number",
                Told(value),
                allowed
            );
            return double.NaN;
        }

        double number = value.TryGetDouble(out double read) ? read : double.PositiveInfinity;
        if (!double.IsFinite(number) || number < min || number > max || (whole && Math.Abs(number - Math.Round(number)) > 0))
        {
            Problems.Add(PathOf(name), "outside what is possible here", Told(value), allowed);
            return double.NaN;
        }

        return number;
    }

    /// <summary>A text; empty when left out.</summary>
    public string Text(string name, string? exampleIfRequired = null)
    {
        if (Take(name, exampleIfRequired is null ? null : $"\"{exampleIfRequired}\"") is not JsonElement value)
        {
            return "";
        }

        string text = value.ValueKind == JsonValueKind.String ? value.GetString()!.Trim() : "";
        if (value.ValueKind != JsonValueKind.String || (exampleIfRequired is not null && text.Length == 0) || text.Length > 200)
        {
            Problems.Add(
                PathOf(name),
                Problems.PointOnly && value.ValueKind != JsonValueKind.String
                    ? "a text in quotes is needed here"
                    : "a text is needed here, 200 characters at most",
                Told(value)
            );
        }

        return text;
    }

    /// <summary>One of a few words; null when left out or unknown.</summary>
    public string? Word(string name, IReadOnlyCollection<string> choices, bool required = false)
    {
        if (Take(name, required ? $"\"{choices.First()}\"" : null) is not JsonElement value)
        {
            return null;
        }

        string? word = value.ValueKind == JsonValueKind.String ? value.GetString() : null;
        if (word is not null && choices.Contains(word))
        {
            return word;
        }

        string? nearest = word is null ? null : NearNames.Nearest(word, choices);
        string hint = nearest is null ? "" : $"; the nearest is \"{nearest}\"";
        Problems.Add(PathOf(name), $"not one of the words known here{hint}", Told(value), string.Join(", ", choices));
        return null;
    }

    /// <summary>True or false; null when left out or neither.</summary>
    public bool? Truth(string name)
    {
        if (Take(name, null) is not JsonElement value)
        {
            return null;
        }

        if (value.ValueKind is JsonValueKind.True or JsonValueKind.False)
        {
            return value.GetBoolean();
        }

        Problems.Add(
            PathOf(name),
            Problems.PointOnly ? "true or false is needed here, without quotes" : "yes or no is needed here",
            Told(value),
            Problems.PointOnly ? "true, false" : "yes, no"
        );
        return null;
    }

    /// <summary>An object that may be left out.</summary>
    public T? Object<T>(string name, Func<JsonFields, T> read, string? exampleIfRequired = null)
        where T : class => Take(name, exampleIfRequired) is JsonElement value ? Read(value, PathOf(name), Problems, read) : null;

    /// <summary>A list that may be left out; an entry that could not be read is null, so that the others keep their places.</summary>
    public IReadOnlyList<T> Items<T>(string name, Func<JsonElement, string, T?> read, int longest, string? exampleIfRequired = null)
        where T : class
    {
        if (Take(name, exampleIfRequired) is not JsonElement value)
        {
            return [];
        }

        if (value.ValueKind != JsonValueKind.Array || value.GetArrayLength() > longest)
        {
            Problems.Add(
                PathOf(name),
                "a list [ … ] is needed here",
                Told(value),
                $"at most {longest.ToString(CultureInfo.InvariantCulture)} entries"
            );
            return [];
        }

        List<T> items = [];
        foreach (JsonElement item in value.EnumerateArray())
        {
            string path = $"{PathOf(name)}[{items.Count.ToString(CultureInfo.InvariantCulture)}]";
            items.Add(read(item, path)!);
        }

        return items;
    }

    /// <summary>A list of objects.</summary>
    public IReadOnlyList<T> Objects<T>(string name, Func<JsonFields, T> read, int longest, string? exampleIfRequired = null)
        where T : class => Items(name, (item, path) => Read(item, path, Problems, read), longest, exampleIfRequired);

    /// <summary>A list of quantities; null when left out.</summary>
    public IReadOnlyList<Entered>? Quantities(
        string name,
        Limits limits,
        int longest,
        string? exampleIfRequired = null,
        bool areSizes = false
    ) =>
        Has(name) || exampleIfRequired is not null
            ?
            [
                .. Items(name, (item, path) => new Boxed(QuantityAt(item, path, limits, areSizes)), longest, exampleIfRequired)
                    .Select(box => box.Value),
            ]
            : null;

    /// <summary>Fields whose content is the shop's own.</summary>
    public void Free(params ReadOnlySpan<string> names)
    {
        foreach (string name in names)
        {
            _known.Add(name);
        }
    }

    /// <summary>A field whose content is the shop's own, as it stands; null when left out.</summary>
    public JsonElement? Own(string name) => Take(name, null);

    /// <summary>A field that is known but has no place in this object as it stands.</summary>
    public void Refuse(string name, string because)
    {
        _known.Add(name);
        if (_values.TryGetValue(name, out JsonElement value))
        {
            Problems.Add(PathOf(name), because, Told(value));
        }
    }

    private static string Sample(double min, double max) => (min <= 1 && max >= 1 ? 1 : min).ToString(CultureInfo.InvariantCulture);

    /// <summary>The value as it stands in the document, shortened.</summary>
    public static string Told(JsonElement value)
    {
        string raw = value.GetRawText();
        return raw.Length <= 60 ? raw : raw[..57] + "…";
    }

    private JsonElement? Take(string name, string? exampleIfRequired)
    {
        _known.Add(name);
        if (_values.TryGetValue(name, out JsonElement value))
        {
            return value;
        }

        if (exampleIfRequired is not null)
        {
            _missing.Add((name, exampleIfRequired));
        }

        return null;
    }

    private void Finish()
    {
        foreach (string name in _values.Keys.Where(name => !_known.Contains(name)))
        {
            string? nearest = NearNames.Nearest(name, _known);
            if (nearest is not null)
            {
                _missing.RemoveAll(missing => missing.Name == nearest);
            }

            string hint = nearest is null ? "" : $"; the nearest known name is \"{nearest}\"";
            Problems.Add(
                PathOf(name),
                $"unknown field{hint}",
                Told(_values[name]),
                string.Join(", ", _known.Order(StringComparer.Ordinal))
            );
        }

        foreach ((string name, string example) in _missing)
        {
            Problems.Add(
                PathOf(name),
                Problems.PointOnly
                    ? $"this field is missing; for example \"{name}\": {example}"
                    : $"this is missing; for example {example.Trim('"')}"
            );
        }
    }

    private sealed record Boxed(Entered Value);
}
