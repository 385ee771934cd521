using System.Globalization;
using System.Text;
using Coilwright.Analysis.Curves;
using Coilwright.Formats.Curves;
using Coilwright.Papers.Formatting;
using Coilwright.Physics;

namespace Coilwright.Output;

/// <summary>What resonances with known capacitors say, for people.</summary>
internal static class ResonanceFormatter
{
    public static string Write(ResonanceAnswer answer)
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
