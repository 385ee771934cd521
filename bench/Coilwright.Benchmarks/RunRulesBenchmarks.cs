using BenchmarkDotNet.Attributes;
using Coilwright.Analysis.Charts;

namespace Coilwright.Benchmarks;

/// <summary>All run rules and limits over 100,000 points, against one pass that sorts the same points.</summary>
[MemoryDiagnoser]
[SimpleJob(launchCount: 1, warmupCount: 2, iterationCount: 8)]
public class RunRulesBenchmarks
{
    private const int Points = 100_000;
    private double[] values = [];

    [GlobalSetup]
    public void Setup()
    {
        Random random = new(1);
        values =
        [
            .. Enumerable.Range(0, Points).Select(_ => 6180 + 30 * (random.NextDouble() + random.NextDouble() + random.NextDouble() - 1.5)),
        ];
    }

    [Benchmark(Baseline = true)]
    public double Sorted()
    {
        double[] copy = [.. values];
        Array.Sort(copy);
        return copy[Points / 2];
    }

    [Benchmark]
    public int LimitsAndWesternElectric() => IndividualsChart.Fit(values, Points)!.Signals(values).Count;

    [Benchmark]
    public int LimitsAndNelson()
    {
        IndividualsChart chart = IndividualsChart.Fit(values, Points)!;
        return RunRules.Nelson(values, chart.Centre, chart.Sigma).Count;
    }
}
