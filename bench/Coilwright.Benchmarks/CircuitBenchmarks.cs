using System.Diagnostics;
using BenchmarkDotNet.Attributes;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Circuit.Networks;

namespace Coilwright.Benchmarks;

/// <summary>
/// 10,000 points of two pickups, each with an eddy branch, loss, own volume and own tone, on cable and input, against one ngspice process
/// on the same circuit; the ratio comes from the same run.
/// </summary>
[MemoryDiagnoser]
[SimpleJob(launchCount: 1, warmupCount: 4, iterationCount: 12)]
public class CircuitBenchmarks
{
    private const int Points = 10_000;

    private static readonly GuitarCircuit s_circuit = new(
        [
            new CircuitPickup([
                new CircuitCoil(new LumpedPickup(7800, 3.5, 0) { Eddy = [new(0.9, 60e3)] }, 120e-12) { ParallelLossOhm = 2e6 },
            ])
            {
                Volume = new(500e3, 0.8),
                Tone = new(500e3, 22e-9, 0.9),
            },
            new CircuitPickup([
                new CircuitCoil(new LumpedPickup(6200, 2.5, 0) { Eddy = [new(0.3, 90e3)] }, 110e-12) { ParallelLossOhm = 3e6 },
            ])
            {
                Volume = new(500e3, 0.6),
                Tone = new(500e3, 22e-9, 1),
            },
        ],
        new LoadCircuit
        {
            CableCapacitanceF = 500e-12,
            InputResistanceOhm = 1e6,
            InputCapacitanceF = 20e-12,
        }
    );

    private double[] frequenciesHz = [];
    private string folder = "";

    [GlobalSetup]
    public void Setup()
    {
        frequenciesHz = PickupResponse.LogFrequencies(20, 20_000, Points);
        folder = Directory.CreateTempSubdirectory("coilwright-bench-").FullName;
        File.WriteAllText(
            Path.Combine(folder, "raw.cir"),
            CircuitNetlist
                .Write(s_circuit, 20, 20_000, Points)
                .Replace(".print ac vdb(out) vp(out)\n", ".save v(out)\n", StringComparison.Ordinal)
        );
    }

    [GlobalCleanup]
    public void Cleanup() => Directory.Delete(folder, recursive: true);

    /// <summary>The fastest way to get the same points from ngspice: one process, binary result file.</summary>
    [Benchmark(Baseline = true)]
    public int NgspiceProcess()
    {
        using Process process = Process.Start(
            new ProcessStartInfo("ngspice", ["-b", "-r", "raw.raw", "raw.cir"])
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

    /// <summary>Gain, phase and impedance at every point.</summary>
    [Benchmark]
    public Response TwoPickups() => CircuitResponse.Compute(s_circuit, frequenciesHz);

    /// <summary>Peak and half-power point.</summary>
    [Benchmark]
    public double MarkedPoints() => CircuitResponse.FindPeak(s_circuit)!.Value.FrequencyHz + CircuitResponse.FindMinus3Db(s_circuit)!.Value;
}
