using System.Globalization;
using System.Text;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Circuit.Networks;

namespace Coilwright.Outside.Tests.Circuit;

/// <summary>Whole circuits against a circuit simulator (Debian's ngspice) that builds them from their netlists.</summary>
public sealed class CircuitNetlistTests
{
    private const int Count = 500,
        PerProcess = 250,
        Seed = 4_2026;

    /// <summary>
    /// Gains that lie deeper than this under the level at 20 Hz are compared as ratios of that level: at the bottom of a notch a decibel
    /// has no meaning.
    /// </summary>
    private const double DeepestDb = -90;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Five_hundred_random_circuits_of_every_kind_of_part_agree_in_gain_and_impedance()
    {
        RandomCircuits random = new(Seed);
        List<GuitarCircuit> circuits = [];
        while (circuits.Count < Count)
        {
            GuitarCircuit circuit = random.Next();
            // Pickups that happen to cancel at 20 Hz have no level to compare with.
            if (CircuitResponse.Compute(circuit, [20]).LowFrequencyGain > 0.01)
            {
                circuits.Add(circuit);
            }
        }

        MustHoldEveryKind(circuits);
        double[][][][] answers = [.. (await Task.WhenAll(circuits.Chunk(PerProcess).Select(Solve))).SelectMany(part => part)];
        Evidence gain = Against("gain, 20 Hz to 20 kHz"),
            phase = Against("phase, 20 Hz to 20 kHz"),
            impedance = Against("impedance at the output");
        for (int i = 0; i < Count; i++)
        {
            (double db, double degrees, double ohm) = Compare(circuits[i], answers[i][0], answers[i][1]);
            Assert.True(db < 0.02, FormattableString.Invariant($"circuit {i} differs by {db} dB:\n{CircuitNetlist.Parts(circuits[i])}"));
            string at = FormattableString.Invariant($"circuit {i}");
            gain.Within(db, 0, 1e-6, "dB", at);
            phase.Within(degrees, 0, 1e-6, "°", at);
            impedance.Within(ohm, 0, 1e-6, at: at);
        }

        Assert.All((Evidence[])[gain, phase, impedance], check => check.Record());
    }

