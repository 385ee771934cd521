using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Formats.Forecasts;
using Coilwright.Physics;

namespace Coilwright.Formats.Curves;

/// <summary>Writes what resonances with known capacitors say in the file format "coilwright.resonance/1".</summary>
public static class ResonanceJson
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Write(ResonanceAnswer answer)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.resonance/1");
            PredictionJson.WriteQuantity(json, "inductance", answer.Solved.Inductance, "H");
            PredictionJson.WriteQuantity(json, "capacitance", answer.Solved.Capacitance, "F");
            PredictionJson.WriteQuantity(json, "resonance", Estimate.Exact(answer.ResonanceHz, Basis.Measured), "Hz");
            if (answer.Meter is { } meter)
            {
                json.WriteStartObject("reading");
                json.WriteNumber("frequency", meter.Hz);
                json.WriteNumber("apparent", meter.H);
                if (double.IsFinite(answer.Error))
                {
                    json.WriteNumber("apparentError", answer.Error);
                }

                json.WriteBoolean("tooNearResonance", answer.IsRefused);
                if (answer.CorrectedH is { } corrected)
                {
                    PredictionJson.WriteQuantity(json, "inductance", Estimate.Exact(corrected, Basis.Measured), "H");
                }

                json.WriteEndObject();
            }

            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
