using System.Globalization;
using Coilwright.Analysis.Quantities;

namespace Coilwright.Workshop.Readings;

/// <summary>
/// What a person is told beside a verdict: the probable cause and the quickest check. The same on pages, papers and the command line.
/// </summary>
public static class VerdictAdvice
{
    /// <summary>What to look at when a chart signals, the quickest first. Common practice, no source.</summary>
    public const string DriftChecks =
        "check first: temperature and meter zero; the counter; a new spool (measure 10 m); tension; joints; turns shorted (Q)";

    /// <summary>
    /// Above this the cause is taken as found, and its own check is the quickest; below it a reading that parts the causes is. Our
    /// assumption.
    /// </summary>
    private const double Settled = 0.9;

    /// <summary>The first reason without its second half: what was read and how far off it is, where a line has no room for more.</summary>
    public static string Brief(Verdict verdict) => verdict.Reasons is [var first, ..] ? first.Split(';', 2)[0] : "";

    /// <summary>The first cause in words, with its probability; empty where nothing is wrong or nothing is known.</summary>
    public static string Cause(Verdict verdict) => verdict.Told is [var first, ..] ? Sentence(first) : "";

    /// <summary>One cause in words, with its probability.</summary>
    public static string Sentence(Cause cause)
    {
        string words = cause.Detail.Length > 0 ? cause.Detail : Entry.KeyLabels.Of(cause.Name);
        bool isSaidSo =
            words.EndsWith("suspected", StringComparison.Ordinal)
            || words.StartsWith("the readings", StringComparison.Ordinal)
            || cause.Name == "open";
        return $"{(isSaidSo ? "" : "probably ")}{words} ({cause.Probability.ToString("P0", CultureInfo.InvariantCulture)})";
    }

    /// <summary>What to do first; empty where there is no cause to look for.</summary>
    public static string Check(Verdict verdict)
    {
        if (verdict.Told is not [var first, ..])
        {
            return "";
        }

        return first.Probability < Settled && verdict.Next is [var next, ..] ? Settle(next.Quantity) : CheckFor(first.Name);
    }

    /// <summary>How to make the reading that parts the causes.</summary>
    private static string Settle(string quantity) =>
        quantity switch
        {
            QuantityKey.DcResistance => "read the ohms once more, cold, on a second meter",
            QuantityKey.Inductance => "read the inductance",
            QuantityKey.Q => "read Q at 3 kHz",
            QuantityKey.Turns => "check the counter with a marked test",
            _ => "measure 10 m off the spool",
        };

    /// <summary>The quickest check of one cause. Common practice, no source.</summary>
    private static string CheckFor(string cause) =>
        cause switch
        {
            "thin-wire" or "thick-wire" => "measure 10 m off the spool",
            "stretched-wire" => "check the tension",
            "miscount" => "check the counter with a marked test",
            "warm-coil" => "let it cool and read again",
            "shorted-turns" => "look for bare wire at start, splice and flange",
            "open" => "then look for a broken lead",
            "broken-coupled" => "check joints and start lead",
            "high-resistance-joint" => "reheat the joint and read again",
            "coil-bridged" or "wired-parallel" => "check the leads against the wiring sheet",
            "wrong-gauge" => "measure the wire",
            "wrong-core" => "check poles and magnets",
            "meter-error" => "check range, leads and zero",
            _ => "",
        };
}
