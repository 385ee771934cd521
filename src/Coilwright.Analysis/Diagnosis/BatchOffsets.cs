using System.Collections.Concurrent;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>
/// Weighs coils of one batch, each with what the others have in common in inductance and Q. Safe for several threads.
/// </summary>
/// <param name="batch">Every coil of the batch.</param>
/// <param name="rates">How often each fault happens.</param>
internal sealed class BatchOffsets(IReadOnlyList<CoilEvidence> batch, CauseRates rates)
{
    private readonly LeaveOneOut _henry = Of(batch, coil => coil.InductanceRatio),
        _quality = Of(batch, coil => coil.QualityRatio);

    /// <summary>Tables of causes by what they depend on; coils of a batch mostly share one.</summary>
    private readonly ConcurrentDictionary<CoilEvidence, IReadOnlyList<CauseTerm>> _tables = new();

    public WeighedCoil Weigh(int self)
    {
        CoilEvidence evidence = batch[self],
            key =
                evidence with
                {
                    Spool = "",
                    Open = false,
                    OhmAt20C = null,
                    InductanceRatio = null,
                    InductanceOverWanted = null,
                    QualityRatio = null,
                    TurnsRatio = evidence.TurnsRatio is null ? null : 1,
                };
        return new WeighedCoil(
            evidence,
            _tables.GetOrAdd(key, one => CauseTable.CreateTerms(one, rates)),
            CommonOffset.Learn(_henry.Without(self), evidence.InductanceOffset, CauseTerm.HenryScatter),
            CommonOffset.Learn(_quality.Without(self), evidence.QualityOffset, CauseTerm.QualityScatter)
        );
    }

    private static LeaveOneOut Of(IReadOnlyList<CoilEvidence> batch, Func<CoilEvidence, double?> ratio) =>
        new(
            Enumerable
                .Range(0, batch.Count)
                .Where(n => !batch[n].Open && ratio(batch[n]) is > 0)
                .Select(n => (n, Math.Log(ratio(batch[n])!.Value)))
        );
}
