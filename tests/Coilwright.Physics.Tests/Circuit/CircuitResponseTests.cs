using Coilwright.Physics.Circuit;
using Coilwright.Physics.Circuit.Networks;

namespace Coilwright.Physics.Tests.Circuit;

/// <summary>
/// Whole circuits: against the ladder's closed form, against each other, and by their invariants. Against a circuit simulator:
/// Coilwright.Outside.Tests.
/// </summary>
public sealed class CircuitResponseTests
{
    private static readonly double[] s_band = PickupResponse.LogFrequencies(20, 20e3, 203);
    private static readonly CircuitCoil s_slug = new(new LumpedPickup(4000, 2.1, 0) { Eddy = [new(0.3, 40e3)] }, 70e-12);
    private static readonly CircuitCoil s_screw = new(new LumpedPickup(4100, 2.0, 0) { Eddy = [new(0.4, 30e3)] }, 75e-12)
    {
        ParallelLossOhm = 3e6,
    };
    private static readonly LoadCircuit s_load = new()
    {
        Volume = new(500e3, 0.7),
        Tone = new(500e3, 22e-9, 0.8),
        CableCapacitanceF = 500e-12,
        InputResistanceOhm = 1e6,
    };

    [Fact]
    public void One_pickup_on_a_ladder_gives_what_the_closed_form_gives()
    {
        double worstDb = 0,
            worstDegrees = 0,
            worstOhm = 0;
        Gen.Select(Networks.Pickup, Networks.Load)
            .ForAll(
                (pickup, load) =>
                {
                    GuitarCircuit circuit = GuitarCircuit.FromCoil(pickup, pickup.CapacitanceF, pickup.ParallelLossOhm, load);
                    Response ladder = PickupResponse.Compute(pickup, load, s_band),
                        network = CircuitResponse.Compute(circuit, s_band);
                    Assert.Equal(ladder.LowFrequencyGain, network.LowFrequencyGain, 1e-10 * ladder.LowFrequencyGain);
                    for (int i = 0; i < s_band.Length; i++)
                    {
                        worstDb = Math.Max(worstDb, Math.Abs(ladder.Points[i].GainDb - network.Points[i].GainDb));
                        worstDegrees = Math.Max(worstDegrees, Math.Abs(ladder.Points[i].PhaseDegrees - network.Points[i].PhaseDegrees));
                        worstOhm = Math.Max(worstOhm, Math.Abs(ladder.Points[i].ImpedanceOhm / network.Points[i].ImpedanceOhm - 1));
                    }

                    ResonancePeak? one = PickupResponse.FindPeak(pickup, load),
                        other = CircuitResponse.FindPeak(circuit);
                    Assert.Equal(one is null, other is null);
                    Assert.Equal(one?.GainDb ?? 0, other?.GainDb ?? 0, 1e-8);
                    Assert.Equal(PickupResponse.FindMinus3Db(pickup, load)!.Value, CircuitResponse.FindMinus3Db(circuit)!.Value, 1e-6);
                },
                count: 400
            );
        // Rounding alone.
        Assert.True(
            worstDb < 1e-8 && worstDegrees < 1e-7 && worstOhm < 1e-9,
            FormattableString.Invariant($"{worstDb} dB, {worstDegrees}°, {worstOhm}")
        );
    }

    [Fact]
    public void Coils_in_series_are_one_coil_of_summed_impedance()
    {
        // Own capacitances off: they are what makes two coils more than one. L = L1 + L2 + 2M.
        CircuitCoil a = s_slug with { CapacitanceF = 0 },
            b = s_screw with { CapacitanceF = 0, ParallelLossOhm = null };
        CircuitPickup two = new([a, b]) { Mutual = [new(0, 1, 0.35)] };
        LumpedPickup one = new(8100, 2.1 + 2.0 + 0.7, 0) { Eddy = [new(0.3, 40e3), new(0.4, 30e3)] };
        Response expected = PickupResponse.Compute(one, s_load, s_band),
            found = CircuitResponse.Compute(new GuitarCircuit([two], s_load), s_band);
        Assert.Equal(2 * expected.LowFrequencyGain, found.LowFrequencyGain, 1e-9);
        Assert.All(s_band.Index(), point => Assert.Equal(expected.Points[point.Index].GainDb, found.Points[point.Index].GainDb, 1e-8));
    }

    [Fact]
    public void Two_like_coils_side_by_side_are_one_of_half_the_impedance()
    {
        LumpedPickup whole = new(4000, 2.1, 0) { Eddy = [new(0.3, 40e3)] },
            half = new(2000, (2.1 + 0.4) / 2, 0) { Eddy = [new(0.15, 20e3)] };
        CircuitPickup two = new([new CircuitCoil(whole, 60e-12), new CircuitCoil(whole, 60e-12)])
        {
            Joined = Joining.Parallel,
            Mutual = [new(0, 1, 0.4)],
        };
        Response expected = PickupResponse.Compute(half, 120e-12, null, s_load, s_band),
            found = CircuitResponse.Compute(new GuitarCircuit([two], s_load), s_band);
        Assert.All(s_band.Index(), point => Assert.Equal(expected.Points[point.Index].GainDb, found.Points[point.Index].GainDb, 1e-8));
        Assert.All(s_band.Index(), point =>
            Assert.Equal(
                expected.Points[point.Index].ImpedanceOhm,
                found.Points[point.Index].ImpedanceOhm,
                1e-6 * expected.Points[point.Index].ImpedanceOhm
            )
        );
    }

