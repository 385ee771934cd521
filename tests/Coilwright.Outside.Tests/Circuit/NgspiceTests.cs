using System.Globalization;
using System.Text.RegularExpressions;
using Coilwright.Physics.Circuit;

namespace Coilwright.Outside.Tests.Circuit;

/// <summary>
/// The closed-form response against a circuit simulator (Debian's ngspice, AC analysis) that builds the same network from its parts.
/// </summary>
public sealed partial class NgspiceTests
{
    private const int Count = 240;
    private const int Seed = 20251;
    private const string Source = "AC analysis of ngspice, 240 random networks, seed 20251 [Ngspice]";
    private const string Rounding = "rounding: of doubles in two programs and of the printed digits, with room";
    private const string Sweep =
        "method: the simulator's points lie apart; its top is a parabola through three, its fall a straight line through two";
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Random_networks_agree_in_gain_phase_impedance_and_marked_points()
    {
        (LumpedPickup Pickup, LoadCircuit Load)[] networks = [.. RandomNetworks()];
        IReadOnlyList<SpiceAnswer> answers = await Ngspice.Solve(networks, Cancel);
        Worst worst = default;
        int peaks = 0;
        for (int i = 0; i < Count; i++)
        {
            worst = worst.With(Compare(networks[i].Pickup, networks[i].Load, answers[i], ref peaks));
        }

        Assert.True(peaks > Count / 2, $"only {peaks} networks have a peak to compare");
        Against("gain relative to 20 Hz, 20 Hz to 20 kHz", Rounding).Within(worst.GainDb, 0, 1e-6, "dB").Record();
        Against("phase, 20 Hz to 20 kHz", Rounding).Within(worst.PhaseDegrees, 0, 1e-6, "°").Record();
        Against("impedance at the output, 20 Hz to 20 kHz", Rounding).Within(worst.Ohm, 0, 1e-6).Record();
        Against("peak frequency", Sweep).Within(100 * worst.Peak, 0, 0.005, "%").Record($"{peaks} networks with a peak");
        Against("peak gain", Sweep).Within(worst.PeakDb, 0, 0.001, "dB").Record();
        Against("−3 dB frequency", Sweep).Within(100 * worst.Fall, 0, 0.005, "%").Record();
    }

