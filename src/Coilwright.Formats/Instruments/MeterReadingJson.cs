using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Formats.Instruments;

/// <summary>Writes what an instrument read in the file format "coilwright.meterReading/1".</summary>
public static class MeterReadingJson
{
    /// <summary>The text of the file; <c>value</c> is missing where the instrument was over range.</summary>
    /// <param name="answer">What it read.</param>
    /// <param name="indented">False for one line, as one of many.</param>
    public static string Write(MeterAnswer answer, bool indented = true)
    {
        using MemoryStream stream = new();
        using (
            Utf8JsonWriter json = new(
                stream,
                new JsonWriterOptions { Indented = indented, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }
            )
        )
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.meterReading/1");
            json.WriteString("quantity", answer.Quantity);
            if (answer.Value is { } value)
            {
                json.WriteStartObject("value");
                json.WriteNumber("value", value);
                json.WriteString("unit", answer.Unit);
                json.WriteString("basis", "measured");
                json.WriteEndObject();
            }

            json.WriteBoolean("overload", answer.IsOverRange);
            json.WriteString("raw", answer.Raw);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
