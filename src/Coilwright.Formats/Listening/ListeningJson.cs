using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Formats.Forecasts;
using Coilwright.Physics;

namespace Coilwright.Formats.Listening;

/// <summary>Writes what was heard in the file format "coilwright.listening/1".</summary>
public static class ListeningJson
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The answer as JSON text.</summary>
    public static string Write(ListeningAnswer answer)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.listening/1");
            json.WriteString("name", answer.Name);
            WriteString(json, answer);
            WriteSound(json, answer);
            WritePartials(json, answer.Partials);
            WriteNotches(json, answer);
            WriteAssumed(json, answer.Assumed);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void WriteString(Utf8JsonWriter json, ListeningAnswer answer)
    {
        json.WriteStartObject("string");
        json.WriteNumber("number", answer.StringNumber);
        foreach (PlayedQuantity one in answer.Played)
        {
            PredictionJson.WriteQuantity(json, one.Key, one.Value, one.Unit);
        }

        json.WriteEndObject();
    }

    private static void WriteSound(Utf8JsonWriter json, ListeningAnswer answer)
    {
        json.WriteStartObject("sound");
        json.WriteNumber("rate", answer.RateHz);
        Quantity(json, "duration", answer.DurationS, "s");
        Quantity(json, "peak", answer.PeakV, "V");
        Quantity(json, "rms", answer.RmsV, "V");
        Quantity(json, "fullScale", answer.FullScaleV, "V");
        json.WriteEndObject();
    }

    private static void WritePartials(Utf8JsonWriter json, IReadOnlyList<HeardPartial> partials)
    {
        json.WriteStartArray("partials");
        foreach (HeardPartial one in partials)
        {
            json.WriteStartObject();
            json.WriteNumber("number", one.Partial.Number);
            json.WriteNumber("frequency", one.Partial.FrequencyHz);
            json.WriteNumber("displacement", one.Partial.DisplacementM);
            json.WriteNumber("decay", one.Partial.DecayPerS);
            json.WriteNumber("level", one.LevelDb);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteNotches(Utf8JsonWriter json, ListeningAnswer answer)
    {
        json.WriteStartObject("notches");
        WriteNumbers(json, "place", answer.Notches.ByPlaceHz);
        WriteNumbers(json, "aperture", answer.Notches.ByApertureHz);
        json.WriteEndObject();
    }

    private static void WriteNumbers(Utf8JsonWriter json, string name, IReadOnlyList<double> values)
    {
        json.WriteStartArray(name);
        foreach (double value in values)
        {
            json.WriteNumberValue(value);
        }

        json.WriteEndArray();
    }

    private static void WriteAssumed(Utf8JsonWriter json, IReadOnlyList<string> sentences)
    {
        json.WriteStartArray("assumed");
        foreach (string sentence in sentences)
        {
            json.WriteStringValue(sentence);
        }

        json.WriteEndArray();
    }

    private static void Quantity(Utf8JsonWriter json, string name, double? value, string unit)
    {
        if (value is { } known)
        {
            PredictionJson.WriteQuantity(json, name, Estimate.Exact(known, Basis.Forecast), unit);
        }
    }
}
