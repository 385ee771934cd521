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
        return verdict.Causes is [{ Name: not "none" } first, ..] ? $"{reasons}; probably {first.Name.Replace('-', ' ')}{(first.Detail.Length > 0 ? ", " + first.Detail : "")}" : reasons;
    }
}
