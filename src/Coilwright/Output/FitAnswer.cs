using Coilwright.Analysis.Curves;
using Coilwright.Input;
using Coilwright.Physics;
using Coilwright.Workshop.Curves;
using Coilwright.Workshop.Entry;

namespace Coilwright.Output;

/// <summary>A fitted curve with what was asked of it.</summary>
/// <param name="Path">The file.</param>
/// <param name="Table">The curve as read.</param>
/// <param name="Fit">The best fit.</param>
/// <param name="Resonance">Where its impedance is largest; null when no winding can have what was fitted.</param>
/// <param name="Inductances">Inductance at the frequencies asked for; none when no winding can have what was fitted.</param>
internal sealed record FitAnswer(
    string Path,
    CurveTable Table,
    CurveFit Fit,
    ImpedanceResonance? Resonance,
    IReadOnlyList<InductanceAt> Inductances
)
{
    /// <summary>Why no winding can have what was fitted; empty when one can.</summary>
    public IReadOnlyList<string> Faults { get; init; } = [];

    public bool IsWinding => Faults.Count == 0;

    public string NoResult =>
        "this curve gives no pickup: "
        + string.Join("; ", Faults)
        + ". Was it taken behind the load that was given, by a source that is flat over the whole range?";

    /// <exception cref="WrongInputException">When no winding can have what was fitted.</exception>
    public void RefuseUnlessWinding()
    {
        if (!IsWinding)
        {
            throw new WrongInputException(Path, [new Problem("", NoResult)]);
        }
    }
}

/// <summary>Inductance at one frequency: of the winding alone, and as a meter would show it.</summary>
internal sealed record InductanceAt(double Hz, Estimate Series, double ApparentH)
{
    public double Error => ApparentH / Series.Value - 1;

    public bool IsRefused => Math.Abs(Error) > ApparentInductance.MostError;
}
