using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Summaries;

namespace Coilwright.Workshop.Stock;

/// <summary>What the coils of a batch took from its spools.</summary>
internal static class SpoolBooking
{
    /// <summary>One use for each coil, wound or scrapped.</summary>
    /// <param name="dossier">The batch.</param>
    /// <param name="plan">What a coil takes.</param>
    public static IEnumerable<(string Spool, SpoolUse Use)> Of(BatchDossier dossier, CoilPlan plan) =>
        WireTaken
            .Each(dossier)
            .Select(one => (one.Spool, new SpoolUse(dossier.Batch.Name, one.Tag, WireM(plan, one.Turns), one.Scrapped, one.AtUtc)));

    /// <summary>One use for coils alike.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="summary">Its summary.</param>
    /// <param name="plan">What a coil takes.</param>
    public static IEnumerable<(string Spool, SpoolUse Use)> Of(BatchRecord batch, BatchSummary summary, CoilPlan plan) =>
        summary.Wire.Select(one =>
            (one.Spool, new SpoolUse(batch.Name, "", one.Coils * WireM(plan, one.Turns), one.Scrapped, one.LastUtc) { Coils = one.Coils })
        );

    private static double WireM(CoilPlan plan, double? turns) => plan.WireM(turns ?? plan.SetUp.Turns);
}
