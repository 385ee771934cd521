using Coilwright.Application.Curves;
using Coilwright.Bench;
using Coilwright.Formats.Curves;
using Coilwright.Physics.Sound;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Measuring;

namespace Coilwright.Application.Measuring;

/// <summary>A person wants a pickup's impedance and parts from a recording of the measurement signal.</summary>
public sealed class FitRecording(ReadSweep sweeps, FitCurve curves)
{
    /// <summary>The impedance with its fit; or every problem by its field, one of the recording itself without one.</summary>
    /// <param name="asked">The recording.</param>
    /// <param name="unitRequired">True to refuse bare numbers.</param>
    public ReadOutcome<FitAnswer> Fit(RecordingQuestion asked, bool unitRequired)
    {
        QuantityReader typed = new(unitRequired);
        LogSweep sweep = asked.Signal.Read(typed);
        double? ohm = typed.Read("resistor", asked.Resistor, MeasureLimits.Resistor),
            inputOhm = typed.Read("inputResistance", asked.InputResistance, MeasureLimits.InputResistance),
            inputF = typed.Read("inputCapacitance", asked.InputCapacitance, MeasureLimits.InputCapacitance);
        if (asked.Resistor.Trim().Length == 0)
        {
            typed.Add(new Problem("resistor", "which resistor stood between the two channels?", null, "10 Ω to 10 MΩ, as measured"));
        }

        ReadOutcome<WaveFile> sound = WaveFile.Read(asked.Wave.Span);
        if (typed.Problems.Count > 0 || sound.Value is not { } wave)
        {
            return new ReadOutcome<FitAnswer>(null, [.. typed.Problems, .. sound.Problems]);
        }

        ReadOutcome<CurveTable> read = sweeps.Read(sweep, wave, ohm!.Value, inputOhm, inputF ?? 0);
        return read.Value is { } table
            ? curves.Fit(asked.Name, table, load: null, resistanceOhm: null, eddy: null, FitCurve.UsualHz)
            : new ReadOutcome<FitAnswer>(null, read.Problems);
    }
}