    [Fact]
    public async Task The_written_file_runs_as_it_is_and_prints_our_gains()
    {
        LumpedPickup pickup = new(7800, 3.5, 120e-12) { Eddy = [new(0.9, 60e3)], ParallelLossOhm = 2e6 };
        LoadCircuit load = new()
        {
            Volume = new(500e3, 0.7),
            Tone = new(250e3, 22e-9, 0.4),
            CableCapacitanceF = 500e-12,
            InputResistanceOhm = 1e6,
        };
        DirectoryInfo folder = Directory.CreateTempSubdirectory("coilwright-netlist-");
        try
        {
            await File.WriteAllTextAsync(
                Path.Combine(folder.FullName, "pickup.cir"),
                SpiceNetlist.Write(pickup, load, 20, 20_000, 61),
                Cancel
            );
            string printed = await Ngspice.Run(folder.FullName, "pickup.cir", Cancel);
            double[][] rows =
            [
                .. PrintedRow()
                    .Matches(printed)
                    .Select(row =>
                        (double[])[.. row.Groups.Values.Skip(1).Select(group => double.Parse(group.Value, CultureInfo.InvariantCulture))]
                    ),
            ];
            Assert.True(rows.Length == 61, printed);
            Response ours = PickupResponse.Compute(pickup, load, [.. rows.Select(row => row[0])]);
            // ngspice prints seven digits of the frequency and of the gain.
            Assert.All(Enumerable.Range(0, 61), i => Assert.Equal(rows[i][1], ours.Points[i].GainDb + ours.LowFrequencyGainDb, 1e-4));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static Worst Compare(LumpedPickup pickup, LoadCircuit load, SpiceAnswer spice, ref int peaks)
    {
        Response ours = PickupResponse.Compute(pickup, load, [.. spice.Gain.Select(row => row[0])]);
        Response terminals = PickupResponse.Compute(pickup, load, [.. spice.Impedance.Select(row => row[0])]);
        double reference = spice.Gain[0][1];
        Worst worst = new(GainDb: Math.Abs(reference - ours.LowFrequencyGainDb), 0, 0, 0, 0, 0);
        for (int k = 0; k < spice.Gain.Length && spice.Gain[k][0] < 20_001; k++)
        {
            // vp() is in radians and wraps at ±π.
            double turn = Math.IEEERemainder(spice.Gain[k][2] * 180 / Math.PI - ours.Points[k].PhaseDegrees, 360);
            worst = worst.With(new Worst(Math.Abs(spice.Gain[k][1] - reference - ours.Points[k].GainDb), Math.Abs(turn), 0, 0, 0, 0));
        }

        for (int k = 0; k < spice.Impedance.Length; k++)
        {
            worst = worst.With(new Worst(0, 0, Math.Abs(spice.Impedance[k][1] / terminals.Points[k].ImpedanceOhm - 1), 0, 0, 0));
        }

        (double hz, double db) = Top(spice.Gain, reference);
        ResonancePeak? peak = PickupResponse.FindPeak(pickup, load);
        if (db > 0.001)
        {
            Assert.True(peak is not null, FormattableString.Invariant($"ngspice shows a peak of {db} dB at {hz} Hz, we none"));
            peaks++;
            worst = worst.With(new Worst(0, 0, 0, Math.Abs(peak.Value.FrequencyHz / hz - 1), Math.Abs(peak.Value.GainDb - db), 0));
        }
        else
        {
            Assert.True(
                peak is null || peak.Value.GainDb < 0.002,
                FormattableString.Invariant($"we show a peak of {peak?.GainDb} dB, ngspice none")
            );
        }

        double fall = PickupResponse.FindMinus3Db(pickup, load)!.Value;
        return worst.With(new Worst(0, 0, 0, 0, 0, Math.Abs(fall / Fall(spice.Gain, reference - 10 * Math.Log10(2)) - 1)));
    }

    /// <summary>The simulator's highest point inside its sweep, by a parabola through it and its neighbours.</summary>
    private static (double Hz, double Db) Top(double[][] rows, double reference)
    {
        int top = Enumerable.Range(0, rows.Length).MaxBy(k => rows[k][1]);
        if (top == 0 || top == rows.Length - 1)
        {
            return (0, 0);
        }

        double before = rows[top - 1][1],
            here = rows[top][1],
            after = rows[top + 1][1];
        double shift = (before - after) / (2 * (before - 2 * here + after));
        return (rows[top][0] * Math.Pow(rows[top + 1][0] / rows[top][0], shift), here - (before - after) * shift / 4 - reference);
    }

    private static double Fall(double[][] rows, double level)
    {
        int last = rows.Length - 1;
        while (rows[last - 1][1] < level)
        {
            last--;
        }

        double share = (rows[last - 1][1] - level) / (rows[last - 1][1] - rows[last][1]);
        return rows[last - 1][0] * Math.Pow(rows[last][0] / rows[last - 1][0], share);
    }

    private static IEnumerable<(LumpedPickup Pickup, LoadCircuit Load)> RandomNetworks()
    {
        Random random = new(Seed);
        double Log(double from, double to) => from * Math.Pow(to / from, random.NextDouble());
        double Setting() =>
            random.Next(5) switch
            {
                0 => 1,
                1 => 0.05,
                _ => 0.05 + 0.95 * random.NextDouble(),
            };
        for (int i = 0; i < Count; i++)
        {
            EddyBranch[] eddy = [.. Enumerable.Range(0, random.Next(4)).Select(_ => new EddyBranch(Log(0.05, 2), Log(5e3, 500e3)))];
            LumpedPickup pickup = new(Log(500, 20e3), Log(0.3, 12), Log(30e-12, 400e-12))
            {
                Eddy = eddy,
                ParallelLossOhm = random.Next(2) == 0 ? Log(200e3, 5e6) : null,
            };
            double ToneSetting() => random.Next(5) == 0 ? 0 : random.NextDouble();
            yield return (
                pickup,
                new LoadCircuit
                {
                    Volume = random.Next(4) > 0 ? new VolumeControl(Log(100e3, 1e6), Setting()) : null,
                    Tone = random.Next(4) > 0 ? new ToneControl(Log(100e3, 1e6), Log(1e-9, 100e-9), ToneSetting()) : null,
                    CableCapacitanceF = random.Next(4) > 0 ? Log(100e-12, 1.5e-9) : 0,
                    InputResistanceOhm = random.Next(4) > 0 ? Log(100e3, 10e6) : null,
                    InputCapacitanceF = random.Next(2) == 0 ? Log(5e-12, 300e-12) : 0,
                }
            );
        }
    }

    private static Evidence Against(string what, string because) =>
        Evidence.Outside("Circuit against ngspice: largest difference in " + what, Source, "run here", because);

    [GeneratedRegex(@"^\d+\s+(\S+)\s+(\S+)\s+\S+\s*$", RegexOptions.Multiline)]
    private static partial Regex PrintedRow();

    private readonly record struct Worst(double GainDb, double PhaseDegrees, double Ohm, double Peak, double PeakDb, double Fall)
    {
        public Worst With(Worst other) =>
            new(
                Math.Max(GainDb, other.GainDb),
                Math.Max(PhaseDegrees, other.PhaseDegrees),
                Math.Max(Ohm, other.Ohm),
                Math.Max(Peak, other.Peak),
                Math.Max(PeakDb, other.PeakDb),
                Math.Max(Fall, other.Fall)
            );
    }
}
