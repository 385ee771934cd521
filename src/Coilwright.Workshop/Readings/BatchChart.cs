using Coilwright.Analysis.Charts;

namespace Coilwright.Workshop.Readings;

/// <summary>The run of a batch's coils as a chart of their resistance at 20 °C.</summary>
public static class BatchChart
{
    /// <summary>The rules in words, and how many good coils pass on average between two false alarms of theirs, by exact calculation for known limits.</summary>
    public const string Rules = "Western Electric";

    /// <summary>The chart with its limits and signals; null for fewer than two coils.</summary>
    /// <remarks>Coils outside their limits are left out: they are known already, and one of them would widen the limits for all.</remarks>
    public static RunChart? Of(IEnumerable<(string Tag, Verdict Verdict)> coilsInOrder)
    {
        (string Tag, double Ohm)[] run = [.. coilsInOrder.Where(coil => !coil.Verdict.OffLimits && coil.Verdict.DcResistanceAt20C is not null).Select(coil => (coil.Tag, coil.Verdict.DcResistanceAt20C!.Value.Value))];
        double[] ohms = [.. run.Select(coil => coil.Ohm)];
        return IndividualsChart.Fit(ohms) is { } chart
            ? new RunChart(chart.Centre, chart.LowerLimit, chart.UpperLimit, Math.Min(ohms.Length, IndividualsChart.UsualBase), RuleSet.WesternElectric.TogetherEvery, [.. chart.Signals(ohms).Select(signal => (run[signal.Index].Tag, signal.Rule))])
            : null;
    }

    /// <summary>Signals of the run, each with the tag of the coil that completes it; empty for fewer than two coils.</summary>
    public static IReadOnlyList<(string Tag, string Rule)> Signals(IEnumerable<(string Tag, Verdict Verdict)> coilsInOrder) => Of(coilsInOrder)?.Signals ?? [];
}
