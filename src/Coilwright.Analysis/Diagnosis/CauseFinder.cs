using Coilwright.Analysis.Quantities;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>Weighs what may be wrong with each coil of a batch against the readings of all of them.</summary>
/// <remarks>
/// Bayes' rule on two levels. Coils of one spool share an offset of their ohms (the wire, or the set-up) that is learnt from the others;
/// inductance and Q share
/// what the forecast is off by. Given these, each coil has one of the causes of <see cref="CauseTable"/> with a size. How a cause moves a
/// reading is
/// arithmetic or the coupled circuit of <see cref="ShortedTurns"/>; how often it happens and how much it scatters is our assumption and has
/// no source.
/// Self-capacitance belongs to what is expected (<see cref="MeterModel"/>); that a fault moves its share too is not taken into account.
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
        IReadOnlyDictionary<int, CoilDiagnosis> found = FindSome(batch, [.. Enumerable.Range(0, batch.Count)]);
        return [.. Enumerable.Range(0, batch.Count).Select(n => found[n])];
    }

    /// <summary>The same for some coils of a batch only, by their place in it.</summary>
    /// <param name="batch">Every coil.</param>
    /// <param name="wanted">Places of those that are asked for.</param>
    public static IReadOnlyDictionary<int, CoilDiagnosis> FindSome(IReadOnlyList<CoilEvidence> batch, IReadOnlyCollection<int> wanted)
    {
        Dictionary<int, CoilDiagnosis> answers = [];
        HashSet<int> asked = [.. wanted];
        foreach (IGrouping<string, int> spool in Enumerable.Range(0, batch.Count).GroupBy(n => batch[n].Spool, StringComparer.Ordinal))
        {
            int[] places = [.. spool],
                here = [.. places.Where(asked.Contains)];
            if (here.Length > 0)
            {
                FindOfSpool(batch, places, here, answers);
            }
        }

        return answers;
    }

    private static void FindOfSpool(IReadOnlyList<CoilEvidence> batch, int[] places, int[] asked, Dictionary<int, CoilDiagnosis> answers)
    {
        int[] measured = [.. places.Where(n => HasReading(batch[n]) && !batch[n].Open)],
            learnt = [.. Spread(measured)];
        SpoolOffsets offsets = new(batch, measured);
        WeighedCoil[] learning = new WeighedCoil[learnt.Length];
        double[][] logs = new double[learnt.Length][];
        Parallel.For(0, learnt.Length, n =>
        {
            learning[n] = offsets.Weigh(learnt[n]);
            logs[n] = [.. learning[n].Likelihood.Select(likelihood => Math.Log(likelihood))];
        });
        double[] shared = new double[SpoolPrior.Grid.Length];
        foreach (double[] one in logs) // in their order, so that the sum is the same every time
        {
            for (int g = 0; g < shared.Length; g++)
            {
                shared[g] += one[g];
            }
        }

        CoilDiagnosis[] found = new CoilDiagnosis[asked.Length];
        CoilDiagnosis Diagnose(int n)
        {
            if (batch[n].Open)
            {
                return OpenCoil();
            }

            if (!HasReading(batch[n]))
            {
                return new CoilDiagnosis([], []);
            }

            int place = Array.IndexOf(learnt, n);
            return place >= 0
                ? Posterior.Compute(batch[n], learning[place], shared, isAmong: true)
                : Posterior.Compute(batch[n], offsets.Weigh(n), shared, isAmong: false);
        }

        Parallel.For(0, asked.Length, a => found[a] = Diagnose(asked[a]));
        for (int a = 0; a < asked.Length; a++)
        {
            answers.Add(asked[a], found[a]);
        }
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
        );

    private static double Bits(double p) => -(p * Math.Log2(p) + (1 - p) * Math.Log2(1 - p));
}
