using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Events;

namespace Coilwright.Workshop.Stock;

/// <summary>What the coils of a batch took from its spools.</summary>
internal static class SpoolBooking
{
    /// <summary>
    /// One use for each coil that has a reading in force, and one for each coil scrapped: an undone reading or event books nothing.
    /// </summary>
    /// <param name="dossier">The batch.</param>
    /// <param name="plan">What a coil takes.</param>
    public static IEnumerable<(string Spool, SpoolUse Use)> Of(BatchDossier dossier, CoilPlan plan)
    {
        string batch = dossier.Batch.Name;
        foreach (CoilOrigin coil in dossier.Tags.Select(dossier.OriginOf))
        {
            double wireM = plan.WireM(dossier.TurnsOf(coil.Tag) ?? plan.SetUp.Turns);
            yield return (coil.Spool, new SpoolUse(batch, coil.Tag, wireM, false, coil.WoundUtc));
        }

        foreach (Scrapped scrap in dossier.History.InForce.OfType<Scrapped>())
        {
            double wireM = plan.WireM(scrap.Turns ?? plan.SetUp.Turns);
            yield return (dossier.SpoolAt(scrap.TimeUtc), new SpoolUse(batch, scrap.Tag, wireM, true, scrap.TimeUtc));
        }
    }
}
