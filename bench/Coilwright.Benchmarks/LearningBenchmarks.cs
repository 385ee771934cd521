using BenchmarkDotNet.Attributes;
using Coilwright.Analysis.Learning;

namespace Coilwright.Benchmarks;

/// <summary>What ten thousand coils teach, on twenty bobbins and sixty spools of twenty lots, against a tenth of them.</summary>
[MemoryDiagnoser]
[SimpleJob(launchCount: 1, warmupCount: 2, iterationCount: 8)]
public class LearningBenchmarks
{
    private const int Many = 10_000,
        Bobbins = 20,
        Lots = 20,
        Spools = 3;

    private LearningReading[] _many = [];

    [GlobalSetup]
    public void Setup()
    {
        Random random = new(1);
        double Near(double scatter) => scatter * (random.NextDouble() + random.NextDouble() + random.NextDouble() - 1.5) * 2;
        double[] bobbins = [.. Enumerable.Range(0, Bobbins).Select(_ => Near(0.01))],
            lots = [.. Enumerable.Range(0, Lots).Select(_ => Near(0.02))];
        _many =
        [
            .. Enumerable
                .Range(0, Many)
                .Select(n =>
                {
                    int batch = n / 25;
                    (int bobbin, int lot) = (batch % Bobbins, batch / Bobbins % Lots);
                    LearningCoil coil = new($"B{bobbin}", "C", "W", $"L{lot}", $"S{batch % Spools}", $"M{batch % 2}");
                    double bad = n % 40 == 7 ? -0.2 : 0;
                    return new LearningReading(bobbins[bobbin] + lots[lot] + Near(0.004) + bad, coil.OfResistance);
                }),
        ];
    }

    [Benchmark(Baseline = true)]
    public double AThousand() => HierarchicalFit.Fit(_many[..(Many / 10)], [], LearningPriors.Resistance).CoilVariance;

    [Benchmark]
    public double TenThousand() => HierarchicalFit.Fit(_many, [], LearningPriors.Resistance).CoilVariance;
}
