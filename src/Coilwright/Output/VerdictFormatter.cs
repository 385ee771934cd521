using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Output;

/// <summary>Verdicts for people: a word first, then the reason.</summary>
internal static class VerdictFormatter
{
    public static string Word(VerdictKind kind) =>
        kind switch
        {
            VerdictKind.Pass => "pass",
            VerdictKind.Hold => "hold",
            _ => "REJECT",
        };

    public static string At20C(Verdict verdict) =>
        verdict.DcResistanceAt20C is { } ohm ? QuantityParser.Format(ohm.Value, QuantityKind.Resistance, 4) : "–";

    /// <summary>The reasons, then the probable cause with its quickest check.</summary>
    public static string Why(Verdict verdict)
    {
        string cause = VerdictAdvice.Cause(verdict),
            check = VerdictAdvice.Check(verdict);
        return string.Join(
            "; ",
            (string[])
                [
                    .. verdict.Reasons,
                    .. cause.Length > 0 ? [cause] : Array.Empty<string>(),
                    .. check.Length > 0 ? [check] : Array.Empty<string>(),
                ]
        );
    }
}
