using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Formats.Forecasts;
using Coilwright.Physics;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Stock;

namespace Coilwright.Formats.Records;

/// <summary>Writes spools in the file format "coilwright.stock/1".</summary>
public static class StockJson
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Write(IReadOnlyList<SpoolStatus> shelf, CoilPlan? plan = null, int coils = 0)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.stock/1");
            json.WriteStartArray("spools");
            foreach (SpoolStatus one in shelf)
            {
                WriteSpool(json, one, plan, coils);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void WriteSpool(Utf8JsonWriter json, SpoolStatus one, CoilPlan? plan, int coils)
    {
        json.WriteStartObject();
        json.WriteString("label", one.Spool.Label);
        json.WriteString("lot", one.Spool.Lot);
        json.WriteString("supplier", one.Spool.SupplierText);
        json.WriteString("gauge", one.Spool.Gauge);
        json.WriteString("insulation", one.Spool.Insulation);
        json.WriteString("build", one.Spool.Build);
        if (one.Measure is { } measure)
        {
            PredictionJson.WriteQuantity(json, "resistancePerLength", measure.OhmPerM, "Ω/m");
            PredictionJson.WriteQuantity(json, "bareDiameter", measure.BareDiameterM, "m");
            json.WriteNumber("overNominal", measure.OverNominal);
        }

        PredictionJson.WriteQuantity(json, "massPerLength", one.MassKgPerM, "kg/m");
        if (one.RemainingM is { } left)
        {
            PredictionJson.WriteQuantity(json, "remaining", left, "m");
        }

        json.WriteString("remainingFrom", one.RemainingWords);
        PredictionJson.WriteQuantity(json, "used", Estimate.Exact(one.UsedM, Basis.Forecast), "m");
        json.WriteStartArray("uses");
        foreach (SpoolUse use in one.Uses)
        {
            json.WriteStartObject();
            json.WriteString("batch", use.Batch);
            json.WriteString("tag", use.Tag);
            json.WriteNumber("metres", use.WireM);
            json.WriteBoolean("scrapped", use.Scrapped);
            json.WriteString("time", use.TimeUtc);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (plan is not null)
        {
            WritePlan(json, one, plan, coils);
        }

        json.WriteEndObject();
    }

    private static void WritePlan(Utf8JsonWriter json, SpoolStatus one, CoilPlan plan, int coils)
    {
        double wireM = plan.SetUp.WireLength.Value;
        json.WriteStartObject("forRecipe");
        json.WriteNumber("wirePerCoil", wireM);
        if (one.CoilsLeft(wireM) is { } left)
        {
            json.WriteNumber("coilsFewest", left.Fewest);
            json.WriteNumber("coilsMost", left.Most);
        }

        if (coils > 0)
        {
            json.WriteString("finishes", one.WillFinish(coils, wireM));
        }

        if (one.Measure is { } measure)
        {
            SpoolDecision decision = SpoolDecision.For(plan, measure);
            json.WriteStartObject("holdTurns");
            json.WriteNumber("turns", decision.RecipeTurns);
            PredictionJson.WriteQuantity(json, "dcResistance", decision.HoldTurnsOhm, "Ω");
            json.WriteEndObject();
            json.WriteStartObject("holdOhms");
            json.WriteNumber("turns", decision.HoldOhmsTurns);
            json.WriteNumber("inductanceFactor", decision.HoldOhmsInductance);
            json.WriteNumber("outputDb", decision.HoldOhmsOutputDb);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }
}
