using BenchmarkDotNet.Attributes;
using Coilwright.Physics;
using Coilwright.Physics.Fields;
using Coilwright.Physics.Winding;

namespace Coilwright.Benchmarks;

/// <summary>The fast field engine against the accurate one: a single coil with six rods, and two coils with twelve rods and a bar; static and three frequencies.</summary>
[MemoryDiagnoser]
public class FieldsBenchmarks
{
    private static readonly double[] PolesM = [-0.026, -0.0156, -0.0052, 0.0052, 0.0156, 0.026];
    private readonly FastFieldEngine _fast = new();
    private readonly AccurateFieldEngine _accurate = new();
    private FieldProblem _problem = null!;

    [Params(false, true)]
    public bool TwoCoils { get; set; }

    [GlobalSetup]
    public void SetUp()
    {
        BarModel bar = new()
        {
            Material = "bar",
            SizeM = new Vector3M(0.062, 0.012, 0.003),
            CentreM = new Vector3M(0, 0, -0.0075),
            RelativePermeability = Estimate.Exact(4.5),
            ConductivitySPerM = Estimate.Exact(2e6),
        };
        _problem = TwoCoils
            ? new FieldProblem([Coil(-0.009, 0.0285, 0.004, 0.0045, 0.0065, 0.015, 0.006), Coil(0.009, 0.0285, 0.004, 0.0045, 0.0065, 0.019, 0.006)], [bar], [], [120, 1000, 10000])
            : new FieldProblem([Coil(0, 0.02975, 0.00325, 0.003, 0.011, 0.018, 0.009)], [], [], [120, 1000, 10000]);
    }

    [Benchmark(Baseline = true)]
    public FieldSolution Accurate() => _accurate.Solve(_problem);

    [Benchmark]
    public FieldSolution Fast() => _fast.Solve(_problem);

    private static FieldCoil Coil(double y, double halfLong, double radius, double build, double height, double rodLength, double rodTop)
    {
        Bobbin bobbin = new() { CoreLengthM = 2 * (halfLong + radius), CoreWidthM = 2 * radius, EndRadiusM = radius, WindingHeightM = height };
        PoleModel poles = new()
        {
            Shape = PoleShape.Rod,
            Material = "steel",
            DiameterM = 0.0048,
            LengthM = rodLength,
            PositionsM = PolesM,
            TopsM = [.. PolesM.Select(_ => rodTop)],
            RelativePermeability = new Estimate(100, 60, 300, Basis.Assumed),
            ConductivitySPerM = Estimate.Exact(6e6),
        };
        return new FieldCoil(bobbin, build, 6000, 1, new Vector3M(0, y, 0), [poles]);
    }
}