    [Fact]
    public void A_coil_with_its_leads_and_its_magnet_turned_sounds_as_before_but_hums_against()
    {
        CircuitPickup plain = new([s_slug, s_screw]) { Mutual = [new(0, 1, 0.4)] };
        CircuitPickup turned = new([s_slug, s_screw with { Reversed = true, Level = -1 }]) { Mutual = [new(0, 1, -0.4)] };
        Response expected = CircuitResponse.Compute(new GuitarCircuit([plain], s_load), s_band),
            found = CircuitResponse.Compute(new GuitarCircuit([turned], s_load), s_band);
        Assert.Equal(expected.LowFrequencyGain, found.LowFrequencyGain, 1e-12);
        Assert.All(s_band.Index(), point => Assert.Equal(expected.Points[point.Index].GainDb, found.Points[point.Index].GainDb, 1e-9));

        // A uniform field lifts both coils alike: unturned they add, turned they cancel but for their difference in turns, of which none is
        // given here.
        GuitarCircuit hum = new([turned with { Coils = [s_slug, s_screw with { Reversed = true, Level = 1 }] }], s_load);
        Assert.Equal(0, CircuitResponse.Compute(hum, [20]).LowFrequencyGain, 1e-3);
    }

    [Fact]
    public void Like_pickups_out_of_phase_cancel_and_the_answer_says_so()
    {
        CircuitPickup pickup = new([s_slug]);
        GuitarCircuit circuit = new([pickup, pickup with { Reversed = true }], s_load) { Joined = Joining.Series };
        // Both wires of a grounded pickup are not alike only through its own capacitance, which lies inside it: they cancel exactly.
        Assert.True(CircuitResponse.Compute(circuit, s_band).IsSilent);
        Assert.Null(CircuitResponse.FindPeak(circuit));
        Assert.Null(CircuitResponse.FindMinus3Db(circuit));
    }

    [Fact]
    public void A_tap_at_the_whole_coil_changes_nothing_and_halfway_gives_half_the_voltage_behind_a_quarter_of_the_inductance()
    {
        LumpedPickup coil = new(6000, 2.4, 0) { Eddy = [new(0.4, 50e3)] };
        GuitarCircuit At(double? tap, double capacitanceF) =>
            new([new CircuitPickup([new CircuitCoil(coil, capacitanceF) { TapShare = tap }])], s_load);
        Response whole = CircuitResponse.Compute(At(null, 100e-12), s_band),
            full = CircuitResponse.Compute(At(1, 100e-12), s_band);
        Assert.All(s_band.Index(), point => Assert.Equal(whole.Points[point.Index].GainDb, full.Points[point.Index].GainDb, 1e-10));

        LumpedPickup quarter = new(3000, 0.6, 0) { Eddy = [new(0.1, 12.5e3)] };
        Response half = CircuitResponse.Compute(At(0.5, 0), s_band),
            expected = PickupResponse.Compute(quarter, s_load, s_band);
        Assert.Equal(expected.LowFrequencyGain / 2, half.LowFrequencyGain, 1e-9);
        Assert.All(s_band.Index(), point => Assert.Equal(expected.Points[point.Index].GainDb, half.Points[point.Index].GainDb, 1e-7));
    }

    [Fact]
    public void A_dummy_coil_adds_impedance_and_no_voltage()
    {
        CircuitCoil dummy = new(new LumpedPickup(3000, 0.8, 0), 0) { Level = 0, Reversed = true };
        CircuitCoil bare = s_slug with { CapacitanceF = 0 };
        Response found = CircuitResponse.Compute(new GuitarCircuit([new CircuitPickup([bare, dummy])], s_load), s_band);
        Response expected = PickupResponse.Compute(new LumpedPickup(7000, 2.9, 0) { Eddy = [new(0.3, 40e3)] }, s_load, s_band);
        Assert.Equal(expected.LowFrequencyGain, found.LowFrequencyGain, 1e-9);
        Assert.All(s_band.Index(), point => Assert.Equal(expected.Points[point.Index].GainDb, found.Points[point.Index].GainDb, 1e-8));
    }

