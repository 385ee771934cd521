using System.Globalization;
using System.Text.Json.Nodes;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Sets;

namespace Coilwright.Workshop.Interpretations;

/// <summary>Says of every field a person types into how its text is understood: the one place for pages and documents.</summary>
/// <remarks>
/// A field is named by its path in a recipe ("coils[0].winding.turns") or by form and field ("spool.received", "test.inductance").
/// </remarks>
public static class FieldInterpreter
{
    private const string Yes = "yes",
        No = "no";

    /// <summary>What is known of a field's text.</summary>
    /// <param name="field">Name of the field.</param>
    /// <param name="typed">What stands in it.</param>
    /// <param name="expectedOhm">What a good coil reads, where a resistance is entered of one: it decides what "6,210" means.</param>
    public static Interpretation Read(string field, string typed, double? expectedOhm = null)
    {
        string text = typed.Trim();
        if (text.Length == 0)
        {
            return new Interpretation("", null);
        }

        return FieldRanges.KindOf(field) switch
        {
            FieldKind.Gauge => Gauge(text),
            FieldKind.Count => Count(text),
            FieldKind.Number => Number(text),
            FieldKind.Turns => Turns(text),
            FieldKind.Charge => Charge(text),
            FieldKind.Decibels => Decibels(text),
            FieldKind.Quantity => Quantity(field, text, expectedOhm),
            FieldKind.Word => Word(field, text),
            FieldKind.Truth => Truth(text),
            _ => new Interpretation("", JsonValue.Create(text)),
        };
    }

    /// <summary>What a form shows of a document's text: a key as its label.</summary>
    /// <param name="field">Name of the field.</param>
    /// <param name="text">As the document holds it.</param>
    public static string Shown(string field, string text) =>
        FieldRanges.KindOf(field) switch
        {
            FieldKind.Word => KeyLabels.Of(text),
            FieldKind.Truth when text is "true" or "false" => text == "true" ? Yes : No,
            _ => text,
        };

    private static Interpretation Truth(string text) =>
        text.ToUpperInvariant() switch
        {
            "YES" or "TRUE" => new Interpretation("", JsonValue.Create(true)),
            "NO" or "FALSE" => new Interpretation("", JsonValue.Create(false)),
            _ => new Interpretation("", JsonValue.Create(text)),
        };

    private static Interpretation Word(string field, string text)
    {
        string key = KeyLabels.KeyOf(text, FieldRanges.WordsOf(field));
        return new Interpretation("", JsonValue.Create(key));
    }

    private static Interpretation Gauge(string text)
    {
        if (WireCatalogue.Standard.Find(text) is not { } size)
        {
            return new Interpretation("", JsonValue.Create(text));
        }

        string words = size.IsMetric
            ? $"{size.Gauge} of the metric series"
            : $"{size.Gauge}, {QuantityParser.FormatIn(size.Bare.NominalM, QuantityKind.Length, "mm")}";
        return new Interpretation(words, JsonValue.Create(size.Gauge));
    }

    private static Interpretation Count(string text) =>
        CountParser.TryParse(text, int.MinValue, int.MaxValue, out int count, out _)
            ? new Interpretation(count.ToString("#,##0", CultureInfo.InvariantCulture), JsonValue.Create((double)count))
            : new Interpretation("", JsonValue.Create(text));

    private static Interpretation Number(string text) =>
        CountParser.TryNumber(text, out double number)
            ? new Interpretation(number.ToString("0.######", CultureInfo.InvariantCulture), JsonValue.Create(number))
            : new Interpretation("", JsonValue.Create(text));

    private static Interpretation Turns(string text) =>
        QuantityParser.TryParse(text, QuantityKind.Turns, unitRequired: false, out Entered entered, out _)
            ? new Interpretation(QuantityParser.Echo(entered, QuantityKind.Turns), JsonValue.Create(entered.Si))
            : new Interpretation("", JsonValue.Create(text));

    private static Interpretation Quantity(string field, string text, double? expectedOhm)
    {
        (Limits limits, string? customary, bool unitRequired) = FieldRanges.Of(field);
        if (QuantityParser.IsOpen(text) && limits.Kind == QuantityKind.Resistance)
        {
            return new Interpretation("open", JsonValue.Create(text));
        }

        Limits deciding = limits.Kind == QuantityKind.Resistance && expectedOhm is { } ohm ? PossibleReading.Near(ohm) : limits;
        if (FieldRanges.IsSize(field))
        {
            return Told(SizeParser.Read(text, limits, unitRequired, customary), limits, text);
        }

        ParsedQuantity read = QuantityParser.Read(text, deciding, unitRequired, customary);
        if (limits.Kind == QuantityKind.Resistance && PossibleReading.IsOverRange(read.Entered.Si))
        {
            return new Interpretation(PossibleReading.Open, JsonValue.Create(text));
        }

        return Told(read, limits, text);
    }

    private static string Echo(Entered entered, QuantityKind kind) =>
        kind == QuantityKind.Length ? SizeParser.Echo(entered) : QuantityParser.Echo(entered, kind);

    private static Interpretation Charge(string text)
    {
        (ParsedQuantity read, Limits limits) = ChargeReader.Understand(text);
        return text.Equals("full", StringComparison.OrdinalIgnoreCase)
            ? new Interpretation("full", JsonValue.Create(text))
            : Told(read, limits, text);
    }

    private static Interpretation Decibels(string text) =>
        SetPlaceReader.TryDecibels(text, out double db)
            ? new Interpretation(db.ToString("+0.##;−0.##;0", CultureInfo.InvariantCulture) + " dB", JsonValue.Create(text))
            : new Interpretation("", JsonValue.Create(text));

    private static Interpretation Told(ParsedQuantity read, Limits limits, string text)
    {
        if (!read.Entered.IsKnown)
        {
            string why = read.Allowed is { } allowed ? $"{read.Why}: {allowed}" : "",
                which = read.Readings.Count > 0 ? $"which of the two is \"{text}\"?" : why;
            return new Interpretation(which, JsonValue.Create(text)) { Readings = read.Readings };
        }

        string echo = read.Note.Length > 0 ? read.Note : Echo(read.Entered, limits.Kind);
        bool plain = text.AsSpan().IndexOfAny(',', '\'') < 0 && read.Note.Length == 0;
        return new Interpretation(
            limits.Allows(read.Entered.Si) ? echo : $"{echo}, {limits.Outside}",
            JsonValue.Create(plain ? text : read.Plain)
        );
    }
}
