using System.Globalization;
using Coilwright.Analysis.Curves;
using Coilwright.Application.Measuring;
using Coilwright.Papers.Figures;
using Coilwright.Papers.Formatting;

namespace Coilwright.Web.Views.Measuring;

/// <summary>What resonances with known capacitors told, as its page shows it.</summary>
public sealed record ResonanceView(SolvedResonances Solved)
{
    /// <summary>Inductance with its interval.</summary>
    public MeasuredLine Inductance => MeasuredLine.Of("Inductance", Solved.Answer.Solved.Inductance, "H");

    /// <summary>Own capacitance with its interval.</summary>
    public MeasuredLine Capacitance => MeasuredLine.Of("Own capacitance", Solved.Answer.Solved.Capacitance, "F");

    /// <summary>Resonance of the bare pickup.</summary>
    public string Bare => FigureFormatter.Value(Solved.Answer.ResonanceHz, "Hz", 4);

    /// <summary>What a meter's reading says; empty when none was given.</summary>
    public string Meter
    {
        get
        {
            if (Solved.Answer.Meter is not { } meter)
            {
                return "";
            }

            string read = $"{FigureFormatter.Value(meter.H, "H", 4)} read at {FigureFormatter.Value(meter.Hz, "Hz")}";
            return Solved.Answer.CorrectedH is { } corrected
                ? $"{read} is {Error} by the capacitance; without it, {FigureFormatter.Value(corrected, "H", 4)}."
                : $"{read} is too near the resonance. Read it below "
                    + $"{FigureFormatter.Value(ApparentInductance.HighestHz(Solved.Answer.ResonanceHz), "Hz")}.";
        }
    }

    /// <summary>True when the meter's reading cannot be used.</summary>
    public bool IsRefused => Solved.Answer.IsRefused;

    /// <summary>The figure.</summary>
    public DrawingViewModel Figure =>
        new(
            "Resonance, kHz, against the capacitor added, pF. Dots as read; the dashed line is what inductance and capacitance give.",
            MeasuredFigures.Resonances(
                [.. Solved.Readings.Select(one => (one.AddedF, one.ResonanceHz))],
                Solved.Answer.Solved.Inductance.Value,
                Solved.Answer.Solved.Capacitance.Value
            )
        );

    private string Error => string.Create(CultureInfo.InvariantCulture, $"{100 * Solved.Answer.Error:+0.00;−0.00} % off");
}
