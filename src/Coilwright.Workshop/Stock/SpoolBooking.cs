using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Stock;

/// <summary>What the coils of a batch took from its spools.</summary>
internal static class SpoolBooking
{
    /// <summary>
    /// One use for each coil that has a reading in force, and one for each coil scrapped: an undone reading or event books nothing.
    /// </summary>
    /// <param name="batch">The batch.</param>
    /// <param name="plan">What a coil takes.</param>
    /// <param name="events">All of its events in order of entry.</param>
    /// <param name="readings">All of its readings in order of entry.</param>
    public static IEnumerable<(string Spool, SpoolUse Use)> Of(
        BatchRecord batch,
        CoilPlan plan,
        IReadOnlyList<BatchEventRecord> events,
        IReadOnlyList<ReadingRecord> readings
    )
    {
        BatchEventLog history = new(batch, events, new Dictionary<string, DateTimeOffset>());
        CoilOrigins origins = new(batch, events, readings);
        foreach (CoilOrigin coil in origins.Tags.Select(origins.Of))
        {
            double turns = history.EndedLow.TryGetValue(coil.Tag, out double ended)
                ? ended
                : TurnsAt(history, coil.WoundUtc) ?? plan.SetUp.Turns;
            yield return (coil.Spool, new SpoolUse(batch.Name, coil.Tag, plan.WireM(turns), false, coil.WoundUtc));
        }

        foreach (BatchEventRecord scrap in history.InForce.Where(one => one.Kind == BatchEventKind.Scrapped))
        {
            double wireM = plan.WireM(scrap.Turns ?? plan.SetUp.Turns);
            yield return (origins.SpoolAt(scrap.TimeUtc), new SpoolUse(batch.Name, scrap.Tag, wireM, true, scrap.TimeUtc));
        }
    }

    private static double? TurnsAt(BatchEventLog history, DateTimeOffset timeUtc) =>
        history.InForce.LastOrDefault(one => one.Kind == BatchEventKind.SpoolTaken && one.TimeUtc <= timeUtc)?.Turns;
}
