using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.Curves;
using Coilwright.Formats.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Formats.Curves;

/// <summary>Writes a fitted curve in the file format "coilwright.fit/1", or the pickup alone as "coilwright.lumped/1".</summary>
public static class FitJson
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Write(FitAnswer answer) =>
        Written(json =>
        {
            json.WriteString("format", "coilwright.fit/1");
            WriteRead(json, answer.Table);
            WriteFound(json, answer);
            PredictionJson.WriteQuantity(json, "residual", Estimate.Exact(answer.Residual.Value, Basis.Measured), answer.Residual.Unit);
            if (answer.Ratios.Count > 0)
            {
                WriteRatios(json, answer.Ratios);
            }

            json.WriteBoolean("converged", answer.Fit.Fit.Converged);
            json.WriteNumber("iterations", answer.Fit.Fit.Iterations);
            json.WriteStartArray("undetermined");
            foreach (UntoldParts untold in answer.Fit.Untold)
            {
                json.WriteStartObject();
                json.WriteStartArray("parts");
                untold.Names.ToList().ForEach(json.WriteStringValue);
                json.WriteEndArray();
                json.WriteString("message", FitAnswer.Sentence(untold));
                json.WriteEndObject();
            }

            json.WriteEndArray();
        });

    private static void WriteFound(Utf8JsonWriter json, FitAnswer answer)
    {
        if (answer.Resonance is not { } resonance)
        {
            json.WriteStartArray("none");
            answer.Faults.ToList().ForEach(json.WriteStringValue);
            json.WriteEndArray();
            return;
        }

        json.WriteStartObject("lumped");
        WriteLumped(json, answer);
        json.WriteEndObject();
        WriteParts(json, answer.Fit);
        json.WriteStartObject("resonance");
        PredictionJson.WriteQuantity(json, "frequency", answer.Fit.Derived(pickup => ImpedanceResonance.Find(pickup).TopHz), "Hz");
        PredictionJson.WriteQuantity(json, "impedance", Estimate.Exact(resonance.TopOhm, Basis.Measured), "Ω");
        PredictionJson.WriteQuantity(json, "q", Estimate.Exact(resonance.Q, Basis.Measured), "1");
        json.WriteEndObject();
        WriteInductances(json, answer);
    }

    public static string Lumped(FitAnswer answer) => Written(json => WriteLumped(json, answer));

    private static string Written(Action<Utf8JsonWriter> write)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, s_options))
        {
            json.WriteStartObject();
            write(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void WriteRead(Utf8JsonWriter json, CurveTable table)
    {
        json.WriteStartObject("read");
        json.WriteString("delimiter", table.Delimiter);
        json.WriteString("decimal", table.Decimal);
        json.WriteStartArray("columns");
        table.Columns.ToList().ForEach(json.WriteStringValue);
        json.WriteEndArray();
        json.WriteNumber("points", table.Curve.Count);
        json.WriteNumber("from", table.Curve.FrequenciesHz[0]);
        json.WriteNumber("to", table.Curve.FrequenciesHz[^1]);
        json.WriteEndObject();
    }

    private static void WriteRatios(Utf8JsonWriter json, IReadOnlyList<RatioAnswer> ratios)
    {
        json.WriteStartArray("ratios");
        foreach (RatioAnswer one in ratios)
        {
            json.WriteStartObject();
            json.WriteString("curve", Path.GetFileName(one.Path));
            json.WriteNumber("missed", one.MissedDb);
            json.WriteNumber("moved", one.MovedDb);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteLumped(Utf8JsonWriter json, FitAnswer answer)
    {
        LumpedPickup pickup = answer.Fit.Pickup;
        json.WriteString("format", "coilwright.lumped/1");
        json.WriteString("name", Path.GetFileNameWithoutExtension(answer.Path));
        json.WriteString("resistance", FormattableString.Invariant($"{pickup.ResistanceOhm:R} Ω"));
        json.WriteString("inductance", FormattableString.Invariant($"{pickup.InductanceH:R} H"));
        json.WriteString("capacitance", FormattableString.Invariant($"{pickup.CapacitanceF * 1e12:R} pF"));
        if (pickup.Eddy.Count > 0)
        {
            json.WriteStartArray("eddy");
            foreach (EddyBranch branch in pickup.Eddy)
            {
                json.WriteStartObject();
                json.WriteString("inductance", FormattableString.Invariant($"{branch.InductanceH:R} H"));
                json.WriteString("resistance", FormattableString.Invariant($"{branch.ResistanceOhm:R} Ω"));
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        if (pickup.ParallelLossOhm is { } loss)
        {
            json.WriteString("parallelLoss", FormattableString.Invariant($"{loss:R} Ω"));
        }
    }

    /// <summary>Parts that the curve tells; the others stand under "undetermined".</summary>
    private static void WriteParts(Utf8JsonWriter json, CurveFit fit)
    {
        json.WriteStartObject("parts");
        for (int i = 0; i < fit.Parts.Count; i++)
        {
            if (fit.Part(i) is var part && FitAnswer.Known(part))
            {
                PredictionJson.WriteQuantity(json, fit.Parts.NameOf(i), part, FitAnswer.UnitOf(fit.Parts, i));
            }
        }

        json.WriteEndObject();
    }

    private static void WriteInductances(Utf8JsonWriter json, FitAnswer answer)
    {
        json.WriteStartArray("inductanceAt");
        foreach (InductanceAt one in answer.Inductances)
        {
            json.WriteStartObject();
            json.WriteNumber("frequency", one.Hz);
            if (FitAnswer.Known(one.Series))
            {
                PredictionJson.WriteQuantity(json, "inductance", one.Series, "H");
            }

            json.WriteNumber("apparent", one.ApparentH);
            json.WriteNumber("apparentError", one.Error);
            json.WriteBoolean("tooNearResonance", one.IsRefused);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
