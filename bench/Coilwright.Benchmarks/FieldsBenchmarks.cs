using BenchmarkDotNet.Attributes;
using Coilwright.Physics.BoundaryElements;

namespace Coilwright.Benchmarks;

/// <summary>
/// The fast field engine against the accurate one: a single coil with six rods, two coils with twelve rods and a bar, the same under a
/// cover; static and three frequencies.
/// </summary>
[MemoryDiagnoser]
public class FieldsBenchmarks
{
    private readonly FastFieldEngine _fast = new();
    private readonly AccurateFieldEngine _accurate = new();
    private FieldProblem _problem = null!;

    [Params(FieldProblems.SixRods, FieldProblems.TwoCoils, FieldProblems.Covered)]
    public string Pickup { get; set; } = "";

    [GlobalSetup]
    public void SetUp() => _problem = FieldProblems.Of(Pickup, [120, 1000, 10000]);

    [Benchmark(Baseline = true)]
    public FieldSolution Accurate() => _accurate.Solve(_problem);

    [Benchmark]
    public FieldSolution Fast() => _fast.Solve(_problem);
}
