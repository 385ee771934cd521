using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Originals;
using Coilwright.Physics;

namespace Coilwright.Workshop.Originals;

/// <summary>Writes what an original was made of in the public file format "coilwright.explanations/1".</summary>
public static class ExplanationsJson
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Write(OriginalAnswer answer)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.explanations/1");
            json.WriteStartArray("explanations");
            foreach (Explanation explanation in answer.Explanations)
            {
                json.WriteStartObject();
                json.WriteString("gauge", explanation.Gauge);
                json.WriteString("build", explanation.Build);
                json.WriteNumber("probability", explanation.Probability);
                PredictionJson.WriteQuantity(json, "turns", explanation.Turns, "1");
                PredictionJson.WriteQuantity(json, "bareDiameter", explanation.BareDiameterM, "m");
                json.WriteBoolean("fits", explanation.Fits);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            WriteMarginals(json, answer);
            json.WriteStartArray("nextReading");
            foreach (NextReading next in answer.NextReadings)
            {
                json.WriteStartObject();
                json.WriteString("quantity", next.Quantity);
                json.WriteNumber("information", Math.Round(next.InformationBits, 4));
                json.WriteString("words", next.Words);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteBoolean("converged", answer.Converged);
            json.WriteStartArray("warnings");
            foreach (string warning in answer.Warnings)
            {
                json.WriteStringValue(warning);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void WriteMarginals(Utf8JsonWriter json, OriginalAnswer answer)
    {
        json.WriteStartObject("marginals");
        foreach ((string of, IReadOnlyDictionary<string, double> shares) in answer.Shares)
        {
            json.WriteStartObject(of);
            foreach ((string name, double share) in shares)
            {
                json.WriteNumber(name, share);
            }

            json.WriteEndObject();
        }

        foreach ((string quantity, Estimate estimate) in answer.Quantities)
        {
            PredictionJson.WriteQuantity(json, quantity, estimate, quantity == "turns" ? "1" : "m");
        }

        json.WriteEndObject();
    }
}
