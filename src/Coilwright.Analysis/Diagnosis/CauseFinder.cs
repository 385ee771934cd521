namespace Coilwright.Analysis.Diagnosis;

/// <summary>Weighs what may be wrong with each coil of a batch against the readings of all of them.</summary>
/// <remarks>
/// Bayes' rule on two levels. Coils of one spool share an offset of their ohms (the wire, or the set-up) that is learnt from the others; inductance and Q share
/// what the forecast is off by. Given these, each coil has one of the causes of <see cref="CauseTable"/> with a size. How a cause moves a reading is
/// arithmetic or the coupled circuit of <see cref="ShortedTurns"/>; how often it happens and how much it scatters is our assumption and has no source.
/// Self-capacitance is not taken into account: near a tenth of the resonance it moves L by 1 %.
/// </remarks>
public static class CauseFinder
{
    /// <summary>Causes less likely than this are not told.</summary>
    public const double LeastTold = 0.01;

    /// <summary>A spool's offset is learnt from this many coils at most; more would change nothing and cost time.</summary>
    private const int LearntFrom = 40;

    /// <summary>Probable causes of one coil by itself, most probable first; empty when nothing was measured.</summary>
    public static IReadOnlyList<ProbableCause> Find(CoilEvidence evidence) => FindAll([evidence])[0].Causes;

    /// <summary>The same for every coil of a batch, each in the light of the others of its spool.</summary>
    public static IReadOnlyList<CoilDiagnosis> FindAll(IReadOnlyList<CoilEvidence> batch)
    {
        CoilDiagnosis[] answers = new CoilDiagnosis[batch.Count];
        foreach (IGrouping<string, int> spool in Enumerable.Range(0, batch.Count).GroupBy(n => batch[n].Spool, StringComparer.Ordinal))
        {
            FindOfSpool(batch, [.. spool], answers);
        }

        return answers;
    }

    private static void FindOfSpool(IReadOnlyList<CoilEvidence> batch, int[] places, CoilDiagnosis[] answers)
    {
        int[] measured = [.. places.Where(n => HasReading(batch[n]) && !batch[n].Open)];
        WeighedCoil[] learning = [.. Spread(measured).Select(n => Weighed(batch, measured, n))];
        double[] shared = new double[SpoolPrior.Grid.Length];
        foreach (WeighedCoil coil in learning)
        {
            for (int g = 0; g < shared.Length; g++)
            {
                shared[g] += Math.Log(coil.Likelihood[g]);
            }
        }

        int[] learnt = [.. Spread(measured)];
        foreach (int n in places)
        {
            int place = Array.IndexOf(learnt, n);
            answers[n] = batch[n].Open ? OpenCoil() : !HasReading(batch[n]) ? new CoilDiagnosis([], [])
                : Posterior.Of(batch[n], place >= 0 ? learning[place] : Weighed(batch, measured, n), shared, place >= 0);
        }
    }

    /// <summary>At most <see cref="LearntFrom"/> of them, evenly over the run.</summary>
    private static IEnumerable<int> Spread(int[] places) =>
        places.Length <= LearntFrom ? places : Enumerable.Range(0, LearntFrom).Select(n => places[(int)((long)n * places.Length / LearntFrom)]);

    private static WeighedCoil Weighed(IReadOnlyList<CoilEvidence> batch, int[] places, int self)
    {
        CoilEvidence evidence = batch[self];
        CoilEvidence[] others = [.. places.Where(n => n != self).Select(n => batch[n])];
        CommonOffset henry = CommonOffset.Learn(others.Where(one => one.InductanceRatio is > 0).Select(one => Math.Log(one.InductanceRatio!.Value)), evidence.InductanceOffset, CauseTable.HenryScatter);
        CommonOffset quality = CommonOffset.Learn(others.Where(one => one.QualityRatio is > 0).Select(one => Math.Log(one.QualityRatio!.Value)), evidence.QualityOffset, CauseTable.QualityScatter);
        return new WeighedCoil(evidence, CauseTable.Of(evidence), henry, quality);
    }

    private static bool HasReading(CoilEvidence evidence) => evidence is not { OhmAt20C: null, InductanceRatio: null, QualityRatio: null };

    private static CoilDiagnosis OpenCoil() => new(
        [new ProbableCause("open", 0.95, "open: reheat the joints first"), new ProbableCause("meter-error", 0.05, "a lead off its clip")],
        [new NextReading("dcResistance", Bits(0.95))]);

    private static double Bits(double p) => -(p * Math.Log2(p) + (1 - p) * Math.Log2(1 - p));
}
