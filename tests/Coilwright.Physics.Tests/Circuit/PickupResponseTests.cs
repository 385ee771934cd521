using System.Numerics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Physics.Tests.Circuit;

public sealed class PickupResponseTests
{
    private static readonly double[] s_band = PickupResponse.LogFrequencies(20, 20e3, 61);

    [Fact]
    public void Every_random_network_agrees_with_node_equations()
    {
        double worstDb = 0,
            worstDegrees = 0,
            worstOhm = 0;
        Gen.Select(Networks.Pickup, Networks.Load)
            .ForAll(
                (pickup, load) =>
                {
                    Response response = PickupResponse.Compute(pickup, load, s_band);
                    double reference = Networks.Solve(pickup, load, PickupResponse.ReferenceHz).Gain.Magnitude;
                    foreach (ResponsePoint point in response.Points)
                    {
                        (Complex gain, double ohm) = Networks.Solve(pickup, load, point.FrequencyHz);
                        Complex ours = Complex.FromPolarCoordinates(1, point.PhaseDegrees * Math.PI / 180);
                        worstDb = Math.Max(worstDb, Math.Abs(point.GainDb - 20 * Math.Log10(gain.Magnitude / reference)));
                        worstDegrees = Math.Max(worstDegrees, (ours - gain / gain.Magnitude).Magnitude * 180 / Math.PI);
                        worstOhm = Math.Max(worstOhm, Math.Abs(point.ImpedanceOhm / ohm - 1));
                    }

                    Assert.Equal(reference, response.LowFrequencyGain, 1e-11 * reference);
                },
                count: 2000
            );
        // Rounding alone, magnified near sharp resonances.
        Assert.True(
            worstDb < 1e-8 && worstDegrees < 1e-7 && worstOhm < 1e-9,
            FormattableString.Invariant($"{worstDb} dB, {worstDegrees}°, {worstOhm}")
        );
    }

    [Fact]
    public void A_bare_coil_is_the_two_pole_low_pass_of_the_textbook() =>
        Gen.Select(Gen.Double[1e3, 12e3], Gen.Double[0.8, 10], Gen.Double[40e-12, 800e-12])
            .ForAll(
                (r, l, c) =>
                {
                    LumpedPickup pickup = new(r, l, c);
                    double squared = 1 / (l * c),
                        q = Math.Sqrt(l / c) / r;
                    double At(double omegaSquared) => 1 / (Math.Pow(1 - omegaSquared * l * c, 2) + omegaSquared * r * r * c * c);
                    double level = At(Math.Pow(2 * Math.PI * 20, 2)),
                        top = squared - r * r / (2 * l * l);
                    ResonancePeak peak = PickupResponse.FindPeak(pickup, LoadCircuit.None)!.Value;
                    Assert.Equal(Math.Sqrt(top) / (2 * Math.PI), peak.FrequencyHz, 1e-6 * peak.FrequencyHz);
                    Assert.Equal(10 * Math.Log10(At(top) / level), peak.GainDb, 1e-9);
                    // Height is counted from 20 Hz, not from rest.
                    Assert.Equal(q, peak.Q, 1.1 * q * Math.Pow(20 / peak.FrequencyHz, 2));

                    // |H|² = level/2 is a quadratic in ω².
                    double target = level / 2,
                        b = r * r * c * c - 2 * l * c,
                        a = l * l * c * c;
                    double fall = (-b + Math.Sqrt(b * b - 4 * a * (1 - 1 / target))) / (2 * a);
                    double found = PickupResponse.FindMinus3Db(pickup, LoadCircuit.None)!.Value;
                    Assert.Equal(Math.Sqrt(fall) / (2 * Math.PI), found, 1e-9 * found);
                }
            );

    [Fact]
    public void Without_a_load_the_impedance_at_low_frequency_is_the_resistance() =>
        Assert.Equal(
            6200,
            PickupResponse.Compute(new LumpedPickup(6200, 2.5, 120e-12), LoadCircuit.None, [0.01]).Points[0].ImpedanceOhm,
            1e-3
        );

