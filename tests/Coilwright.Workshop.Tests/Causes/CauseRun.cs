using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Tests.Causes;

/// <summary>One coil as it was and as it was judged.</summary>
/// <param name="Coil">What is true.</param>
/// <param name="Verdict">What was said.</param>
/// <param name="Best">What the judge who knows the rates said; empty where it was not asked.</param>
internal sealed record JudgedCoil(SimulatedCoil Coil, Verdict Verdict, IReadOnlyList<string> Best)
{
    public string First => Verdict.Causes.Count > 0 ? Verdict.Causes[0].Name : "";

    public bool IsRight => First == Coil.Cause;

    /// <summary>Whether the true cause is among the first two that are told: what is no fault does not count.</summary>
    public bool IsAmongTwo => Verdict.Causes.Take(2).Any(cause => cause.Name == Coil.Cause);
}

/// <summary>Runs of simulated shops, judged.</summary>
/// <param name="seed">Seeds of one set of draws lie in the hundred thousand from here.</param>
internal sealed class CauseRun(int seed)
{
    /// <summary>Draws that may be looked at while the causes are worked on, and those kept back for the report.</summary>
    public const int Open = 1_000_000,
        KeptBack = 9_000_000;

    /// <summary>Every kind of fault the same number of times, one to a batch, with the judge who knows the rates.</summary>
    /// <param name="each">Batches of each kind and recipe.</param>
    /// <param name="quality">Whether Q is read.</param>
    /// <param name="henry">Whether L is read.</param>
    /// <param name="seen">Coils of each kind that the other judge has seen; 0 does without it.</param>
    public IReadOnlyList<JudgedCoil> Faults(int each, bool quality, bool henry = true, int seen = 0)
    {
        List<JudgedCoil> judged = [];
        foreach ((int index, SimulatedRecipe recipe) in SimulatedRecipe.All.Index())
        {
            SimulatedShop shop = new(recipe, seed + 10 * index + (quality ? 1 : 0) + (henry ? 0 : 2)),
                other = new(recipe, seed + 50_000 + 10 * index + (quality ? 1 : 0));
            (IReadOnlyList<SimulatedCoil>, int)[] known =
            [
                .. FaultRanges.All.SelectMany(kind => Enumerable.Range(0, seen).Select(_ => OneFault(other, kind.Kind, quality, henry))),
            ];
            NearestNeighbourJudge? best = seen > 0 ? new NearestNeighbourJudge(known) : null;
            foreach (FaultRanges.Range kind in FaultRanges.All)
            {
                for (int n = 0; n < each; n++)
                {
                    (IReadOnlyList<SimulatedCoil> batch, int at) = OneFault(shop, kind.Kind, quality, henry);
                    judged.Add(new JudgedCoil(batch[at], Judge(recipe, batch)[at], best?.Judge(batch, at) ?? []));
                }
            }
        }

        return judged;
    }

    /// <summary>Batches in which coils have a fault by chance.</summary>
    public IReadOnlyList<JudgedCoil> Mixed(int batches, double faulty, bool quality, double? spoolWithin = null)
    {
        List<JudgedCoil> judged = [];
        foreach ((int index, SimulatedRecipe recipe) in SimulatedRecipe.All.Index())
        {
            int first = seed + 1000 + 10 * index + (quality ? 1 : 0) + (int)(1000 * faulty);
            Random spools = new(first);
            for (int n = 0; n < batches; n++)
            {
                double? spool = spoolWithin is { } within ? within * (2 * spools.NextDouble() - 1) : null;
                SimulatedShop shop = new(recipe, first + 1000 * n);
                IReadOnlyList<SimulatedCoil> batch = shop.Batch(faulty, null, quality, spool: spool);
                judged.AddRange(batch.Zip(Judge(recipe, batch), (coil, verdict) => new JudgedCoil(coil, verdict, [])));
            }
        }

        return judged;
    }

    /// <summary>Good batches of which the inductance is off, with what is said of each batch.</summary>
    public IReadOnlyList<(IReadOnlyList<JudgedCoil> Coils, IReadOnlyList<string> Remarks)> InductanceOff(
        int batches,
        double off,
        bool quality
    )
    {
        List<(IReadOnlyList<JudgedCoil>, IReadOnlyList<string>)> judged = [];
        foreach ((int index, SimulatedRecipe recipe) in SimulatedRecipe.All.Index())
        {
            SimulatedShop shop = new(recipe, seed + 70_000 + index);
            for (int n = 0; n < batches; n++)
            {
                IReadOnlyList<SimulatedCoil> batch = shop.Batch(0, null, quality, henryOff: n % 2 == 0 ? off : -off);
                judged.Add(
                    (
                        [.. batch.Zip(Judge(recipe, batch), (coil, verdict) => new JudgedCoil(coil, verdict, []))],
                        [.. BatchJudgement.JudgeAll(recipe.Limits, Evidence(batch)).Remarks.Select(one => one.Sentence)]
                    )
                );
            }
        }

        return judged;
    }

    public static IReadOnlyList<Verdict> Judge(SimulatedRecipe recipe, IReadOnlyList<SimulatedCoil> batch) =>
        BatchJudgement.Judge(recipe.Limits, Evidence(batch));

    private static (string Spool, IReadOnlyList<ReadingRecord> InForce)[] Evidence(IReadOnlyList<SimulatedCoil> batch) =>
        [.. batch.Select(coil => ("S-1", coil.Readings))];

    private static (IReadOnlyList<SimulatedCoil> Batch, int At) OneFault(SimulatedShop shop, string kind, bool quality, bool henry)
    {
        IReadOnlyList<SimulatedCoil> batch = shop.Batch(0, kind, quality, henry);
        return (batch, batch.ToList().FindIndex(coil => coil.Kind == kind));
    }
}
