using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.Originals;
using Coilwright.Formats.Forecasts;

namespace Coilwright.Formats.Originals;

/// <summary>Writes what an original was made of in the public file format "coilwright.explanations/1".</summary>
public static class OriginalJson
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>A quantity's name in the file formats.</summary>
    public static string NameOf(OriginalQuantity quantity) => JsonNamingPolicy.CamelCase.ConvertName(quantity.ToString());

    /// <summary>The text of the file, indented.</summary>
    /// <param name="answer">The answer.</param>
    public static string Write(OriginalAnswer answer)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.explanations/1");
            json.WriteStartArray("explanations");
            foreach (OriginalExplanation one in answer.Explanations)
            {
                json.WriteStartObject();
                json.WriteString("gauge", one.Gauge);
                json.WriteString("build", one.Build);
                json.WriteNumber("probability", one.Probability);
                PredictionJson.WriteQuantity(json, "turns", one.Turns, "1");
                PredictionJson.WriteQuantity(json, "bareDiameter", one.BareDiameterM, "m");
                json.WriteEndObject();
            }

            json.WriteEndArray();
            WriteMarginals(json, answer);
            json.WriteStartArray("nextReading");
            foreach (NextReading next in answer.NextReadings)
            {
                json.WriteStartObject();
                json.WriteString("quantity", NameOf(next.Quantity));
                json.WriteNumber("uncertainty", next.Relative);
                json.WriteNumber("information", next.InformationBits);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteBoolean("converged", answer.Converged);
            if (answer.Stopped)
            {
                json.WriteBoolean("stopped", true);
            }

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
        PredictionJson.WriteQuantity(json, "turns", answer.Turns, "1");
        PredictionJson.WriteQuantity(json, "bareDiameter", answer.BareDiameterM, "m");
        PredictionJson.WriteQuantity(json, "overallDiameter", answer.OverallDiameterM, "m");
        foreach (
            (string name, IReadOnlyDictionary<string, double> shares) in ((string, IReadOnlyDictionary<string, double>)[])
                [("gauge", answer.ByGauge), ("build", answer.ByBuild), ("poleMaterial", answer.ByPoleMaterial)]
        )
        {
            if (shares.Count > 0)
            {
                json.WriteStartObject(name);
                foreach ((string key, double share) in shares.OrderByDescending(share => share.Value))
                {
                    json.WriteNumber(key, share);
                }

                json.WriteEndObject();
            }
        }

        json.WriteEndObject();
    }
}
