using System.Text.Json;
using Coilwright.Analysis.Comparisons;

namespace Coilwright.Formats.Forecasts;

/// <summary>Writes what small changes do, as the part "sensitivity" of a prediction.</summary>
public static class SensitivityJson
{
    /// <summary>The part; nothing when nothing was asked for.</summary>
    public static void Write(Utf8JsonWriter json, IReadOnlyList<SensitivityLine> lines)
    {
        if (lines.Count == 0)
        {
            return;
        }

        json.WriteStartArray("sensitivity");
        foreach (SensitivityLine line in lines)
        {
            json.WriteStartObject();
            json.WriteString("change", line.Change);
            json.WriteString("words", line.Words);
            if (line.WhyNot is { } why)
            {
                json.WriteString("whyNot", why);
            }

            json.WriteStartObject("effects");
            foreach (ComparisonLine effect in line.Effects)
            {
                WriteEffect(json, effect);
            }

            json.WriteEndObject();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteEffect(Utf8JsonWriter json, ComparisonLine effect)
    {
        json.WriteStartObject(effect.Name);
        if (effect.Second is { } then)
        {
            PredictionJson.WriteQuantity(json, "then", then, effect.Unit);
        }

        if (effect.Difference is { } difference)
        {
            PredictionJson.WriteQuantity(json, "difference", difference, effect.Unit);
        }

        if (effect.Ratio is { } ratio)
        {
            PredictionJson.WriteQuantity(json, "ratio", ratio, "1");
        }

        json.WriteEndObject();
    }
}
