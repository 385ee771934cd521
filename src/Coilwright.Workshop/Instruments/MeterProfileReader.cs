using System.Text.Json;
using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Quantities;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Workshop.Instruments;

/// <summary>Reads how an instrument is asked (format coilwright.meter/1) and tells every mistake at once.</summary>
public static class MeterProfileReader
{
    /// <summary>The format's name.</summary>
    public const string Format = "coilwright.meter/1";

    /// <summary>The name of a temperature among the quantities of readings.</summary>
    public const string Temperature = "temperature";

    private const int MostWords = 50;

    /// <summary>What each kind of unit reads, unless the profile names the quantity.</summary>
    private static readonly (QuantityKind Kind, string Usual, string[] Others)[] s_kinds =
    [
        (QuantityKind.Resistance, QuantityKey.DcResistance, [QuantityKey.AcResistance]),
        (QuantityKind.Inductance, QuantityKey.Inductance, []),
        (QuantityKind.Capacitance, QuantityKey.Capacitance, []),
        (QuantityKind.Temperature, Temperature, []),
        (QuantityKind.Frequency, QuantityKey.LoadedPeak, [QuantityKey.UnloadedPeak]),
        (QuantityKind.FluxDensity, QuantityKey.PoleField, []),
    ];

    private static readonly Limits s_settle = new(QuantityKind.Duration, 0, 60, "s", "0.3 s");
    private static readonly Limits s_wait = new(QuantityKind.Duration, 0.01, 120, "s", "5 s");
    private static readonly Limits s_still = new(QuantityKind.Fraction, 0, 0.1, "%", "0.05 %");

    /// <summary>The profile of a file, or every problem.</summary>
    /// <param name="json">The text of the file.</param>
    public static ReadOutcome<MeterProfile> Read(string json) => JsonDocumentReader.Read(json, Format, Whole, pointOnly: true);

    /// <summary>A profile inside another document, with or without its format.</summary>
    internal static MeterProfile Fields(JsonFields fields)
    {
        fields.Free("format");
        return Whole(fields);
    }

    private static MeterProfile Whole(JsonFields fields)
    {
        fields.Free("notes");
        Unit unit = UnitOf(fields, out QuantityKind kind);
        (int place, bool counted) = PlaceOf(fields);
        string overload = fields.Text("overload");
        return new MeterProfile
        {
            Name = fields.Text("name", "bench meter"),
            Quantity = QuantityOf(fields, kind),
            Kind = kind,
            Unit = unit,
            Begin = fields.Items("begin", (value, path) => Line(fields, value, path), MostWords),
            Ask = fields.Text("ask"),
            End = EndOf(fields),
            Place = place,
            IsPlaceCounted = counted,
            HasDecimalComma = fields.Word("decimal", ["point", "comma"]) == "comma",
            Words = WordsOf(fields, kind),
            Overload = overload.Length > 0 ? overload : "9.9E37",
            Settle = Time(fields.Optional("settle", s_settle)) ?? MeterProfile.UsualSettle,
            Wait = Time(fields.Optional("wait", s_wait)) ?? MeterProfile.UsualWait,
            Still = fields.Optional("still", s_still)?.Si ?? MeterProfile.UsualStill,
            Serial = fields.Object("serial", SerialOf) ?? new SerialLine(),
        };
    }

    private static TimeSpan? Time(Entered? entered) =>
        entered is { Si: var seconds } && double.IsFinite(seconds) ? TimeSpan.FromSeconds(seconds) : null;

    private static Unit UnitOf(JsonFields fields, out QuantityKind kind)
    {
        string typed = fields.Text("unit", "Ω");
        (QuantityKind Kind, Unit? Unit)[] found = [.. s_kinds.Select(one => (one.Kind, UnitTable.Find(one.Kind, typed)))];
        // A letter that is one kind's unit and another's short form is the unit: "G" is gauss, not gigaohm.
        int at = Array.FindIndex(found, one => one.Unit?.Symbol == typed);
        at = at < 0 ? Array.FindIndex(found, one => one.Unit is not null) : at;
        if (at >= 0)
        {
            kind = found[at].Kind;
            return found[at].Unit!;
        }

        if (typed.Length > 0)
        {
            string known = string.Join("; ", s_kinds.Select(one => QuantityParser.UnitsOf(one.Kind)));
            fields.Problems.Add("unit", "not a unit that an instrument is read in here", $"\"{typed}\"", known);
        }

        kind = QuantityKind.Resistance;
        return UnitTable.Of(kind)[0];
    }

