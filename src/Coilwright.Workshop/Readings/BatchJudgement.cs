using System.Globalization;
using Coilwright.Analysis.Diagnosis;
using Coilwright.Analysis.Quantities;

namespace Coilwright.Workshop.Readings;

/// <summary>
/// Judges the coils of a batch together: what they have in common is learnt from all of them before one of them is blamed.
/// </summary>
public static class BatchJudgement
{
    /// <summary>A verdict for each coil, in order, with causes wherever something was measured.</summary>
    /// <param name="limits">What they are judged against.</param>
    /// <param name="coils">Readings in force of each coil, with its spool's label or an empty one.</param>
    /// <param name="golden">Readings of the golden piece, or null: Q is then held against it as well.</param>
    public static IReadOnlyList<Verdict> Judge(
        VerdictLimits limits,
        IReadOnlyList<(string Spool, IReadOnlyList<ReadingRecord> InForce)> coils,
        IReadOnlyList<ReadingRecord>? golden = null
    ) => Judge(limits, coils, golden, [.. Enumerable.Range(0, coils.Count)]);

    /// <summary>The verdicts on some coils in the light of the others; the same as among all of them, and sooner.</summary>
    /// <param name="limits">What it is judged against.</param>
    /// <param name="coils">All coils of the batch.</param>
    /// <param name="places">Which of them, from 0; the verdicts come in this order.</param>
    public static IReadOnlyList<Verdict> JudgeSome(
        VerdictLimits limits,
        IReadOnlyList<(string Spool, IReadOnlyList<ReadingRecord> InForce)> coils,
        int[] places
    ) => Judge(limits, coils, golden: null, places);

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
        return [.. coils.Select(inForce => Weigh(limits, golden: null, inForce).Item1)];
    }

    private static Verdict[] Judge(
        VerdictLimits forecast,
        IReadOnlyList<(string Spool, IReadOnlyList<ReadingRecord> InForce)> coils,
        IReadOnlyList<ReadingRecord>? golden,
        int[] wanted
    )
    {
        GoldenPiece? piece = golden is null ? null : new GoldenPiece(forecast, golden);
        VerdictLimits limits = golden is null
            ? LearntReadings.FromBatch(forecast, [.. coils.Select(coil => coil.InForce)])
            : LearntReadings.FromGolden(forecast, golden);
        (Verdict Verdict, CoilEvidence? Evidence)[] judged = [.. coils.Select(coil => Weigh(limits, piece, coil.InForce))];
        int[] weighed = [.. Enumerable.Range(0, judged.Length).Where(n => judged[n].Evidence is not null)];
        Dictionary<int, int> placeOf = weighed.Select((n, place) => (n, place)).ToDictionary(one => one.n, one => one.place);
        IReadOnlyDictionary<int, CoilDiagnosis> found = CauseFinder.FindSome(
            [.. weighed.Select(n => judged[n].Evidence! with { Spool = coils[n].Spool })],
            [.. wanted.Where(placeOf.ContainsKey).Select(n => placeOf[n])]
        );
        return
        [
            .. wanted.Select(n =>
                placeOf.TryGetValue(n, out int place)
                    ? VerdictRule.WithCauses(judged[n].Verdict, found[place], coils[n].InForce)
                    : judged[n].Verdict
            ),
        ];
    }

    /// <summary>What is off for the whole batch, said once, so that no single coil is blamed for it; empty when nothing is.</summary>
    /// <param name="limits">What they are judged against.</param>
    /// <param name="coils">All coils of the batch.</param>
    public static IReadOnlyList<string> Remarks(
        VerdictLimits limits,
        IReadOnlyList<(string Spool, IReadOnlyList<ReadingRecord> InForce)> coils
    )
    {
        IReadOnlyList<ReadingRecord>[] all = [.. coils.Select(coil => coil.InForce)];
        double[] ohms =
        [
            .. all.Select(coil => Last(coil, QuantityKey.DcResistance))
                .OfType<ReadingRecord>()
                .Select(one => Math.Log(one.Comparable() / limits.Resistance.Nominal)),
        ];
        bool target = limits.Inductance is { IsTarget: true };
        double[] henries =
        [
            .. all.Select(coil => Last(coil, QuantityKey.Inductance))
                .OfType<ReadingRecord>()
                .Select(one => one.Si / limits.WantedInductance(one.AtHz).Henry)
                .OfType<double>()
                .Select(ratio => Math.Log(ratio)),
        ];
        if (WholeBatch.InductanceOff(ohms, henries) is not { } off)
        {
            return [];
        }

        string percent = (Math.Abs(Math.Exp(off) - 1) * 100).ToString("0", CultureInfo.InvariantCulture),
            side = off > 0 ? "over" : "under",
            wanted = target ? "target" : "forecast",
            causes = target ? "target, meter or magnets" : "meter or magnets";
        return [$"the whole batch reads about {percent} % {side} the {wanted} inductance: {causes}, not single coils"];
    }

    private static ReadingRecord? Last(IReadOnlyList<ReadingRecord> readings, string quantity) =>
        readings.LastOrDefault(reading => reading.Quantity == quantity && reading is { Si: > 0, Flag: "" });

    private static (Verdict, CoilEvidence?) Weigh(VerdictLimits limits, GoldenPiece? golden, IReadOnlyList<ReadingRecord> inForce)
    {
        (Verdict verdict, CoilEvidence? evidence) = VerdictRule.Weigh(limits, inForce);
        if (golden is null)
        {
            return (verdict, evidence);
        }

        return (golden.Compare(verdict, inForce), evidence is null ? null : golden.Rebase(evidence, inForce));
    }
}
