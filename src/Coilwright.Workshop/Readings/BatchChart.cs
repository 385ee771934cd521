using Coilwright.Analysis.Charts;

namespace Coilwright.Workshop.Readings;

/// <summary>The run of a batch's coils as a chart of their resistance at 20 °C.</summary>
public static class BatchChart
{
    /// <summary>Signals of the run, each with the tag of the coil that completes it; empty for fewer than two coils.</summary>
    /// <remarks>Rejected coils are left out: they are known already, and one of them would widen the limits for all.</remarks>
    public static IReadOnlyList<(string Tag, string Rule)> Signals(IEnumerable<(string Tag, Verdict Verdict)> coilsInOrder)
    {
        (string Tag, double Ohm)[] run = [.. coilsInOrder.Where(coil => coil.Verdict.Kind != VerdictKind.Reject && coil.Verdict.DcResistanceAt20C is not null).Select(coil => (coil.Tag, coil.Verdict.DcResistanceAt20C!.Value.Value))];
        double[] ohms = [.. run.Select(coil => coil.Ohm)];
        return [.. IndividualsChart.Fit(ohms)?.Signals(ohms).Select(signal => (run[signal.Index].Tag, signal.Rule)) ?? []];
    }
}
