using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Quantities;
using Coilwright.Physics;

namespace Coilwright.Workshop.Solving;

/// <summary>One of the choices at a spool, with what it changes against the recipe as specified.</summary>
/// <param name="Turns">Of each coil.</param>
/// <param name="CoilOhm">Resistance of each coil at 20 °C, Ω.</param>
/// <param name="Lines">The recipe as specified against this choice, result by result.</param>
public sealed record SpoolOption(IReadOnlyList<double> Turns, IReadOnlyList<Estimate> CoilOhm, IReadOnlyList<ComparisonLine> Lines)
{
    /// <summary>Of the pickup at 20 °C, Ω.</summary>
    public double ResistanceOhm => Line(QuantityKey.DcResistance)!.Second!.Value.Value;

    /// <summary>Of the pickup at 1 kHz, H.</summary>
    public double InductanceH => Line(QuantityKey.Inductance)!.Second!.Value.Value;

    /// <summary>Change of the inductance as a part: −0.036 is 3.6 % less.</summary>
    public double InductanceChange => Line(QuantityKey.Inductance)!.Ratio!.Value.Value - 1;

    /// <summary>Change in output, dB; null without strings in the recipe.</summary>
    public double? OutputChangeDb => Line(QuantityKey.Output)?.Ratio is { } ratio ? 20 * Math.Log10(ratio.Value) : null;

    /// <summary>One result; null when it does not exist.</summary>
    public ComparisonLine? Line(string name) => Lines.FirstOrDefault(line => line.Name == name);
}
