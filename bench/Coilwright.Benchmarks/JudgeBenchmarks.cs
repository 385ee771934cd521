using System.Globalization;
using BenchmarkDotNet.Attributes;
using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Benchmarks;

/// <summary>
/// A batch of twelve coils judged with its causes, and one more coil of two thousand, against their verdicts without causes.
/// </summary>
[MemoryDiagnoser]
[SimpleJob(launchCount: 1, warmupCount: 5, iterationCount: 15)]
public class JudgeBenchmarks
{
    private const int Few = 12,
        Many = 2_000;

    private VerdictLimits _limits = null!;
    private (string Spool, IReadOnlyList<ReadingRecord> InForce)[] _few = [],
        _many = [];

    [GlobalSetup]
    public void Setup()
    {
        using StreamReader reader = new(typeof(Cli).Assembly.GetManifestResourceStream("demo/recipes/harbour-bridge.json")!);
        _limits = VerdictLimits.ForCoil(RecipeReader.Read(reader.ReadToEnd()).Value!, 0);
        Random random = new(1);
        _many = [.. Enumerable.Range(0, Many).Select(n => ("S-1", Coil(n, random)))];
        _few = _many[..Few];
    }

    [Benchmark(Baseline = true)]
    public int TwelveWithoutCauses() => BatchJudgement.WithoutCauses(_limits, _few).Count;

    [Benchmark]
    public int Twelve() => BatchJudgement.Judge(_limits, _few).Count;

    [Benchmark]
    public int OneMoreOfTwoThousand() => BatchJudgement.JudgeSome(_limits, _many, [Many - 1]).Verdicts.Count;

    /// <summary>Most coils good, one in ten 4 % high in its ohms.</summary>
    private static IReadOnlyList<ReadingRecord> Coil(int number, Random random)
    {
        double Near(double value, double scatter) => value * (1 + scatter * (2 * random.NextDouble() - 1));
        double high = number % 10 == 7 ? 1.04 : 1;
        return
        [
            Reading(number, QuantityKey.DcResistance, Near(6150 * high, 0.006), null),
            Reading(number, QuantityKey.Inductance, Near(2.53, 0.01), 1000),
            Reading(number, QuantityKey.Q, Near(5.7, 0.03), 3000),
        ];
    }

    private static ReadingRecord Reading(int number, string quantity, double si, double? hz) =>
        new()
        {
            Id = Guid.NewGuid(),
            BatchId = Guid.Empty,
            Tag = number.ToString("C-0000", CultureInfo.InvariantCulture),
            Quantity = quantity,
            Typed = si.ToString("G5", CultureInfo.InvariantCulture) + " Ω",
            Unit = "Ω",
            Si = si,
            TemperatureC = hz is null ? 20 : null,
            AtHz = hz,
            TimeUtc = DateTimeOffset.UnixEpoch,
        };
}
