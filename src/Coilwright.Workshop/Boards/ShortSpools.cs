using System.Globalization;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Stock;

namespace Coilwright.Workshop.Boards;

/// <summary>Spools that do not finish the batches that are wound from them.</summary>
internal static class ShortSpools
{
    public static IEnumerable<TodayLine> Of(IReadOnlyList<BatchProgress> running, IReadOnlyList<SpoolStatus> spools) =>
        spools
            .Select(spool => (Spool: spool, Runs: running.Where(run => NameKey.Same(run.History.Spool, spool.Spool.Label)).ToArray()))
            .Where(pair => pair.Runs.Length > 0)
            .Select(pair => Line(pair.Spool, pair.Runs))
            .OfType<TodayLine>();

    /// <summary>Several batches share a spool: what all of them still take is held against it.</summary>
    private static TodayLine? Line(SpoolStatus spool, BatchProgress[] runs)
    {
        double neededM = runs.Sum(run => run.CoilsLeft * run.Plan.WireM(run.WantedTurns));
        if (neededM <= 0 || spool.WillFinish(1, neededM) is not ("no" or "perhaps") || spool.RemainingM is not { } left)
        {
            return null;
        }

        string wanted = string.Join(" and ", runs.Select(run => $"{Count(run.CoilsLeft)} of {run.Status.Batch.Name}"));
        string may = spool.WillFinish(1, neededM) == "no" ? "does not finish" : "may not finish";
        string brief = $"It {may} the coils still to be wound: {wanted}.";
        return new TodayLine(
            TodayMark.Short,
            "Spool " + spool.Spool.Label,
            $"{brief} {Metres(left.Value)} left, {Metres(neededM)} needed.",
            new WorkLink("See the wire", WorkPlace.Spools)
        )
        {
            Brief = brief,
        };
    }

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Metres(double metres) => string.Create(CultureInfo.InvariantCulture, $"{metres:#,##0} m");
}
