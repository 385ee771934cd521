using System.Globalization;
using Coilwright.Analysis.Curves;
using Coilwright.Physics;

namespace Coilwright.Formats.Curves;

/// <summary>A fitted curve with what was asked of it.</summary>
/// <param name="Path">The file.</param>
/// <param name="Table">The curve as read.</param>
/// <param name="Fit">The best fit.</param>
/// <param name="Resonance">Where its impedance is largest; null when no winding can have what was fitted.</param>
/// <param name="Inductances">Inductance at the frequencies asked for; none when no winding can have what was fitted.</param>
public sealed record FitAnswer(
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

    /// <summary>For curves that were fitted through their ratios: how each agrees with the first; empty for one curve.</summary>
    public IReadOnlyList<RatioAnswer> Ratios { get; init; } = [];

    public string NoResult =>
        "this curve gives no pickup: "
        + string.Join("; ", Faults)
        + (
            Ratios.Count > 0
                ? ". Are all of one pickup, each behind the load given for it, in this order?"
                : ". Was it taken behind the load that was given, by a source that is flat over the whole range?"
        );

    /// <summary>Scatter around the fit: % of an impedance, dB of a gain.</summary>
    public (double Value, string Unit) Residual =>
        this switch
        {
            { Ratios: [_, ..] } => (Ratios.Max(one => one.MissedDb), "dB"),
            { Table.Curve.ImpedanceOhm: null } => (Fit.Fit.ResidualDeviation, "dB"),
            _ => (100 * Fit.Fit.ResidualDeviation, "%"),
        };

    /// <summary>True for a part that the curve tells.</summary>
    public static bool Known(Estimate estimate) => estimate.High < 1e300;

    /// <summary>Unit of a part of the fit.</summary>
    public static string UnitOf(PickupParts parts, int parameter) =>
        parameter switch
        {
            PickupParts.Capacitance => "F",
            _ => parts.IsInductance(parameter) ? "H" : "Ω",
        };

    /// <summary>What the curve does not tell, in a sentence.</summary>
    public static string Sentence(UntoldParts untold)
    {
        string reach =
            untold.Factor < 100 ? string.Create(CultureInfo.InvariantCulture, $"by a factor of {untold.Factor:0.0}") : "by any factor";
        return untold.Names.Count == 1
            ? $"this curve does not tell {untold.Names[0]}: it can change {reach} before the fit shows it"
            : $"this curve cannot tell {string.Join(", ", untold.Names.SkipLast(1))} from {untold.Names[^1]}: together they can change "
                + $"{reach} before the fit shows it";
    }
}
