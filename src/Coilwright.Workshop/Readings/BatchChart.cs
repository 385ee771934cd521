using Coilwright.Analysis.Charts;
using Coilwright.Analysis.Quantities;

namespace Coilwright.Workshop.Readings;

/// <summary>The run of a batch's coils as a chart of their resistance at 20 °C.</summary>
public static class BatchChart
{
    /// <summary>
    /// The rules in words, and how many good coils pass on average between two false alarms of theirs, by exact calculation for known
    /// limits.
    /// </summary>
    public const string Rules = "Western Electric";

    /// <summary>The one rule of which coils count for the centre and the spread of a run, on every chart.</summary>
    /// <remarks>
    /// A rejected coil, or one to be read again, is known already, and one of them would widen the limits for all; a resistance in doubt is
    /// no value. What was taken back has no verdict.
    /// </remarks>
    /// <param name="verdict">On the coil.</param>
    /// <param name="quantity">What is charted, by its name in the file format.</param>
    public static bool Counts(Verdict verdict, string quantity = QuantityKey.DcResistance) =>
        !verdict.OffLimits && (quantity != QuantityKey.DcResistance || verdict.DcResistanceAt20C is not null);

    /// <summary>The chart with its limits and signals; null for fewer than two coils that count.</summary>
    public static RunChart? Of(IEnumerable<(string Tag, Verdict Verdict)> coilsInOrder)
    {
        (string Tag, Verdict Verdict)[] all = [.. coilsInOrder];
        (string Tag, double Ohm)[] run =
        [
            .. all.Where(coil => Counts(coil.Verdict)).Select(coil => (coil.Tag, coil.Verdict.DcResistanceAt20C!.Value.Value)),
        ];
        double[] ohms = [.. run.Select(coil => coil.Ohm)];
        if (IndividualsChart.Fit(ohms) is not { } chart)
        {
            return null;
        }

        int from = Math.Min(ohms.Length, IndividualsChart.UsualBase);
        (string, string)[] signals = [.. chart.Signals(ohms).Select(signal => (run[signal.Index].Tag, signal.Rule))];
        return new RunChart(chart.Centre, chart.LowerLimit, chart.UpperLimit, from, RuleSet.WesternElectric.TogetherEvery, signals)
        {
            LeftOut = all.Length - run.Length,
        };
    }

    /// <summary>Signals of the run, each with the tag of the coil that completes it; empty for fewer than two coils.</summary>
    public static IReadOnlyList<(string Tag, string Rule)> Signals(IEnumerable<(string Tag, Verdict Verdict)> coilsInOrder) =>
        Of(coilsInOrder)?.Signals ?? [];
}
