using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.GaugeStudies;
using Coilwright.Papers;

namespace Coilwright.Output;

/// <summary>Writes a gauge study for people and as coilwright.gauge/1. Standard deviations are in the unit of the readings.</summary>
internal static class GaugeWriter
{
    public static string Json(GaugeFindings found)
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

    public static string Plain(GaugeFindings found)
    {
        StringBuilder text = new();
        void Line(InvariantText line) => text.AppendLine(line.ToText());
        foreach ((string name, GaugeVariation variation) in Variations(found))
        {
            Line(
                $"{name}: repeatability {variation.Repeatability:G4} {found.Unit}, reproducibility {variation.Reproducibility:G4}, "
                    + $"gauge {variation.Gauge:G4}, part to part {variation.PartToPart:G4} (standard deviations)"
            );
            Line(
                $"  the gauge is {100 * variation.GaugeShare:0.0} % of the spread; it tells "
                    + $"{variation.DistinctCategories?.ToString(CultureInfo.InvariantCulture) ?? "any number of"} categories apart"
            );
        }

        if (found.ShareOfTolerance is { } share)
        {
            Line($"six sigma of the gauge take {100 * share:0.0} % of the tolerance");
        }

        if (found.TypeOne is { } one)
        {
            Line(
                $"bias {one.Bias:G4} ± {one.BiasHalfWidth:G3} {found.Unit} (95 %), standard deviation {one.Deviation:G4}, by chance "
                    + $"{100 * one.BiasChance:0.#} %"
            );
            if (found.Tolerance is { } width)
            {
                Line($"Cg {one.Cg(width):0.00}, Cgk {one.Cgk(width):0.00} (20 % of the tolerance over 6 s; 1.33 wanted)");
            }
        }

        if (found.Linearity is { } bias)
        {
            Line(
                $"linearity: bias = {bias.Line.Intercept:G4} + {bias.Line.Slope:G4} × reference, slope ± {bias.SlopeHalfWidth:G3} (95 "
                    + $"%), by chance {100 * bias.SlopeChance:0.#} %, R² {bias.Line.RSquared:0.000}"
            );
            Line(
                $"  mean bias {bias.MeanBias:G4} ± {bias.MeanBiasHalfWidth:G3} {found.Unit} (95 %), by chance "
                    + $"{100 * bias.MeanBiasChance:0.#} %; at the worst end, {bias.WorstReference:G4}, {bias.WorstBias:G4} {found.Unit}"
            );
        }

        return text.Append(
                found.IsFit
                    ? "fit"
                    : $"not fit: {string.Join("; ", found.Faults)}. Mend the meter, its leads or the way it is read "
                        + $"before judging coils by it"
            )
            .ToString();
    }

    private static IEnumerable<(string, GaugeVariation)> Variations(GaugeFindings found)
    {
        if (found is { Anova: { } anova, AverageAndRange: { } range })
        {
            yield return ("analysis of variance", anova.Variation);
            yield return ("average and range", range.Variation);
        }
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
