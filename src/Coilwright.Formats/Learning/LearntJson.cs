using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.Quantities;
using Coilwright.Formats.Forecasts;
using Coilwright.Physics;
using Coilwright.Workshop.Learning;

namespace Coilwright.Formats.Learning;

/// <summary>Writes what a shop has learnt in the file format "coilwright.learnt/1".</summary>
public static class LearntJson
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The document.</summary>
    public static string Write(LearningStatus status)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.learnt/1");
            json.WriteStartObject("coils");
            json.WriteNumber(QuantityKey.DcResistance, status.OhmCoils);
            json.WriteNumber(QuantityKey.Inductance, status.HenryCoils);
            json.WriteNumber("withoutTemperature", status.WithoutTemperature);
            json.WriteEndObject();
            if (status.Waiting is { } waiting)
            {
                json.WriteStartObject("proposal");
                json.WriteNumber("number", waiting.Set.Number);
                WriteLines(json, waiting.Set);
                WriteMoves(json, status.Moves);
                if (status.Hindsight is { } hindsight)
                {
                    json.WriteStartObject("pastCoils");
                    json.WriteNumber("coils", hindsight.Coils);
                    json.WriteNumber("otherwise", hindsight.Otherwise);
                    json.WriteEndObject();
                }

                json.WriteEndObject();
            }

            if (status.WhyNot.Length > 0)
            {
                json.WriteString("whyNot", status.WhyNot);
            }

            WriteSets(json, status.Sets);
            WriteLines(json, status.Lines);
            json.WriteStartArray("unreadable");
            foreach (string one in status.Unreadable.Select(one => $"{one.Name}: {one.Why}"))
            {
                json.WriteStringValue(one);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void WriteLines(Utf8JsonWriter json, LearntSet set)
    {
        json.WriteStartArray("corrections");
        foreach (LearntLine line in set.Lines)
        {
            json.WriteStartObject();
            json.WriteString("line", line.Name);
            json.WriteString("quantity", line.Quantity);
            json.WriteString("bobbin", line.Bobbin);
            json.WriteString("of", line.Of);
            json.WriteNumber("coils", line.Coils);
            json.WriteNumber("leftOut", line.LeftOut);
            json.WriteNumber("scatter", line.Scatter);
            WritePart(json, "correction", line.Correction, line.Half);
            json.WriteBoolean("apart", line.Apart);
            if (line.Apart)
            {
                WritePart(json, "meanTurn", line.OfBobbin, line.OfBobbinHalf);
                WritePart(json, "ohmsPerMetre", line.OfWire, line.OfWireHalf);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WritePart(Utf8JsonWriter json, string name, double part, double half) =>
        PredictionJson.WriteQuantity(json, name, new Estimate(part, part - half, part + half, Basis.Learnt), "1");

    private static void WriteMoves(Utf8JsonWriter json, IReadOnlyList<LearntMove> moves)
    {
        json.WriteStartArray("moves");
        foreach (LearntMove move in moves)
        {
            string unit = move.Quantity == QuantityKey.DcResistance ? "Ω" : "H";
            json.WriteStartObject();
            json.WriteString("recipe", move.Recipe);
            json.WriteString("revision", move.Letter);
            json.WriteString("coil", move.Coil);
            json.WriteString("quantity", move.Quantity);
            json.WriteString("spool", move.Spool);
            PredictionJson.WriteQuantity(json, "plain", move.Plain, unit);
            PredictionJson.WriteQuantity(json, "learnt", move.Learnt, unit);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteSets(Utf8JsonWriter json, IReadOnlyList<SetStatus> sets)
    {
        json.WriteStartArray("sets");
        foreach (SetStatus one in sets)
        {
            json.WriteStartObject();
            json.WriteNumber("number", one.Set.Number);
            json.WriteString("state", one.State);
            json.WriteString("proposed", one.Proposal.TimeUtc);
            if (one.Decision is { } decision)
            {
                json.WriteString("decided", decision.TimeUtc);
                json.WriteString("reason", decision.Reason);
                json.WriteString("person", decision.Person);
            }

            WriteLines(json, one.Set);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteLines(Utf8JsonWriter json, IReadOnlyList<LineOfCoils> lines)
    {
        json.WriteStartArray("lines");
        foreach (LineOfCoils line in lines)
        {
            json.WriteStartObject();
            json.WriteString("name", line.Name);
            json.WriteString("what", line.Words);
            json.WriteNumber("coils", line.Coils);
            if (line.Ending is { } ending)
            {
                json.WriteString("ended", ending.TimeUtc);
                json.WriteString("reason", ending.Reason);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
