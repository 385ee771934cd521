using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Output;

/// <summary>Verdicts for people: a word first, then the reason.</summary>
internal static class VerdictWords
{
    public static string Word(VerdictKind kind) => kind switch
    {
        VerdictKind.Pass => "pass",
        VerdictKind.Hold => "hold",
        _ => "REJECT",
    };

    public static string At20C(Verdict verdict) => verdict.DcResistanceAt20C is { } ohm ? QuantityText.Format(ohm.Value, QuantityKind.Resistance, 4) : "–";

    public static string Why(Verdict verdict)
    {
        string reasons = string.Join("; ", verdict.Reasons);
        return verdict.Causes is [{ Name: not "none" } first, ..] ? $"{reasons}; probably {first.Name.Replace('-', ' ')}{(first.Detail.Length > 0 ? ", " + first.Detail : "")} ({first.Probability.ToString("P0", System.Globalization.CultureInfo.InvariantCulture)}){Settle(verdict)}" : reasons;
    }

    private static string Settle(Verdict verdict) => verdict.Next is [var next, ..] && verdict.Causes[0].Probability < 0.9 ? "; settle it: " + next.Quantity switch
    {
        "dcResistance" => "read the ohms once more, cold, on a second meter",
        "inductance" => "read the inductance",
        "q" => "read Q at 3 kHz",
        "turns" => "check the counter with a marked test",
        _ => "measure 10 m off the spool",
    } : "";
}
