using BenchmarkDotNet.Attributes;
using Coilwright.Physics.Winding;

namespace Coilwright.Benchmarks;

/// <summary>
/// 8,000 turns laid one by one, against four windings of 2,000 turns in the same run: the ratio stays near 1 as long as a turn finds its
/// place without asking all before it.
/// </summary>
[SimpleJob(launchCount: 1, warmupCount: 3, iterationCount: 8)]
public class LayBenchmarks
{
    private static readonly LaySpec s_whole = new(71.1e-6, 11e-3, 8000, 0.15e-3, 0.1e-3),
        s_quarter = s_whole with { Turns = 2000 };

    [Benchmark(Baseline = true)]
    public double FourTimesTwoThousandTurns()
    {
        double packing = 0;
        for (ulong seed = 1; seed <= 4; seed++)
        {
            packing += LaySimulation.Run(s_quarter, seed).PackingFactor;
        }

        return packing;
    }

    [Benchmark]
    public double EightThousandTurns() => LaySimulation.Run(s_whole, 1).PackingFactor;
}
