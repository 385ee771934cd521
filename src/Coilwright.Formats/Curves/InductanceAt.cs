using Coilwright.Analysis.Curves;
using Coilwright.Physics;

namespace Coilwright.Formats.Curves;

/// <summary>Inductance at one frequency: of the winding alone, and as a meter would show it.</summary>
public sealed record InductanceAt(double Hz, Estimate Series, double ApparentH)
{
    public double Error => ApparentH / Series.Value - 1;

    public bool IsRefused => Math.Abs(Error) > ApparentInductance.MostError;
}