    [Fact]
    public void Scaling_every_impedance_keeps_the_curve_and_scales_the_impedance() =>
        Gen.Select(Networks.Pickup, Networks.Load, Gen.Double[0.1, 10])
            .ForAll(
                (pickup, load, k) =>
                {
                    LumpedPickup scaled = new(pickup.ResistanceOhm * k, pickup.InductanceH * k, pickup.CapacitanceF / k)
                    {
                        Eddy = [.. pickup.Eddy.Select(e => new EddyBranch(e.InductanceH * k, e.ResistanceOhm * k))],
                        ParallelLossOhm = pickup.ParallelLossOhm * k,
                    };
                    LoadCircuit scaledLoad = new()
                    {
                        Volume = load.Volume is { } v ? v with { ResistanceOhm = v.ResistanceOhm * k } : null,
                        Tone = load.Tone is { } t ? t with { ResistanceOhm = t.ResistanceOhm * k, CapacitorF = t.CapacitorF / k } : null,
                        CableCapacitanceF = load.CableCapacitanceF / k,
                        InputResistanceOhm = load.InputResistanceOhm * k,
                        InputCapacitanceF = load.InputCapacitanceF / k,
                    };
                    Response before = PickupResponse.Compute(pickup, load, s_band),
                        after = PickupResponse.Compute(scaled, scaledLoad, s_band);
                    for (int i = 0; i < s_band.Length; i++)
                    {
                        Assert.Equal(before.Points[i].GainDb, after.Points[i].GainDb, 1e-9);
                        Assert.Equal(before.Points[i].PhaseDegrees, after.Points[i].PhaseDegrees, 1e-9);
                        Assert.Equal(k, after.Points[i].ImpedanceOhm / before.Points[i].ImpedanceOhm, 1e-9 * k);
                    }
                },
                count: 500
            );

    [Fact]
    public void A_load_of_vanishing_admittance_changes_ever_less()
    {
        LumpedPickup pickup = new(6200, 2.5, 120e-12);
        Response bare = PickupResponse.Compute(pickup, LoadCircuit.None, s_band);
        double Change(double ohm)
        {
            LoadCircuit faint = new()
            {
                Volume = new(ohm, 1),
                Tone = new(ohm, 1e-9, 1),
                CableCapacitanceF = 1e-9 / ohm,
                InputResistanceOhm = ohm,
            };
            Response loaded = PickupResponse.Compute(pickup, faint, s_band);
            return Enumerable.Range(0, s_band.Length).Max(i => Math.Abs(bare.Points[i].GainDb - loaded.Points[i].GainDb));
        }

        Assert.True(Change(1e9) < 0.05);
        Assert.Equal(0.1, Change(1e9) / Change(1e8), 0.005);
    }

    /// <summary>Not so with a strong resistive load: there added capacitance also sharpens a peak that damping had pushed down.</summary>
    [Fact]
    public void More_capacitance_always_lowers_the_peak_of_a_coil_without_resistive_load() =>
        Gen.Select(Networks.Pickup, Gen.Double[0, 2e-9], Gen.Double[1.01, 2])
            .ForAll(
                (pickup, cable, more) =>
                {
                    LumpedPickup plain = pickup with { Eddy = [], ParallelLossOhm = null };
                    ResonancePeak? less = PickupResponse.FindPeak(plain, new LoadCircuit { CableCapacitanceF = cable });
                    ResonancePeak? greater = PickupResponse.FindPeak(plain, new LoadCircuit { CableCapacitanceF = cable * more + 1e-12 });
                    return greater is null || less is not null && greater.Value.FrequencyHz < less.Value.FrequencyHz;
                }
            );

    [Fact]
    public void The_peak_is_the_highest_point_of_the_curve() =>
        Gen.Select(Networks.Pickup, Networks.Load)
            .ForAll(
                (pickup, load) =>
                {
                    double[] fine = PickupResponse.LogFrequencies(20, 1e6, 8000);
                    double top = PickupResponse.Compute(pickup, load, fine).Points.Max(point => point.GainDb);
                    ResonancePeak? peak = PickupResponse.FindPeak(pickup, load);
                    return peak is { } found
                        ? found.GainDb >= top - 1e-9
                            && found.GainDb > 0
                            && found.Q > Math.Sqrt(0.5)
                            && Math.Abs(PickupResponse.Compute(pickup, load, [found.FrequencyHz]).Points[0].GainDb - found.GainDb) < 1e-9
                        : top < 1e-6;
                },
                count: 300
            );

