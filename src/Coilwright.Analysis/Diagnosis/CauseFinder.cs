using Coilwright.Analysis.Quantities;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>Weighs what may be wrong with each coil of a batch against the readings of all of them.</summary>
/// <remarks>
/// Bayes' rule on two levels. Coils of one spool share an offset of their ohms (the wire, or the set-up) that is learnt from the others,
/// with a change of spool at some coil as one more possibility; inductance and Q share what target, forecast, meter or counter are off by.
/// Given these, each coil has one of the causes of <see cref="CauseTable"/> with a size. Self-capacitance belongs to what is expected (
/// <see cref="MeterModel"/>); that a fault moves its share is taken into account for the turns alone.
/// </remarks>
public static class CauseFinder
{
    /// <summary>Causes less likely than this are not told.</summary>
    public const double LeastTold = 0.01;

    /// <summary>A spool's offset is learnt from this many coils at most; more would change nothing and cost time.</summary>
    private const int LearntFrom = 32;

    /// <summary>Probable causes of one coil by itself, most probable first; empty when nothing was measured.</summary>
    public static IReadOnlyList<ProbableCause> Find(CoilEvidence evidence) => FindAll([evidence])[0].Causes;

    /// <summary>The same for every coil of a batch, each in the light of the others of its spool.</summary>
    /// <param name="batch">Every coil, in the order they were wound.</param>
    /// <param name="rates">How often each fault happens; the starting rates unless said.</param>
    public static IReadOnlyList<CoilDiagnosis> FindAll(IReadOnlyList<CoilEvidence> batch, CauseRates? rates = null)
    {
        IReadOnlyDictionary<int, CoilDiagnosis> found = Diagnose(batch, [.. Enumerable.Range(0, batch.Count)], rates).Coils;
        return [.. Enumerable.Range(0, batch.Count).Select(n => found[n])];
    }

    /// <summary>What is said of a batch once, and of some of its coils.</summary>
    /// <param name="batch">Every coil, in the order they were wound.</param>
    /// <param name="wanted">Places of those that are asked for.</param>
    /// <param name="rates">How often each fault happens; the starting rates unless said.</param>
    public static BatchDiagnosis Diagnose(IReadOnlyList<CoilEvidence> batch, IReadOnlyCollection<int> wanted, CauseRates? rates = null)
    {
        Dictionary<int, CoilDiagnosis> answers = [];
        HashSet<int> asked = [.. wanted];
        BatchOffsets offsets = new(batch, rates ?? CauseRates.Starting);
        BatchFindings findings = new(batch);
        foreach (IGrouping<string, int> spool in Enumerable.Range(0, batch.Count).GroupBy(n => batch[n].Spool, StringComparer.Ordinal))
        {
            int[] measured = [.. spool.Where(n => HasReading(batch[n]) && !batch[n].Open)];
            SpoolLearning learning = new(batch, [.. Spread(measured)], offsets);
            findings.Add(learning, measured);
            int[] here = [.. spool.Where(asked.Contains)];
            CoilDiagnosis[] found = new CoilDiagnosis[here.Length];
            Parallel.For(0, here.Length, n =>
                found[n] = Diagnose(batch[here[n]], here[n], learning, measured.Length < CommonOffset.Fewest)
            );
            for (int n = 0; n < here.Length; n++)
            {
                answers.Add(here[n], found[n]);
            }
        }

        return new BatchDiagnosis(findings.Found(), answers);
    }

    private static CoilDiagnosis Diagnose(CoilEvidence coil, int place, SpoolLearning learning, bool namesSpool)
    {
        if (coil.Open)
        {
            return OpenCoil();
        }

        return HasReading(coil)
            ? Posterior.Compute(coil, learning.Weigh(place), learning.Run, learning.PlaceOf(place), namesSpool)
            : new CoilDiagnosis([], []);
    }

    /// <summary>At most <see cref="LearntFrom"/> of them, evenly over the run.</summary>
    private static IEnumerable<int> Spread(int[] places) =>
        places.Length <= LearntFrom
            ? places
            : Enumerable.Range(0, LearntFrom).Select(n => places[(int)((long)n * places.Length / LearntFrom)]);

    private static bool HasReading(CoilEvidence evidence) => evidence is not { OhmAt20C: null, InductanceRatio: null, QualityRatio: null };

    private static CoilDiagnosis OpenCoil() =>
        new(
            [
                new ProbableCause("open", 0.95, "open: reheat the joints first"),
                new ProbableCause("meter-error", 0.05, "wrong reading: a lead off its clip"),
            ],
            [new NextReading(QuantityKey.DcResistance, Bits(0.95))]
        )
        {
            Group = ["open"],
        };

    private static double Bits(double p) => -(p * Math.Log2(p) + (1 - p) * Math.Log2(1 - p));
}