    [Fact]
    public void A_treble_retaining_capacitor_lifts_the_treble_of_a_control_turned_down_and_changes_nothing_at_full()
    {
        LumpedPickup pickup = new(6200, 2.5, 120e-12);
        LoadCircuit At(double setting, TrebleRetainer? keep) =>
            new()
            {
                Volume = new VolumeControl(500e3, setting) { Retainer = keep },
                CableCapacitanceF = 500e-12,
                InputResistanceOhm = 1e6,
            };
        TrebleRetainer capacitor = new(null, 1e-9, false);
        double Db(LoadCircuit load) => PickupResponse.Compute(pickup, load, [3000]).Points[0].GainDb;
        Assert.True(Db(At(0.3, capacitor)) > Db(At(0.3, null)) + 3);
        Assert.Equal(Db(At(1, null)), Db(At(1, capacitor)), 1e-9);
    }

    [Fact]
    public void A_buffer_of_no_output_resistance_frees_the_pickup_from_its_cable()
    {
        LumpedPickup pickup = new(6200, 2.5, 120e-12);
        LoadCircuit behind = new()
        {
            Buffer = new BufferStage(1e6, 0, 1e-3, 2),
            CableCapacitanceF = 5e-9,
            InputResistanceOhm = 10e3,
        };
        LoadCircuit alone = new() { InputResistanceOhm = 1e6 };
        Response found = PickupResponse.Compute(pickup, behind, s_band),
            expected = PickupResponse.Compute(pickup, alone, s_band);
        Assert.Equal(2 * expected.LowFrequencyGain, found.LowFrequencyGain, 1e-6);
        Assert.All(s_band.Index(), point => Assert.Equal(expected.Points[point.Index].GainDb, found.Points[point.Index].GainDb, 1e-6));
        Assert.Equal(
            PickupResponse.FindPeak(pickup, alone)!.Value.FrequencyHz,
            PickupResponse.FindPeak(pickup, behind)!.Value.FrequencyHz,
            1e-2
        );
    }

    /// <summary>Equipartition: whatever the resistances, the noise of a capacitor over all frequencies is √(kT/C) [Nyquist].</summary>
    [Fact]
    public void The_whole_thermal_noise_of_a_coil_and_its_capacitance_is_the_square_root_of_kT_over_C()
    {
        GuitarCircuit circuit = GuitarCircuit.FromCoil(new LumpedPickup(6200, 2.5, 0), 120e-12, 2e6, LoadCircuit.None);
        double expected = Math.Sqrt(1.380649e-23 * 293.15 / 120e-12);
        Evidence
            .Outside(
                "Circuit: thermal noise of a coil over all frequencies",
                "equipartition: √(kT/C) [Nyquist] [SI]",
                "derived",
                "method: what lies above 100 MHz"
            )
            .WithinPart(CircuitResponse.ThermalNoiseV(circuit, 1e-2, 1e8), expected, 2e-5)
            .Record();
    }

    [Fact]
    public void A_plain_resistance_has_the_noise_of_the_textbook()
    {
        // √(4kT·R·B): 10 kΩ, 20 kHz less 20 Hz, 20 °C.
        GuitarCircuit circuit = GuitarCircuit.FromCoil(new LumpedPickup(10e3, 0, 0), 0, null, LoadCircuit.None);
        Assert.Equal(1, CircuitResponse.ThermalNoiseV(circuit) / Math.Sqrt(4 * 1.380649e-23 * 293.15 * 10e3 * 19_980), 1e-9);
    }

    [Fact]
    public void A_logarithmic_track_gives_its_middle_and_its_ends_and_a_measured_one_its_points()
    {
        Taper log = Taper.Logarithmic(0.1);
        Assert.Equal((0.0, 1.0), (log.Share(0), log.Share(1)));
        Assert.Equal(0.1, log.Share(0.5), 1e-12);
        Taper measured = Taper.Measured([(0, 0), (0.5, 0.12), (1, 1)]);
        Assert.Equal(0.06, measured.Share(0.25), 1e-12);
        Assert.Equal(0.12, measured.Share(0.5), 1e-12);
        Assert.Equal(0.56, measured.Share(0.75), 1e-12);
        Assert.Equal(0.3, Taper.Linear.Share(0.3));
        Assert.Throws<ArgumentOutOfRangeException>(() => Taper.Measured([(0, 0), (0.5, 0.6), (0.4, 0.7), (1, 1)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => log.Share(1.2));
    }

    [Fact]
    public void An_angle_in_registers_is_the_angle_of_the_library()
    {
        // A series R into a capacitor runs the phase from 0 to −90°; every quadrant comes through sign and order of a source behind it.
        for (double hz = 1; hz < 1e6; hz *= 1.07)
        {
            Response point = CircuitResponse.Compute(
                GuitarCircuit.FromCoil(new LumpedPickup(10e3, 0, 0), 1e-9, null, LoadCircuit.None),
                [hz, hz, hz, hz, hz]
            );
            double exact = -Math.Atan2(2 * Math.PI * hz * 1e-5, 1) * 180 / Math.PI;
            Assert.All(point.Points, one => Assert.Equal(exact, one.PhaseDegrees, 1e-12));
        }
    }
}
