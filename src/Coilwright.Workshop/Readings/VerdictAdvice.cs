using System.Globalization;
using Coilwright.Analysis.Diagnosis;
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

    /// <summary>
    /// The likeliest cause in words with its probability, or those that the readings cannot tell apart, together; empty where nothing is
    /// wrong with the coil or nothing is known.
    /// </summary>
    public static string Cause(Verdict verdict)
    {
        Cause[] group = GroupOf(verdict);
        if (group.Length < 2 || group[0].Name == "meter-error")
        {
            return verdict.Told is [var first, ..] ? Sentence(first) : "";
        }

        string others = string.Join(" or ", group.Skip(1).Select(cause => Entry.KeyLabels.Of(cause.Name)));
        string together = Percent(group.Sum(cause => cause.Probability));
        return $"{WordsOf(group[0])}; or {others} ({together} together): the readings cannot tell which";
    }

    /// <summary>
    /// What there is to say of the causes, line by line: the first or its group, then single ones by how likely they are.
    /// </summary>
    /// <param name="verdict">The verdict.</param>
    /// <param name="most">How many lines at most.</param>
    public static IReadOnlyList<string> Lines(Verdict verdict, int most) =>
        GroupOf(verdict).Length < 2
            ? [.. verdict.Told.Take(most).Select(Sentence)]
            : [Cause(verdict), .. verdict.Told.Take(most).Select(cause => $"{WordsOf(cause)} ({Percent(cause.Probability)})")];

    /// <summary>One cause in words, with its probability.</summary>
    public static string Sentence(Cause cause)
    {
        string words = WordsOf(cause);
        bool isSaidSo =
            words.EndsWith("suspected", StringComparison.Ordinal)
            || words.StartsWith("the readings", StringComparison.Ordinal)
            || cause.Name == "open";
        return $"{(isSaidSo ? "" : "probably ")}{words} ({Percent(cause.Probability)})";
    }

    /// <summary>What to do first; empty where there is no cause to look for.</summary>
    public static string Check(Verdict verdict)
    {
        if (verdict.Told is not [var first, ..])
        {
            return "";
        }

        bool settled = first.Probability >= Settled && GroupOf(verdict).Length < 2;
        return settled || verdict.Next.Count == 0 ? CauseTable.Find(first.Name)?.Check ?? "" : Settle(Parting(verdict.Next));
    }

    /// <summary>The causes that are told together.</summary>
    private static Cause[] GroupOf(Verdict verdict) => [.. verdict.Told.Where(cause => verdict.Group.Contains(cause.Name))];

    /// <summary>The reading that parts the causes: the quickest of those that tell at least half as much as the most telling one.</summary>
    private static NextReading Parting(IReadOnlyList<NextReading> next) =>
        next.Where(one => one.Information >= next[0].Information / 2).MinBy(one => one.Minutes)!;

    /// <summary>How to make the reading that parts the causes, and what it costs.</summary>
    private static string Settle(NextReading next)
    {
        string how = next.Quantity switch
        {
            QuantityKey.DcResistance => "read the ohms once more, cold, on a second meter",
            QuantityKey.Inductance => "read the inductance",
            QuantityKey.Q => "read Q at 3 kHz",
            QuantityKey.Turns => "check the counter with a marked test",
            _ => "measure 10 m off the spool",
        };
        return string.Create(CultureInfo.InvariantCulture, $"{how} (about {next.Minutes:0} min)");
    }

    private static string WordsOf(Cause cause) => cause.Detail.Length > 0 ? cause.Detail : Entry.KeyLabels.Of(cause.Name);

    private static string Percent(double probability) => probability.ToString("P0", CultureInfo.InvariantCulture);
}
