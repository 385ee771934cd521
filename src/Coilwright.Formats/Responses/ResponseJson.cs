using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Formats.Forecasts;
using Coilwright.Physics;

namespace Coilwright.Formats.Responses;

/// <summary>Writes a response in the file format "coilwright.response/1".</summary>
public static class ResponseJson
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Write(ResponseAnswer answer)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.response/1");
            if (answer.Peak is { } peak)
            {
                json.WriteStartObject("peak");
                Quantity(json, "frequency", peak.FrequencyHz, "Hz");
                Quantity(json, "gain", peak.GainDb, "dB");
                Quantity(json, "q", peak.Q, "1");
                json.WriteEndObject();
            }

            if (answer.Minus3DbHz is { } crossing)
            {
                Quantity(json, "minus3dB", crossing, "Hz");
            }

            Quantity(json, "level", answer.LevelDb, "dB");
            Quantity(json, "noise", answer.NoiseDbv, "dBV");
            WriteChange(json, answer);
            Write(json, "marks", answer.Marks, null);
            Write(json, "points", answer.Lines, answer.Against?.GainDb);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void Write(Utf8JsonWriter json, string name, IReadOnlyList<ResponseLine> lines, IReadOnlyList<double>? changes)
    {
        if (lines.Count == 0)
        {
            return;
        }

        json.WriteStartArray(name);
        for (int i = 0; i < lines.Count; i++)
        {
            json.WriteStartObject();
            json.WriteNumber("frequency", lines[i].FrequencyHz);
            json.WriteNumber("gain", lines[i].GainDb);
            json.WriteNumber("phase", lines[i].PhaseDeg);
            json.WriteNumber("impedance", lines[i].ImpedanceOhm);
            if (changes is not null)
            {
                json.WriteNumber("change", changes[i]);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteChange(Utf8JsonWriter json, ResponseAnswer answer)
    {
        if (answer.Against is not { } against)
        {
            return;
        }

        json.WriteStartObject("change");
        json.WriteString("against", against.Name);
        Quantity(json, "level", against.LevelDb, "dB");
        if (answer.Peak is { } peak && against.Peak is { } other)
        {
            Quantity(json, "peakFrequency", 100 * (peak.FrequencyHz / other.FrequencyHz - 1), "%");
            Quantity(json, "peakGain", peak.GainDb - other.GainDb, "dB");
        }

        json.WriteEndObject();
    }

    private static void Quantity(Utf8JsonWriter json, string name, double value, string unit) =>
        PredictionJson.WriteQuantity(json, name, Estimate.Exact(value, Basis.Forecast), unit);
}
