using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.Lots;

namespace Coilwright.Formats.Lots;

/// <summary>Writes what to order in the file format "coilwright.lots/1".</summary>
public static class LotsJson
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text of the file, indented; money and units are bare numbers, in whatever the question counted in.</summary>
    /// <param name="answer">The answer.</param>
    public static string Write(LotAnswer answer)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.lots/1");
            WriteOrders(json, answer.Orders);
            Number(json, "lot", answer.Lot);
            Number(json, "reorderAt", answer.ReorderAt);
            json.WriteNumber("cost", answer.Cost);
            Number(json, "coverYears", answer.CoverYears);
            Number(json, "price", answer.Price);
            Number(json, "backorderShare", answer.BackorderShare);
            Number(json, "expires", answer.Expires);
            Number(json, "safetyStock", answer.SafetyStock);
            Number(json, "serviceLevel", answer.ServiceLevel);
            Number(json, "fillRate", answer.FillRate);
            WriteShortOnce(json, answer.ShortOnce);
            json.WriteString("method", answer.Method);
            WriteNotes(json, answer.Notes);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void WriteOrders(Utf8JsonWriter json, IReadOnlyList<double>? orders)
    {
        if (orders is null)
        {
            return;
        }

        json.WriteStartArray("orders");
        foreach (double order in orders)
        {
            json.WriteNumberValue(order);
        }

        json.WriteEndArray();
    }

    private static void WriteShortOnce(Utf8JsonWriter json, ReorderPoint? once)
    {
        if (once is not { } point)
        {
            return;
        }

        json.WriteStartObject("ifShortChargedOnce");
        json.WriteNumber("lot", point.Lot);
        json.WriteNumber("reorderAt", point.At);
        json.WriteEndObject();
    }

    private static void WriteNotes(Utf8JsonWriter json, IReadOnlyList<string> notes)
    {
        json.WriteStartArray("notes");
        foreach (string note in notes)
        {
            json.WriteStringValue(note);
        }

        json.WriteEndArray();
    }

    private static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number)
        {
            json.WriteNumber(name, number);
        }
    }
}
