using System.Numerics;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Sound;

namespace Coilwright.Physics.Tests.Sound;

public sealed class LogSweepTests
{
    // Computed outside this program from the published formula [Farina]: growth, advance of harmonics 2 to 5, and the time of 1 kHz, s.
    [Theory]
    [InlineData(
        20,
        20000,
        5,
        0.7238241365054198,
        0.5017166594399687,
        0.7952020911994375,
        1.0034333188799374,
        1.164950007226698,
        2.831616673893365
    )]
    [InlineData(
        20,
        20000,
        10,
        1.4476482730108395,
        1.0034333188799374,
        1.590404182398875,
        2.0068666377598747,
        2.329900014453396,
        5.66323334778673
    )]
    [InlineData(
        10,
        22050,
        8,
        1.0391657967455232,
        0.7202948421484886,
        1.141640314268219,
        1.4405896842969772,
        1.6724728305870336,
        4.785535345471045
    )]
    [InlineData(
        50,
        15000,
        3,
        0.5259667621144383,
        0.3645723782278663,
        0.5778335482898983,
        0.7291447564557326,
        0.8465108476271845,
        1.5756556040829173
    )]
    public void Growth_and_times_are_those_of_the_published_formula(
        double fromHz,
        double toHz,
        double lengthS,
        double growthS,
        double second,
        double third,
        double fourth,
        double fifth,
        double oneKhzS
    )
    {
        LogSweep sweep = new(fromHz, toHz, lengthS);
        Assert.Equal(growthS, sweep.GrowthS, 1e-9);
        Assert.Equal([second, third, fourth, fifth], ((double[])[2, 3, 4, 5]).Select(sweep.AdvanceOf), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(oneKhzS, sweep.TimeOf(1000), 1e-9);
    }

    [Fact]
    public void A_distorting_chain_gives_the_gain_of_its_linear_part()
    {
        // y = x + 0.1 x² + 0.05 x³ at full level: 1.0375 of the fundamental, by Chebyshev's identities (analytic, outside figure).
        LogSweep sweep = new(20, 20_000, 4);
        double[] x = sweep.Samples(48_000);
        SweepRecording recording = SweepRecording.Deconvolve(
            sweep,
            48_000,
            [
                [.. x.Select(v => v + 0.1 * v * v + 0.05 * v * v * v), .. new double[24_000]],
            ]
        );
        Evidence check = Evidence.Own(
            "Sweep: gain of the linear part of x + 0.1x² + 0.05x³ at three frequencies",
            "simulation with known truth: 1 + 3/4 · 0.05 = 1.0375 (cos³)",
            "ratchet: what the window leaves"
        );
        foreach (double hz in (double[])[200, 1000, 4000])
        {
            check.Within(recording.TransferAt(0, hz).Magnitude, 1.0375, 0.002, at: FormattableString.Invariant($"{hz} Hz"));
        }

        check.Record();
    }

    [Fact]
    public void A_pickup_behind_a_resistor_shows_its_impedance()
    {
        LumpedPickup pickup = new(7800, 3.5, 120e-12) { Eddy = [new(0.9, 60e3)] };
        LogSweep sweep = new(20, 20_000, 3);
        const double Rate = 48_000,
            Resistor = 22e3,
            InputOhm = 1e6,
            InputF = 60e-12;
        double[][] channels = SimulatedRecording.Of(sweep, Rate, pickup, Resistor, InputOhm, InputF);
        SweepRecording recording = SweepRecording.Deconvolve(sweep, Rate, channels);
        Assert.True(recording.ClearnessDb > 40);
        foreach (double hz in (double[])[60, 120, 1000, 4000, 7000, 12_000])
        {
            Complex expected = PickupImpedance.Ohm(pickup, hz),
                found = recording.ImpedanceOhm(hz, Resistor, InputOhm, InputF);
            Assert.True((found / expected - 1).Magnitude < 0.01, FormattableString.Invariant($"{hz} Hz: {found} for {expected}"));
        }
    }
}
