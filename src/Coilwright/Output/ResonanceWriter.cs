using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.Curves;
using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Formatting;
using Coilwright.Physics;

namespace Coilwright.Output;

/// <summary>What resonances with known capacitors say, as JSON (coilwright.resonance/1) and for people.</summary>
internal static class ResonanceWriter
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Json(ResonanceAnswer answer)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.resonance/1");
            PredictionJson.WriteQuantity(json, "inductance", answer.Solved.Inductance, "H");
            PredictionJson.WriteQuantity(json, "capacitance", answer.Solved.Capacitance, "F");
            PredictionJson.WriteQuantity(json, "resonance", Estimate.Exact(answer.ResonanceHz, Basis.Measured), "Hz");
            if (answer.Meter is { } meter)
            {
                json.WriteStartObject("reading");
                json.WriteNumber("frequency", meter.Hz);
                json.WriteNumber("apparent", meter.H);
                if (double.IsFinite(answer.Error))
                {
                    json.WriteNumber("apparentError", answer.Error);
                }

                json.WriteBoolean("tooNearResonance", answer.IsRefused);
                if (answer.CorrectedH is { } corrected)
                {
                    PredictionJson.WriteQuantity(json, "inductance", Estimate.Exact(corrected, Basis.Measured), "H");
                }

                json.WriteEndObject();
            }

            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    public static string Plain(ResonanceAnswer answer)
    {
        StringBuilder text = new();
        Line(text, "inductance", answer.Solved.Inductance, "H");
        text.Append('\n');
        Line(text, "own capacitance", answer.Solved.Capacitance, "F");
        text.Append(CultureInfo.InvariantCulture, $"\nresonance of the bare pickup {FigureFormatter.Value(answer.ResonanceHz, "Hz", 4)}");
        if (answer.Meter is { } meter)
        {
            string error = double.IsFinite(answer.Error)
                ? string.Create(CultureInfo.InvariantCulture, $"{100 * answer.Error:+0.00} %")
                : "without meaning";
            text.Append(
                answer.CorrectedH is { } corrected
                    ? $"\n{FigureFormatter.Value(meter.H, "H", 4)} read at {FigureFormatter.Value(meter.Hz, "Hz")} is {error} by the "
                        + $"capacitance: {FigureFormatter.Value(corrected, "H", 4)}"
                    : $"\n{FigureFormatter.Value(meter.H, "H", 4)} read at {FigureFormatter.Value(meter.Hz, "Hz")} is refused: too near "
                        + $"the resonance, its error is {error}; read it below "
                        + $"{FigureFormatter.Value(ApparentInductance.HighestHz(answer.ResonanceHz), "Hz")}"
            );
        }

        return text.ToString();
    }

    private static void Line(StringBuilder text, string name, Estimate estimate, string unit) =>
        text.Append(
            $"{name} {FigureFormatter.Value(estimate.Value, unit, 4)} (95 %: {FigureFormatter.Value(estimate.Low, unit, 4)} – "
                + $"{FigureFormatter.Value(estimate.High, unit, 4)})"
        );
}

/// <summary>Inductance and capacitance, the bare pickup's resonance, and a meter's reading if one was given.</summary>
internal sealed record ResonanceAnswer(AddedCapacitors Solved, double ResonanceHz, (double H, double Hz)? Meter)
{
    public double Error => Meter is { } meter ? ApparentInductance.Error(meter.Hz, ResonanceHz) : 0;

    public double? CorrectedH => Meter is { } meter ? ApparentInductance.Corrected(meter.H, meter.Hz, ResonanceHz) : null;

    public bool IsRefused => Meter is not null && CorrectedH is null;
}
