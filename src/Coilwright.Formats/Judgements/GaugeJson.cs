using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.GaugeStudies;

namespace Coilwright.Formats.Judgements;

/// <summary>Writes a gauge study in the file format "coilwright.gauge/1". Standard deviations are in the unit of the readings.</summary>
public static class GaugeJson
{
    public static string Write(GaugeFindings found)
    {
        using MemoryStream stream = new();
        using (
            Utf8JsonWriter json = new(
                stream,
                new JsonWriterOptions { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }
            )
        )
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.gauge/1");
            json.WriteString("unit", found.Unit);
            json.WriteBoolean("fit", found.IsFit);
            json.WriteStartArray("faults");
            foreach (string fault in found.Faults)
            {
                json.WriteStringValue(fault);
            }

            json.WriteEndArray();
            if (found.ShareOfTolerance is { } share)
            {
                json.WriteNumber("shareOfTolerance", share);
            }

            WriteStudies(json, found);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void WriteStudies(Utf8JsonWriter json, GaugeFindings found)
    {
        if (found is { Anova: { } anova, AverageAndRange: { } range })
        {
            WriteVariation(json, "anova", anova.Variation, anova.Interaction.Chance(anova.Error), anova.IsPooled);
            WriteVariation(json, "averageAndRange", range.Variation, null, null);
        }

        if (found.TypeOne is { } one)
        {
            json.WriteStartObject("typeOne");
            WriteNumbers(
                json,
                ("mean", one.Mean),
                ("standardDeviation", one.Deviation),
                ("bias", one.Bias),
                ("biasLow", one.Bias - one.BiasHalfWidth),
                ("biasHigh", one.Bias + one.BiasHalfWidth),
                ("biasChance", one.BiasChance)
            );
            if (found.Tolerance is { } width)
            {
                WriteNumbers(json, ("cg", one.Cg(width)), ("cgk", one.Cgk(width)));
            }

            json.WriteEndObject();
        }

        if (found.Linearity is { } line)
        {
            json.WriteStartObject("linearity");
            StraightLine fitted = line.Line;
            WriteNumbers(
                json,
                ("intercept", fitted.Intercept),
                ("slope", fitted.Slope),
                ("interceptError", fitted.InterceptError),
                ("slopeError", fitted.SlopeError),
                ("rSquared", fitted.RSquared)
            );
            WriteNumbers(
                json,
                ("slopeChance", line.SlopeChance),
                ("meanBias", line.MeanBias),
                ("meanBiasChance", line.MeanBiasChance),
                ("worstBias", line.WorstBias),
                ("worstBiasAt", line.WorstReference)
            );
            json.WriteEndObject();
        }
    }

    private static void WriteVariation(Utf8JsonWriter json, string name, GaugeVariation variation, double? interaction, bool? pooled)
    {
        json.WriteStartObject(name);
        WriteNumbers(
            json,
            ("repeatability", variation.Repeatability),
            ("reproducibility", variation.Reproducibility),
            ("gauge", variation.Gauge),
            ("partToPart", variation.PartToPart),
            ("total", variation.Total),
            ("gaugeShare", variation.GaugeShare)
        );
        if (variation.DistinctCategories is { } categories)
        {
            json.WriteNumber("categories", categories);
        }

        if (interaction is { } chance)
        {
            json.WriteNumber("interactionChance", chance);
        }

        if (pooled is { } put)
        {
            json.WriteBoolean("interactionPooled", put);
        }

        json.WriteEndObject();
    }

    private static void WriteNumbers(Utf8JsonWriter json, params (string Name, double Value)[] numbers)
    {
        foreach ((string name, double value) in numbers)
        {
            json.WriteNumber(name, value);
        }
    }
}
