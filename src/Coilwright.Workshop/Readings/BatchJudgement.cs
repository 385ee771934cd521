using Coilwright.Analysis.Diagnosis;

namespace Coilwright.Workshop.Readings;

/// <summary>
/// Judges the coils of a batch together: what they have in common is learnt from all of them, and said once, before one of them is blamed.
/// </summary>
public static class BatchJudgement
{
    /// <summary>A verdict for each coil, in order, with causes wherever something was measured.</summary>
    /// <param name="limits">What they are judged against.</param>
    /// <param name="coils">Readings in force of each coil, with its spool's label or an empty one, in the order they were wound.</param>
    /// <param name="golden">Readings of the golden piece, or null: Q is then held against it as well.</param>
    public static IReadOnlyList<Verdict> Judge(
        VerdictLimits limits,
        IReadOnlyList<(string Spool, IReadOnlyList<ReadingRecord> InForce)> coils,
        IReadOnlyList<ReadingRecord>? golden = null
    ) => JudgeAll(limits, coils, golden).Verdicts;

    /// <summary>The same, with what is said of the batch.</summary>
    /// <param name="limits">What they are judged against.</param>
    /// <param name="coils">Readings in force of each coil, with its spool's label or an empty one, in the order they were wound.</param>
    /// <param name="golden">Readings of the golden piece, or null.</param>
    /// <param name="rates">How often each fault happens in this shop; the starting rates unless said.</param>
    public static JudgedBatch JudgeAll(
        VerdictLimits limits,
        IReadOnlyList<(string Spool, IReadOnlyList<ReadingRecord> InForce)> coils,
        IReadOnlyList<ReadingRecord>? golden = null,
        CauseRates? rates = null
    ) => Judge(limits, coils, golden, [.. Enumerable.Range(0, coils.Count)], rates);

    /// <summary>The verdicts on some coils in the light of the others; the same as among all of them, and sooner.</summary>
    /// <param name="limits">What it is judged against.</param>
    /// <param name="coils">All coils of the batch.</param>
    /// <param name="places">Which of them, from 0; the verdicts come in this order.</param>
    /// <param name="rates">How often each fault happens in this shop; the starting rates unless said.</param>
    public static JudgedBatch JudgeSome(
        VerdictLimits limits,
        IReadOnlyList<(string Spool, IReadOnlyList<ReadingRecord> InForce)> coils,
        int[] places,
        CauseRates? rates = null
    ) => Judge(limits, coils, golden: null, places, rates);

    /// <summary>The verdicts without causes: enough for the run's chart, and sooner.</summary>
    public static IReadOnlyList<Verdict> WithoutCauses(
        VerdictLimits limits,
        IReadOnlyList<(string Spool, IReadOnlyList<ReadingRecord> InForce)> coils
    ) => [.. coils.Select(coil => VerdictRule.Weigh(limits, coil.InForce).Verdict)];

    /// <summary>A verdict for each coil, in order, without causes.</summary>
    /// <param name="forecast">What they are judged against.</param>
    /// <param name="coils">Readings in force of each coil.</param>
    internal static IReadOnlyList<Verdict> Weigh(VerdictLimits forecast, IReadOnlyList<IReadOnlyList<ReadingRecord>> coils)
    {
        VerdictLimits limits = LearntReadings.FromBatch(forecast, coils);
        return [.. coils.Select(inForce => Weigh(limits, golden: null, inForce))];
    }

    private static JudgedBatch Judge(
        VerdictLimits forecast,
        IReadOnlyList<(string Spool, IReadOnlyList<ReadingRecord> InForce)> coils,
        IReadOnlyList<ReadingRecord>? golden,
        int[] wanted,
        CauseRates? rates
    )
    {
        GoldenPiece? piece = golden is null ? null : new GoldenPiece(forecast, golden);
        VerdictLimits limits = golden is null
            ? LearntReadings.FromBatch(forecast, [.. coils.Select(coil => coil.InForce)])
            : LearntReadings.FromGolden(forecast, golden);
        CoilEvidence?[] evidence = [.. coils.Select(coil => Evidence(limits, piece, coil.InForce))];
        Dictionary<int, Verdict> judged = wanted.Distinct().ToDictionary(n => n, n => Weigh(limits, piece, coils[n].InForce));
        int[] weighed = [.. Enumerable.Range(0, evidence.Length).Where(n => evidence[n] is not null)];
        Dictionary<int, int> placeOf = weighed.Select((n, place) => (n, place)).ToDictionary(one => one.n, one => one.place);
        if (weighed.Length == 0)
        {
            return new JudgedBatch([], [.. wanted.Select(n => judged[n])]);
        }

        BatchDiagnosis found = CauseFinder.Diagnose(
            [.. weighed.Select(n => evidence[n]! with { Spool = coils[n].Spool })],
            [.. wanted.Where(placeOf.ContainsKey).Select(n => placeOf[n])],
            rates
        );
        return new JudgedBatch(
            [.. found.Findings.Select(one => BatchRemark.Of(one, place => coils[weighed[place]].InForce[0].Tag))],
            [
                .. wanted.Select(n =>
                    placeOf.TryGetValue(n, out int place)
                        ? VerdictRule.WithCauses(judged[n], found.Coils[place], coils[n].InForce, forecast)
                        : judged[n]
                ),
            ]
        );
    }

    private static Verdict Weigh(VerdictLimits limits, GoldenPiece? golden, IReadOnlyList<ReadingRecord> inForce)
    {
        Verdict verdict = VerdictRule.Weigh(limits, inForce).Verdict;
        return golden is null ? verdict : golden.Compare(verdict, inForce);
    }

    private static CoilEvidence? Evidence(VerdictLimits limits, GoldenPiece? golden, IReadOnlyList<ReadingRecord> inForce)
    {
        CoilEvidence? evidence = VerdictRule.Evidence(limits, inForce);
        return golden is null || evidence is null ? evidence : golden.Rebase(evidence, inForce);
    }
}
