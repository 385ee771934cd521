using Coilwright.Analysis.Curves;

namespace Coilwright.Formats.Curves;

/// <summary>Inductance and capacitance, the bare pickup's resonance, and a meter's reading if one was given.</summary>
public sealed record ResonanceAnswer(AddedCapacitors Solved, double ResonanceHz, (double H, double Hz)? Meter)
{
    public double Error => Meter is { } meter ? ApparentInductance.Error(meter.Hz, ResonanceHz) : 0;

    public double? CorrectedH => Meter is { } meter ? ApparentInductance.Corrected(meter.H, meter.Hz, ResonanceHz) : null;

    public bool IsRefused => Meter is not null && CorrectedH is null;
}
