using System.Diagnostics;
using BenchmarkDotNet.Attributes;
using Coilwright.Physics.Circuit;

namespace Coilwright.Benchmarks;

/// <summary>
/// A response of 10,000 points with its marked points, against one ngspice process on the same network; the ratio comes from the same run.
/// </summary>
[MemoryDiagnoser]
[SimpleJob(launchCount: 1, warmupCount: 4, iterationCount: 12)]
public class RespondBenchmarks
{
    private const int Points = 10_000;

    private static readonly LumpedPickup s_pickup = new(7800, 3.5, 120e-12) { Eddy = [new(0.9, 60e3)], ParallelLossOhm = 2e6 };
    private static readonly LoadCircuit s_load = new()
    {
        Volume = new(500e3, 0.8),
        Tone = new(500e3, 22e-9, 0.9),
        CableCapacitanceF = 500e-12,
        InputResistanceOhm = 1e6,
        InputCapacitanceF = 20e-12,
    };

    private double[] frequenciesHz = [];
    private TabulatedBranch table = null!;
    private string folder = "";

    [GlobalSetup]
    public void Setup()
    {
        frequenciesHz = PickupResponse.LogFrequencies(20, 20_000, Points);
        double[] entries = PickupResponse.LogFrequencies(20, 20_000, 20);
        table = new TabulatedBranch(
            entries,
            [.. entries.Select(hz => s_pickup.ImpedanceOhm(hz).Imaginary / (2 * Math.PI * hz))],
            [.. entries.Select(hz => s_pickup.ImpedanceOhm(hz).Real)]
        );
        folder = Directory.CreateTempSubdirectory("coilwright-bench-").FullName;

        // Two ways to get the points out of the simulator: printed, and as the binary file it writes fastest.
        File.WriteAllText(Path.Combine(folder, "print.cir"), SpiceNetlist.Write(s_pickup, s_load, 20, 20_000, Points));
        File.WriteAllText(
            Path.Combine(folder, "raw.cir"),
            SpiceNetlist
                .Write(s_pickup, s_load, 20, 20_000, Points)
                .Replace(".print ac vdb(out) vp(out)\n", ".save v(out)\n", StringComparison.Ordinal)
        );
    }

    [GlobalCleanup]
    public void Cleanup() => Directory.Delete(folder, recursive: true);

    /// <summary>The fastest way to get the same points from ngspice: one process, binary result file.</summary>
    [Benchmark(Baseline = true)]
    public int NgspiceProcess() => Ngspice("-b", "-r", "raw.raw", "raw.cir");

    [Benchmark]
    public int NgspiceProcessPrinting() => Ngspice("-b", "print.cir");

    [Benchmark]
    public double Respond() => Curve(PickupResponse.Compute(s_pickup, s_load, frequenciesHz), s_pickup);

    [Benchmark]
    public double RespondTabulated() => Curve(PickupResponse.Compute(table, 120e-12, 2e6, s_load, frequenciesHz), table);

    [Benchmark]
    public Response PointsAlone() => PickupResponse.Compute(s_pickup, s_load, frequenciesHz);

    private static double Curve(Response response, ISeriesBranch branch) =>
        response.Points[^1].GainDb
        + PickupResponse.FindPeak(branch, 120e-12, 2e6, s_load)!.Value.FrequencyHz
        + PickupResponse.FindMinus3Db(branch, 120e-12, 2e6, s_load)!.Value;

    private int Ngspice(params string[] arguments)
    {
        using Process process = Process.Start(
            new ProcessStartInfo("ngspice", arguments)
            {
                WorkingDirectory = folder,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;
        _ = process.StandardError.ReadToEndAsync();
        int length = process.StandardOutput.ReadToEnd().Length;
        process.WaitForExit();
        return process.ExitCode == 0 ? length : throw new InvalidOperationException("ngspice failed.");
    }
}
