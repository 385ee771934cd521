using BenchmarkDotNet.Attributes;
using Coilwright.Physics.BoundaryElements;

namespace Coilwright.Benchmarks;

/// <summary>A sweep of forty frequencies against one of three: what a frequency costs once the field is solved. Accurate engine.</summary>
public class FieldSweepBenchmarks
{
    private readonly AccurateFieldEngine _engine = new();
    private FieldProblem _three = null!,
        _forty = null!;

    [Params(FieldProblems.SixRods, FieldProblems.TwoCoils, FieldProblems.Covered)]
    public string Pickup { get; set; } = "";

    [GlobalSetup]
    public void SetUp()
    {
        _three = FieldProblems.Of(Pickup, [120, 1000, 10000]);
        _forty = FieldProblems.Of(Pickup, [.. Enumerable.Range(0, 40).Select(k => 20 * Math.Pow(1000, k / 39.0))]);
    }

    [Benchmark(Baseline = true)]
    public FieldSolution ThreeFrequencies() => _engine.Solve(_three);

    [Benchmark]
    public FieldSolution FortyFrequencies() => _engine.Solve(_forty);
}
