using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.Spread;

namespace Coilwright.Formats.Forecasts;

/// <summary>Writes a run's spread in the public file format "coilwright.spread/1".</summary>
public static class SpreadJson
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text of the file, indented.</summary>
    /// <param name="run">The run.</param>
    public static string Write(RunSpread run)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.spread/1");
            json.WriteNumber("samples", run.Samples);
            json.WriteNumber("seed", run.Seed);
            if (run.Stopped)
            {
                json.WriteBoolean("stopped", true);
            }

            json.WriteStartObject("quantities");
            foreach (QuantitySpread quantity in run.Quantities)
            {
                WriteQuantity(json, quantity);
            }

            json.WriteEndObject();
            json.WriteStartArray("remedies");
            foreach (SpreadRemedy remedy in run.Remedies)
            {
                json.WriteStartObject();
                json.WriteString("remedy", remedy.Remedy);
                json.WriteString("words", remedy.Words);
                WriteNumbers(json, "standardDeviation", remedy.StandardDeviation);
                WriteNumbers(json, "outsideTarget", remedy.OutsideTarget);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            WriteKnown(json, "fieldModelError", run.FieldModelError);
            WriteCheck(json, run.FieldCheck);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    /// <summary>What was not reached before it was stopped is left out.</summary>
    private static void WriteKnown(Utf8JsonWriter json, string name, double value)
    {
        if (double.IsFinite(value))
        {
            json.WriteNumber(name, value);
        }
    }

    private static void WriteCheck(Utf8JsonWriter json, FieldCheck check)
    {
        json.WriteStartObject("fieldCheck");
        json.WriteNumber("samples", check.Samples);
        json.WriteStartObject("quantities");
        foreach (FieldCheckLine line in check.Quantities)
        {
            json.WriteStartObject(line.Name);
            json.WriteNumber("largest", line.Largest);
            json.WriteNumber("rms", line.Rms);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteQuantity(Utf8JsonWriter json, QuantitySpread quantity)
    {
        json.WriteStartObject(quantity.Name);
        json.WriteNumber("mean", quantity.Mean);
        json.WriteNumber("standardDeviation", quantity.StandardDeviation);
        json.WriteNumber("low", quantity.Low);
        json.WriteNumber("high", quantity.High);
        json.WriteString("unit", quantity.Unit);
        WriteKnown(json, "withinRun", quantity.WithinRun);
        if (quantity.OutsideTarget is { } outside)
        {
            json.WriteNumber("outsideTarget", outside);
        }

        if (quantity.Missing > 0)
        {
            json.WriteNumber("missing", quantity.Missing);
        }

        json.WriteStartArray("causes");
        foreach (SpreadCause cause in quantity.Causes)
        {
            json.WriteStartObject();
            json.WriteString("cause", cause.Cause);
            json.WriteNumber("firstOrder", cause.FirstOrder);
            json.WriteNumber("total", cause.Total);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteNumbers(Utf8JsonWriter json, string name, IReadOnlyDictionary<string, double> numbers)
    {
        json.WriteStartObject(name);
        foreach ((string quantity, double value) in numbers)
        {
            json.WriteNumber(quantity, value);
        }

        json.WriteEndObject();
    }
}