    [Fact]
    public void Beyond_the_last_fall_the_curve_stays_below() =>
        Gen.Select(Networks.Pickup, Networks.Load)
            .ForAll(
                (pickup, load) =>
                {
                    double fall = PickupResponse.FindMinus3Db(pickup, load)!.Value;
                    Assert.Equal(-10 * Math.Log10(2), PickupResponse.Compute(pickup, load, [fall]).Points[0].GainDb, 1e-7);
                    Assert.All(
                        PickupResponse.Compute(pickup, load, PickupResponse.LogFrequencies(fall * 1.000001, 1e6, 500)).Points,
                        point => Assert.True(point.GainDb < -10 * Math.Log10(2))
                    );
                },
                count: 300
            );

    [Fact]
    public void Phase_runs_without_a_jump() =>
        Gen.Select(Networks.Pickup, Networks.Load)
            .ForAll(
                (pickup, load) =>
                {
                    IReadOnlyList<ResponsePoint> points = PickupResponse
                        .Compute(pickup, load, PickupResponse.LogFrequencies(20, 1e6, 20000))
                        .Points;
                    return points.All(point => point.PhaseDegrees is <= 1e-9 and > -270)
                        && Enumerable
                            .Range(1, points.Count - 1)
                            .All(i => Math.Abs(points[i].PhaseDegrees - points[i - 1].PhaseDegrees) < 60);
                },
                count: 100
            );

    [Theory]
    [InlineData(0.0)]
    [InlineData(double.Epsilon)]
    [InlineData(1e-300)]
    [InlineData(1e-9)]
    public void Volume_at_or_near_zero_never_gives_NaN(double setting)
    {
        LoadCircuit load = new()
        {
            Volume = new(500e3, setting),
            Tone = new(500e3, 22e-9, 0),
            CableCapacitanceF = 500e-12,
            InputResistanceOhm = 1e6,
        };
        LumpedPickup pickup = new(7800, 4.4, 120e-12);
        Response response = PickupResponse.Compute(pickup, load, s_band);
        Assert.Equal(setting <= 0, response.IsSilent);
        Assert.All(response.Points, point => Assert.False(double.IsNaN(point.GainDb + point.PhaseDegrees + point.ImpedanceOhm)));
        Assert.Equal(response.IsSilent, response.Points.All(point => double.IsNegativeInfinity(point.GainDb)));
        Assert.False(double.IsNaN(response.LowFrequencyGainDb));
        Assert.Equal(response.IsSilent, PickupResponse.FindPeak(pickup, load) is null);
        Assert.Equal(response.IsSilent, PickupResponse.FindMinus3Db(pickup, load) is null);
    }

    [Fact]
    public void A_curve_that_never_rises_has_no_peak_and_one_that_never_falls_no_minus_3_dB()
    {
        LoadCircuit heavy = new() { InputResistanceOhm = 20e3, CableCapacitanceF = 300e-12 };
        Assert.Null(PickupResponse.FindPeak(new LumpedPickup(8000, 5, 100e-12), heavy));
        Assert.Null(PickupResponse.FindPeak(new LumpedPickup(8000, 0, 0), heavy with { CableCapacitanceF = 0 }));
        Assert.Null(PickupResponse.FindMinus3Db(new LumpedPickup(8000, 0, 0), heavy with { CableCapacitanceF = 0 }));
    }

    [Fact]
    public void Numbers_out_of_range_are_refused()
    {
        LumpedPickup good = new(6200, 2.5, 120e-12);
        foreach (double bad in (double[])[double.NaN, -1, double.PositiveInfinity])
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => PickupResponse.Compute(good, LoadCircuit.None, [bad]));
            Assert.Throws<ArgumentOutOfRangeException>(() => PickupResponse.FindPeak(good with { InductanceH = bad }, LoadCircuit.None));
            Assert.Throws<ArgumentOutOfRangeException>(() => PickupResponse.FindPeak(good with { ResistanceOhm = bad }, LoadCircuit.None));
            Assert.Throws<ArgumentOutOfRangeException>(() => PickupResponse.FindPeak(good with { CapacitanceF = bad }, LoadCircuit.None));
            Assert.Throws<ArgumentOutOfRangeException>(() => PickupResponse.FindPeak(good, new LoadCircuit { Volume = new(500e3, bad) }));
            Assert.Throws<ArgumentOutOfRangeException>(() => PickupResponse.FindPeak(good, new LoadCircuit { InputResistanceOhm = bad }));
        }
    }
}
