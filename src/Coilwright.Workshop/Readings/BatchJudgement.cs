using Coilwright.Analysis.Diagnosis;

namespace Coilwright.Workshop.Readings;

/// <summary>Judges the coils of a batch together: what they have in common is learnt from all of them before one of them is blamed.</summary>
public static class BatchJudgement
{
    /// <summary>A verdict for each coil, in order, with causes wherever something was measured.</summary>
    /// <param name="limits">What they are judged against.</param>
    /// <param name="coils">Readings in force of each coil, with its spool's label or an empty one.</param>
    /// <param name="golden">Readings of the golden piece, or null: Q is then held against it as well.</param>
    public static IReadOnlyList<Verdict> Judge(VerdictLimits limits, IReadOnlyList<(string Spool, IReadOnlyList<ReadingRecord> InForce)> coils, IReadOnlyList<ReadingRecord>? golden = null)
    {
        GoldenPiece? piece = golden is null ? null : new GoldenPiece(limits, golden);
        (Verdict Verdict, CoilEvidence? Evidence)[] judged = [.. coils.Select(coil => Weigh(limits, piece, coil.InForce))];
        int[] weighed = [.. Enumerable.Range(0, judged.Length).Where(n => judged[n].Evidence is not null)];
        IReadOnlyList<CoilDiagnosis> found = CauseFinder.FindAll([.. weighed.Select(n => judged[n].Evidence! with { Spool = coils[n].Spool })]);
        Verdict[] verdicts = [.. judged.Select(one => one.Verdict)];
        for (int place = 0; place < weighed.Length; place++)
        {
            verdicts[weighed[place]] = VerdictRule.WithCauses(verdicts[weighed[place]], found[place]);
        }

        return verdicts;
    }

    private static (Verdict, CoilEvidence?) Weigh(VerdictLimits limits, GoldenPiece? golden, IReadOnlyList<ReadingRecord> inForce)
    {
        (Verdict verdict, CoilEvidence? evidence) = VerdictRule.Weigh(limits, inForce);
        return golden is null ? (verdict, evidence) : (golden.Compare(verdict, inForce), evidence is null ? null : golden.Rebase(evidence, inForce));
    }
}
