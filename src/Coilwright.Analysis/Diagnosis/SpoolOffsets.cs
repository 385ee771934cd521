using System.Collections.Concurrent;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>
/// Weighs coils of one spool, each with what the others of it have in common in inductance and Q. Safe for several threads.
/// </summary>
/// <param name="batch">Every coil of the batch.</param>
/// <param name="measured">Places of the spool's coils that were read.</param>
internal sealed class SpoolOffsets(IReadOnlyList<CoilEvidence> batch, int[] measured)
{
    private readonly LeaveOneOut _ohm = new(
        measured.Where(n => batch[n].OhmAt20C is > 0).Select(n => (n, Math.Log(batch[n].OhmAt20C!.Value / batch[n].NominalOhm)))
    );
    private readonly LeaveOneOut _henry = new(
        measured.Where(n => batch[n].InductanceRatio is > 0).Select(n => (n, Math.Log(batch[n].InductanceRatio!.Value)))
    );
    private readonly LeaveOneOut _quality = new(
        measured.Where(n => batch[n].QualityRatio is > 0).Select(n => (n, Math.Log(batch[n].QualityRatio!.Value)))
    );

    /// <summary>Tables of causes by what they depend on; coils of a batch mostly share one.</summary>
    private readonly ConcurrentDictionary<CoilEvidence, IReadOnlyList<CauseTable.Term>> _tables = new();

    public WeighedCoil Weigh(int self)
    {
        CoilEvidence evidence = batch[self],
            key = evidence with { Open = false, OhmAt20C = null, InductanceRatio = null, QualityRatio = null, TurnsRatio = null };
        (int Count, double Median, double Distance) henry = _henry.Without(self);
        bool ofAll = !WholeBatch.MoveTogether(_ohm.Without(self).Median, henry.Median);
        return new WeighedCoil(
            evidence,
            _tables.GetOrAdd(key, CauseTable.CreateTerms),
            CommonOffset.Learn(henry, evidence.InductanceOffset, CauseTable.HenryScatter, ofAll),
            CommonOffset.Learn(_quality.Without(self), evidence.QualityOffset, CauseTable.QualityScatter)
        );
    }
}
