using BenchmarkDotNet.Attributes;
using Coilwright.Analysis.Curves;
using Coilwright.Physics.Circuit;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using Complex = System.Numerics.Complex;

namespace Coilwright.Benchmarks;

/// <summary>
/// Complex fit of 400 noisy points, against MathNet's Levenberg–Marquardt on the same residuals; the ratio comes from the same run.
/// </summary>
[MemoryDiagnoser]
[SimpleJob(launchCount: 1, warmupCount: 3, iterationCount: 8)]
public class FitBenchmarks
{
    private static readonly PickupParts s_parts = new(1, false);
    private MeasuredCurve curve = null!;

    [GlobalSetup]
    public void Setup()
    {
        LumpedPickup truth = new(7800, 3.5, 120e-12) { Eddy = [new(0.9, 60e3)] };
        Random random = new(4);
        double[] hz = PickupResponse.LogFrequencies(50, 20_000, 400);
        curve = new MeasuredCurve(hz)
        {
            ImpedanceOhm =
            [
                .. hz.Select(f =>
                    PickupImpedance.Ohm(truth, f) * (1 + 0.005 * new Complex(random.NextDouble() - 0.5, random.NextDouble() - 0.5))
                ),
            ],
        };
    }

    /// <summary>The library's fitter, the same model and parts, numerical derivatives, from a start within 20 %.</summary>
    [Benchmark(Baseline = true)]
    public double MathNetSameParts()
    {
        double[] start = [Math.Log(7000), Math.Log(3), Math.Log(130e-12), Math.Log(1), Math.Log(70e3)];
        int n = curve.Count;
        Vector<double> x = Vector<double>.Build.Dense(2 * n, i => i),
            y = Vector<double>.Build.Dense(2 * n);
        Vector<double> Model(Vector<double> p, Vector<double> at)
        {
            double[] values = [.. p.Select(Math.Exp)];
            Vector<double> result = Vector<double>.Build.Dense(2 * n);
            for (int k = 0; k < n; k++)
            {
                Complex apart =
                    (s_parts.Impedance(values, 2 * Math.PI * curve.FrequenciesHz[k], []) - curve.ImpedanceOhm![k])
                    / curve.ImpedanceOhm[k].Magnitude;
                (result[k], result[n + k]) = (apart.Real, apart.Imaginary);
            }

            return result;
        }

        NonlinearMinimizationResult found = new LevenbergMarquardtMinimizer().FindMinimum(
            ObjectiveFunction.NonlinearModel(Model, x, y),
            Vector<double>.Build.Dense(start)
        );
        return Math.Exp(found.MinimizingPoint[1]);
    }

    /// <summary>Parts given, three starts.</summary>
    [Benchmark]
    public double SameParts() => ImpedanceFit.FitParts(curve, s_parts)!.Pickup.InductanceH;

    /// <summary>The data choose among eight sets of parts.</summary>
    [Benchmark]
    public double ChooseParts() => ImpedanceFit.Fit(curve).Pickup.InductanceH;
}
