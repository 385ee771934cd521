using System.Numerics;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Sound;

namespace Coilwright.Physics.Tests.Sound;

/// <summary>A sound through responses and back.</summary>
public sealed class ExchangeTests
{
    private const int Rate = 48_000;

    private static readonly LumpedPickup s_single = new(6200, 2.4, 110e-12),
        s_twin = new(8100, 4.3, 140e-12);

    private static readonly LoadCircuit s_player = new()
    {
        Volume = new(500e3, 1),
        CableCapacitanceF = 500e-12,
        InputResistanceOhm = 1e6,
    };

    [Fact]
    public void A_damped_sine_through_one_resistor_and_capacitor_is_its_closed_form()
    {
        const double Corner = 2000,
            Hz = 700,
            Decay = 30;
        double b = 2 * Math.PI * Corner;
        double[] sound = DampedSines.Samples([(1, Hz, Decay)], Rate, 4800);
        double[] heard = FrequencyFilter.Of(Rate, hz => [.. hz.Select(f => 1 / new Complex(1, f / Corner))]).Apply(sound);
        // y' = b(x − y), x = e^(−σt)·sin ωt: y = Im{b/(b + s)·(e^(st) − e^(−bt))}, s = −σ + jω
        Complex s = new(-Decay, 2 * Math.PI * Hz);
        double worst = 0;
        for (int i = 0; i < 4000; i++)
        {
            double t = i / (double)Rate;
            double wanted = (b / (b + s) * (Complex.Exp(s * t) - Math.Exp(-b * t))).Imaginary;
            worst = Math.Max(worst, Math.Abs(wanted - heard[i]));
        }

        Assert.InRange(worst, 0, 2e-3); // the corner at its start reaches beyond half the rate
    }

    [Fact]
    public void There_and_back_is_the_same_within_half_a_decibel_where_the_sound_is_clear()
    {
        double[] dry = Noise(3 * Rate);
        double[] first = FrequencyFilter.Of(Rate, Gains(s_single)).Apply(dry);
        Exchange there = Exchange.Within(Gains(s_single), 12_000, 20_000),
            back = Exchange.Within(Gains(s_twin), 12_000, 20_000);
        double[] second = FrequencyFilter.Of(Rate, hz => there.Gains(hz, Gains(s_single)(hz), Gains(s_twin)(hz))).Apply(first);
        double[] again = FrequencyFilter.Of(Rate, hz => back.Gains(hz, Gains(s_twin)(hz), Gains(s_single)(hz))).Apply(second);
        double limit = Math.Min(there.LimitHz ?? 20_000, back.LimitHz ?? 20_000);
        Assert.InRange(limit, 8_000, 12_000);
        for (double hz = 50; hz < 0.95 * limit; hz *= 1.26)
        {
            double db = 10 * Math.Log10(Power(again, hz) / Power(first, hz));
            Assert.True(Math.Abs(db) < 0.5, FormattableString.Invariant($"{hz:0} Hz: {db:0.00} dB"));
        }

        Assert.True(10 * Math.Log10(Power(second, 5000) / Power(first, 5000)) < -2, "the second pickup has less treble");
    }

    [Fact]
    public void A_recording_is_clear_up_to_where_its_noise_begins()
    {
        Random random = new(7);
#pragma warning disable CA5394 // noise of a test
        double[] half =
        [
            .. DampedSines
                .Samples([(0.5, 440, 2), (0.1, 2_900, 2)], Rate, 2 * Rate)
                .Select(one => one + 1e-4 * (random.NextDouble() - 0.5)),
        ];
#pragma warning restore CA5394
        double[] rests = [.. half, .. Noise(2 * Rate).Select(one => 1e-4 * one)];
        double clear = ClearBand.HighestHz(rests, Rate, 24)!.Value;
        Assert.InRange(clear, 2_900, 4_000);
        Assert.Null(ClearBand.HighestHz([.. Noise(Rate).Select(_ => 0.0)], Rate, 24));
    }

    private static Func<double[], IReadOnlyList<Complex>> Gains(LumpedPickup pickup) =>
        frequencies =>
        {
            Response response = PickupResponse.Compute(pickup, s_player, frequencies);
            return
            [
                .. response.Points.Select(point =>
                    Complex.FromPolarCoordinates(
                        response.LowFrequencyGain * Math.Pow(10, point.GainDb / 20),
                        point.PhaseDegrees * Math.PI / 180
                    )
                ),
            ];
        };

    private static double[] Noise(int count)
    {
        Random random = new(11);
#pragma warning disable CA5394 // noise of a test
        return [.. Enumerable.Range(0, count).Select(_ => random.NextDouble() - 0.5)];
#pragma warning restore CA5394
    }

    /// <summary>Power in a third of an octave around a frequency, from the middle of the sound.</summary>
    private static double Power(double[] sound, double hz)
    {
        const int Length = 16_384;
        int from = sound.Length / 2;
        double sum = 0;
        for (double f = hz * 0.94; f < hz * 1.06; f += Rate / (double)Length)
        {
            Complex bin = Complex.Zero;
            for (int i = 0; i < Length; i++)
            {
                double window = 0.5 - 0.5 * Math.Cos(2 * Math.PI * i / Length);
                bin += window * sound[from + i] * Complex.FromPolarCoordinates(1, -2 * Math.PI * f * i / Rate);
            }

            sum += bin.Magnitude * bin.Magnitude;
        }

        return sum;
    }
}
