using System.Diagnostics;
using System.Globalization;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using Coilwright.Physics.BoundaryElements;

namespace Coilwright.Benchmarks;

/// <summary>
/// The accurate engine against getdp on our own finite-element model of six rods (tests/Outside/fields): static inductance, mesh made
/// beforehand and not timed.
/// </summary>
[SimpleJob(RunStrategy.Monitoring, launchCount: 1, warmupCount: 1, iterationCount: 3)]
public class FieldOutsideBenchmarks
{
    private readonly AccurateFieldEngine _engine = new();
    private readonly FieldProblem _problem = FieldProblems.OfTheFiniteElements();
    private OutsideFieldModel _model = null!;

    [GlobalSetup]
    public void SetUp()
    {
        _model = OutsideFieldModel.Mesh();
        double ours = Accurate(); // compiled and warm from here on
        (double theirs, TimeSpan theirTime) = Timed(_model.SolveH);
        TimeSpan ourTime = Enumerable.Range(0, 10).Min(_ => Timed(Accurate).Took);
        Console.WriteLine(
            FormattableString.Invariant(
                $"// inductance per turn squared: getdp {theirs:G6} H, accurate engine {ours:G6} H, {ours / theirs - 1:P2} apart"
            )
        );
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"// one run of getdp {theirTime.TotalSeconds:F1} s, the best of ten of the engine {ourTime.TotalMilliseconds:F1} ms: "
                    + $"{theirTime / ourTime:F0} times"
            )
        );
    }

    private static (double Value, TimeSpan Took) Timed(Func<double> work)
    {
        long from = Stopwatch.GetTimestamp();
        double value = work();
        return (value, Stopwatch.GetElapsedTime(from));
    }

    [GlobalCleanup]
    public void CleanUp() => _model.Dispose();

    [Benchmark(Baseline = true)]
    public double Getdp() => _model.SolveH();

    [Benchmark]
    public double Accurate() => _engine.Solve(_problem).StaticInductanceH[0, 0];
}
