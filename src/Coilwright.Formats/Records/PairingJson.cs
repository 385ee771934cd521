using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.Pairing;
using Coilwright.Formats.Forecasts;
using Coilwright.Formats.Tables;

namespace Coilwright.Formats.Records;

/// <summary>Writes pairings in the file format "coilwright.pairing/1".</summary>
public static class PairingJson
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Write(IReadOnlyList<CoilRow> coils, IReadOnlyList<string> by, PairingAnswer answer)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.pairing/1");
            json.WriteStartArray("by");
            foreach (string quantity in by)
            {
                json.WriteStringValue(quantity);
            }

            json.WriteEndArray();
            json.WriteStartArray("pairs");
            foreach (CoilPair pair in answer.Pairs)
            {
                WritePair(json, coils[pair.A], coils[pair.B], pair.Difference);
            }

            json.WriteEndArray();
            json.WriteStartArray("left");
            foreach (int place in answer.Left)
            {
                json.WriteStringValue(coils[place].Tag);
            }

            json.WriteEndArray();
            json.WriteNumber("total", answer.Total);
            WriteColumns(json, coils);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void WritePair(Utf8JsonWriter json, CoilRow a, CoilRow b, double difference)
    {
        json.WriteStartObject();
        json.WriteString("a", a.Tag);
        json.WriteString("b", b.Tag);
        json.WriteNumber("difference", difference);
        if (a.Values.TryGetValue("turns", out double first) && b.Values.TryGetValue("turns", out double second))
        {
            PredictionJson.WriteQuantity(json, "residualHum", HumResidue.Level(first, second), "dB");
        }

        json.WriteEndObject();
    }

    private static void WriteColumns(Utf8JsonWriter json, IReadOnlyList<CoilRow> coils)
    {
        if (coils.All(coil => coil.Carried.Count == 0))
        {
            return;
        }

        json.WriteStartObject("columns");
        foreach (CoilRow coil in coils.Where(coil => coil.Carried.Count > 0))
        {
            json.WriteStartObject(coil.Tag);
            foreach ((string heading, string cell) in coil.Carried)
            {
                json.WriteString(heading, cell);
            }

            json.WriteEndObject();
        }

        json.WriteEndObject();
    }
}