    private static string QuantityOf(JsonFields fields, QuantityKind kind)
    {
        (_, string usual, string[] others) = Array.Find(s_kinds, one => one.Kind == kind);
        string? named = fields.Word("quantity", [.. s_kinds.SelectMany(one => one.Others.Prepend(one.Usual))]);
        if (named is not null && named != usual && !others.Contains(named))
        {
            string label = Quantity.Find(named)?.Label ?? named;
            fields.Problems.Add(
                "quantity",
                $"{label} is not read in the unit of this profile",
                $"\"{named}\"",
                string.Join(", ", others.Prepend(usual))
            );
        }

        return named ?? usual;
    }

    private static (int Place, bool IsCounted) PlaceOf(JsonFields fields)
    {
        if (fields.Own("number") is not { } value)
        {
            return (1, false);
        }

        if (value.ValueKind == JsonValueKind.Number && value.TryGetInt32(out int place) && place is >= 1 and <= 20)
        {
            return (place, true);
        }

        string? word = value.ValueKind == JsonValueKind.String ? value.GetString() : null;
        if (word is not ("first" or "last"))
        {
            fields.Problems.Add(
                "number",
                "which number of the line is the reading?",
                JsonFields.Told(value),
                "\"first\", \"last\" or 1 to 20"
            );
        }

        return (word == "last" ? 0 : 1, false);
    }

    private static string EndOf(JsonFields fields)
    {
        if (fields.Own("end") is not { } value)
        {
            return "\n";
        }

        string? end = value.ValueKind == JsonValueKind.String ? value.GetString() : null;
        if (end is "\n" or "\r" or "\r\n" or ";")
        {
            return end;
        }

        fields.Problems.Add("end", "not an end of a line", JsonFields.Told(value), "\"\\n\", \"\\r\", \"\\r\\n\" or \";\"");
        return "\n";
    }

    private static Dictionary<string, Unit?> WordsOf(JsonFields fields, QuantityKind kind)
    {
        Dictionary<string, Unit?> words = new(StringComparer.OrdinalIgnoreCase);
        if (fields.Own("words") is not { } value)
        {
            return words;
        }

        if (value.ValueKind != JsonValueKind.Object || value.EnumerateObject().Count() > MostWords)
        {
            fields.Problems.Add(
                "words",
                "the instrument's own words for units, each with ours",
                JsonFields.Told(value),
                "{ \"KOHM\": \"kΩ\" }"
            );
            return words;
        }

        foreach (JsonProperty word in value.EnumerateObject())
        {
            string unit = word.Value.ValueKind == JsonValueKind.String ? word.Value.GetString()!.Trim() : "?";
            Unit? found = unit.Length == 0 ? null : UnitTable.Find(kind, unit);
            if (unit.Length > 0 && found is null)
            {
                string allowed = QuantityParser.UnitsOf(kind) + "; \"\" for a word that means nothing";
                fields.Problems.Add($"words.{word.Name}", "not a unit of what this profile reads", JsonFields.Told(word.Value), allowed);
            }

            words[word.Name.Trim()] = found;
        }

        return words;
    }

    private static SerialLine SerialOf(JsonFields fields)
    {
        SerialLine usual = new();
        return new SerialLine(
            Whole(fields, "baud", 50, 4_000_000, usual.Baud),
            Whole(fields, "dataBits", 7, 8, usual.DataBits),
            fields.Word("parity", ["none", "even", "odd"]) ?? usual.Parity,
            Whole(fields, "stopBits", 1, 2, usual.StopBits)
        );
    }

    private static int Whole(JsonFields fields, string name, int low, int high, int unsaid) =>
        fields.Number(name, low, high, whole: true) is { } number && double.IsFinite(number) ? (int)number : unsaid;

    private static string? Line(JsonFields fields, JsonElement value, string path)
    {
        if (value.ValueKind == JsonValueKind.String && value.GetString() is { Length: > 0 and <= 200 } line)
        {
            return line;
        }

        fields.Problems.Add(path, "a line to send is needed here, 200 characters at most", JsonFields.Told(value));
        return null;
    }
}
