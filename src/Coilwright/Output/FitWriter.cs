using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.Curves;
using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Formatting;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Curves;

namespace Coilwright.Output;

/// <summary>A fitted curve in its three forms: JSON (coilwright.fit/1), the pickup alone (coilwright.lumped/1), and for people.</summary>
internal static class FitWriter
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Json(FitAnswer answer) =>
        Written(json =>
        {
            json.WriteString("format", "coilwright.fit/1");
            WriteRead(json, answer.Table);
            WriteFound(json, answer);
            PredictionJson.WriteQuantity(json, "residual", Estimate.Exact(Residual(answer).Value, Basis.Measured), Residual(answer).Unit);
            json.WriteBoolean("converged", answer.Fit.Fit.Converged);
            json.WriteNumber("iterations", answer.Fit.Fit.Iterations);
            json.WriteStartArray("undetermined");
            foreach (UntoldParts untold in answer.Fit.Untold)
            {
                json.WriteStartObject();
                json.WriteStartArray("parts");
                untold.Names.ToList().ForEach(json.WriteStringValue);
                json.WriteEndArray();
                json.WriteString("message", Sentence(untold));
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

    public static void Plain(TextWriter writer, FitAnswer answer)
    {
        CurveFit fit = answer.Fit;
        writer.WriteLine(answer.Path);
        writer.WriteLine(
            $"  read: {answer.Table.Curve.Count} points from {FigureFormatter.Value(answer.Table.Curve.FrequenciesHz[0], "Hz")} to "
                + $"{FigureFormatter.Value(answer.Table.Curve.FrequenciesHz[^1], "Hz")}; {answer.Table.Delimiter} between cells, "
                + $"decimal {answer.Table.Decimal}"
        );
        writer.WriteLine("  columns: " + string.Join("; ", answer.Table.Columns));
        writer.WriteLine();
        if (answer.Resonance is not { } resonance)
        {
            writer.WriteLine("  " + answer.NoResult);
            return;
        }

        WriteFound(writer, answer, resonance);
        (double value, string residualUnit) = Residual(answer);
        writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  scatter around the fit {value:0.####} {residualUnit}"));
        foreach (UntoldParts untold in fit.Untold)
        {
            writer.WriteLine("  Note: " + Sentence(untold));
        }

        writer.WriteLine("  Intervals come from the scatter around the fit; an error of the instrument's own is not in them.");
    }

    private static void WriteFound(TextWriter writer, FitAnswer answer, ImpedanceResonance resonance)
    {
        CurveFit fit = answer.Fit;
        Table table = new("part", "value", "95 % interval");
        for (int i = 0; i < fit.Parts.Count; i++)
        {
            Estimate part = fit.Part(i);
            string unit = UnitOf(fit.Parts, i);
            table.Add(
                fit.Parts.NameOf(i),
                FigureFormatter.Value(part.Value, unit, 4),
                Known(part)
                    ? $"{FigureFormatter.Value(part.Low, unit, 4)} – {FigureFormatter.Value(part.High, unit, 4)}"
                    : "not told by this curve"
            );
        }

        table.Write(writer);
        writer.WriteLine();
        writer.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"  impedance highest at {FigureFormatter.Value(resonance.TopHz, "Hz", 4)}, "
                    + $"{FigureFormatter.Value(resonance.TopOhm, "Ω")}, Q {resonance.Q:0.00}"
            )
        );
        foreach (InductanceAt one in answer.Inductances)
        {
            string said =
                $"  at {FigureFormatter.Value(one.Hz, "Hz")}: series inductance {FigureFormatter.Value(one.Series.Value, "H", 4)} (95 "
                + $"%: {FigureFormatter.Value(one.Series.Low, "H", 4)} – {FigureFormatter.Value(one.Series.High, "H", 4)})";
            writer.WriteLine(
                said
                    + (
                        one.IsRefused
                            ? string.Create(
                                CultureInfo.InvariantCulture,
                                $"; too near the resonance to be read by a meter: it would show {one.ApparentH:0.000} H, "
                                    + $"{100 * one.Error:+0.0;-0.0} %"
                            )
                            : string.Create(
                                CultureInfo.InvariantCulture,
                                $"; a meter would show {one.ApparentH:0.000} H, {100 * one.Error:+0.00;-0.00} %"
                            )
                    )
            );
        }
    }

    public static string PlainText(FitAnswer answer)
    {
        using StringWriter writer = new(CultureInfo.InvariantCulture);
        Plain(writer, answer);
        return writer.ToString().TrimEnd();
    }

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
            if (fit.Part(i) is var part && Known(part))
            {
                PredictionJson.WriteQuantity(json, fit.Parts.NameOf(i), part, UnitOf(fit.Parts, i));
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
            if (Known(one.Series))
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

    private static bool Known(Estimate estimate) => estimate.High < 1e300;

    private static (double Value, string Unit) Residual(FitAnswer answer) =>
        answer.Table.Curve.ImpedanceOhm is null ? (answer.Fit.Fit.ResidualDeviation, "dB") : (100 * answer.Fit.Fit.ResidualDeviation, "%");

    private static string UnitOf(PickupParts parts, int parameter) =>
        parameter switch
        {
            PickupParts.Capacitance => "F",
            _ => parts.IsInductance(parameter) ? "H" : "Ω",
        };

    private static string Sentence(UntoldParts untold)
    {
        string reach =
            untold.Factor < 100 ? string.Create(CultureInfo.InvariantCulture, $"by a factor of {untold.Factor:0.0}") : "by any factor";
        return untold.Names.Count == 1
            ? $"this curve does not tell {untold.Names[0]}: it can change {reach} before the fit shows it"
            : $"this curve cannot tell {string.Join(", ", untold.Names.SkipLast(1))} from {untold.Names[^1]}: together they can change "
                + $"{reach} before the fit shows it";
    }
}
