using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Stock;

/// <summary>What the coils of a batch took from its spools.</summary>
internal static class SpoolBooking
{
    /// <summary>One use for each coil that has a reading in force, and one for each coil scrapped: an undone reading or event books nothing.</summary>
    public static IEnumerable<(string Spool, SpoolUse Use)> Of(BatchRecord batch, CoilPlan plan, IReadOnlyList<BatchEventRecord> events, IReadOnlyList<ReadingRecord> inForce)
    {
        BatchHistory history = new(batch, events, new Dictionary<string, DateTimeOffset>());
        foreach (IGrouping<string, ReadingRecord> coil in inForce.GroupBy(reading => reading.Tag, StringComparer.Ordinal))
        {
            DateTimeOffset timeUtc = coil.Min(reading => reading.TimeUtc);
            double turns = history.EndedLow.TryGetValue(coil.Key, out double ended) ? ended : TurnsAt(history, timeUtc) ?? plan.SetUp.Turns;
            yield return (BatchHistory.SpoolAt(batch, history.InForce, timeUtc), new SpoolUse(batch.Name, coil.Key, plan.WireM(turns), false, timeUtc));
        }

        foreach (BatchEventRecord scrap in history.InForce.Where(one => one.Kind == BatchEventKind.Scrapped))
        {
            yield return (BatchHistory.SpoolAt(batch, history.InForce, scrap.TimeUtc), new SpoolUse(batch.Name, scrap.Tag, plan.WireM(scrap.Turns ?? plan.SetUp.Turns), true, scrap.TimeUtc));
        }
    }

    private static double? TurnsAt(BatchHistory history, DateTimeOffset timeUtc) =>
        history.InForce.LastOrDefault(one => one.Kind == BatchEventKind.SpoolTaken && one.TimeUtc <= timeUtc)?.Turns;
}