    [Fact]
    public async Task The_written_file_runs_as_it_is()
    {
        GuitarCircuit circuit = new RandomCircuits(7).Next();
        DirectoryInfo folder = Directory.CreateTempSubdirectory("coilwright-netlist-");
        try
        {
            await File.WriteAllTextAsync(
                Path.Combine(folder.FullName, "guitar.cir"),
                CircuitNetlist.Write(circuit, 20, 20_000, 31, ["any note"]),
                Cancel
            );
            string said = await Ngspice.Run(folder.FullName, "guitar.cir", Cancel);
            Assert.Contains("vdb(out)", said, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("Error", said, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static (double Db, double Degrees, double Ohm) Compare(GuitarCircuit circuit, double[][] gain, double[][] ohm)
    {
        Response ours = CircuitResponse.Compute(circuit, [.. gain.Select(row => row[0])]);
        double level = gain[0][1],
            worstDb = Math.Abs(level - ours.LowFrequencyGainDb),
            worstDegrees = 0,
            worstOhm = 0;
        double Ratio(double db) => Math.Pow(10, (db - DeepestDb) / 20);
        for (int k = 0; k < gain.Length; k++)
        {
            double theirs = gain[k][1] - level,
                found = ours.Points[k].GainDb;
            double apart = Math.Abs(theirs - found);
            worstDb = Math.Max(worstDb, theirs > DeepestDb ? apart : Math.Abs(Ratio(theirs) - Ratio(found)));
            worstDegrees = Math.Max(
                worstDegrees,
                theirs > DeepestDb ? Math.Abs(Math.IEEERemainder(gain[k][2] * 180 / Math.PI - ours.Points[k].PhaseDegrees, 360)) : 0
            );
            worstOhm = Math.Max(worstOhm, Math.Abs(ohm[k][1] / ours.Points[k].ImpedanceOhm - 1));
        }

        return (worstDb, worstDegrees, worstOhm);
    }

    private static void MustHoldEveryKind(List<GuitarCircuit> circuits)
    {
        (string Kind, Func<GuitarCircuit, bool> Has)[] kinds =
        [
            ("buffer", one => one.Load.Buffer is not null),
            ("pickups in series", one => one.Joined == Joining.Series && one.Selected.Count > 1),
            ("pickups side by side", one => one.Joined == Joining.Parallel && one.Selected.Count > 1),
            ("a pickup cut off", one => one.Selected.Count < one.Pickups.Count),
            ("coils in series", one =>
                Used(one).Any(pickup => pickup.Joined == Joining.Series && pickup.Coils.Count > 1 && pickup.OnlyCoil is null)
            ),
            ("coils side by side", one => Used(one).Any(pickup => pickup.Joined == Joining.Parallel && pickup.Coils.Count > 1)),
            ("a single coil of several", one => Used(one).Any(pickup => pickup.OnlyCoil is not null && pickup.Coils.Count > 1)),
            ("a pickup out of phase", one => Used(one).Any(pickup => pickup.Reversed)),
            ("mutual inductance", one => Used(one).Any(pickup => pickup.Mutual.Count > 0)),
            ("own volume", one => Used(one).Any(pickup => pickup.Volume is not null)),
            ("own tone", one => Used(one).Any(pickup => pickup.Tone is not null)),
            ("a control from its wiper", one => Used(one).Any(pickup => pickup.Volume is { FromWiper: true, Setting: < 1 })),
            ("a tap", one => Used(one).Any(pickup => pickup.Coils.Any(coil => coil.TapShare is not null))),
            ("a dummy coil", one => Used(one).Any(pickup => pickup.Coils.Any(coil => Math.Abs(coil.Level) < 1e-9))),
            ("a turned coil", one => Used(one).Any(pickup => pickup.Coils.Any(coil => coil.Reversed))),
            ("eddy branch", one => Used(one).Any(pickup => pickup.Coils.Any(coil => ((LumpedPickup)coil.Branch).Eddy.Count > 0))),
            ("coil loss", one => Used(one).Any(pickup => pickup.Coils.Any(coil => coil.ParallelLossOhm is not null))),
            ("treble capacitor", one => one.Load.Volume is { Setting: < 1, Retainer: { ResistanceOhm: null } }),
            ("treble resistor", one => one.Load.Volume is { Setting: < 1, Retainer: { CapacitanceF: null } }),
            ("treble pair in series", one =>
                one.Load.Volume is { Setting: < 1, Retainer: { ResistanceOhm: not null, CapacitanceF: not null, InSeries: true } }
            ),
            ("treble pair side by side", one =>
                one.Load.Volume is { Setting: < 1, Retainer: { ResistanceOhm: not null, CapacitanceF: not null, InSeries: false } }
            ),
            ("shared tone", one => one.Load.Tone is not null),
            ("tone at 0", one => one.Load.Tone is { Setting: <= 0 }),
            ("cable", one => one.Load.CableCapacitanceF > 0),
            ("input", one => one.Load.InputResistanceOhm is not null && one.Load.InputCapacitanceF > 0),
        ];
        Assert.All(kinds, kind =>
            Assert.True(circuits.Count(kind.Has) >= 10, $"only {circuits.Count(kind.Has)} circuits hold: {kind.Kind}")
        );
    }

    private static IEnumerable<CircuitPickup> Used(GuitarCircuit circuit) => circuit.Selected.Select(number => circuit.Pickups[number]);

    /// <summary>One process for many circuits: gain from all sources together, then those silenced and 1 A sent into the output.</summary>
    private static async Task<double[][][][]> Solve(GuitarCircuit[] circuits)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("coilwright-ngspice-");
        try
        {
            StringBuilder script = new("* many circuits\n.control\nset numdgt=14\nset wr_singlescale\n");
            for (int i = 0; i < circuits.Length; i++)
            {
                string parts = CircuitNetlist.Parts(circuits[i]);
                await File.WriteAllTextAsync(
                    Path.Combine(folder.FullName, $"net{i}.cir"),
                    $"* circuit {i}\n{parts}Iprobe 0 out DC 0 AC 0\n.end\n",
                    Cancel
                );
                string sources = string.Concat(
                    parts
                        .Split('\n')
                        .Where(line => line.StartsWith('V'))
                        .Select(line => $"alter {line.Split(' ')[0].ToLowerInvariant()} acmag = 0\n")
                );
                script.Append(
                    CultureInfo.InvariantCulture,
                    $"source net{i}.cir\nac dec 40 20 20000\nwrdata gain{i}.data vdb(out) vp(out)\n{sources}alter iprobe acmag = 1\nac "
                        + $"dec 40 20 20000\nwrdata ohm{i}.data vm(out)\ndestroy all\nremcirc\n"
                );
            }

            await File.WriteAllTextAsync(Path.Combine(folder.FullName, "all.sp"), script.Append("quit\n.endc\n.end\n").ToString(), Cancel);
            string said = await Ngspice.Run(folder.FullName, "all.sp", Cancel);
            return
            [
                .. circuits.Select(
                    (_, i) =>
                        (double[][][])[Ngspice.Rows(folder.FullName, $"gain{i}", said), Ngspice.Rows(folder.FullName, $"ohm{i}", said)]
                ),
            ];
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static Evidence Against(string what) =>
        Evidence.Outside(
            "Whole circuits against ngspice: largest difference in " + what,
            FormattableString.Invariant($"AC analysis of ngspice, {Count} random circuits, seed {Seed} [Ngspice]"),
            "run here",
            "rounding: of doubles in two programs and of 14 printed digits, with room"
        );
}
