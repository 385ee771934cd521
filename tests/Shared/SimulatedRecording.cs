using System.Numerics;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Sound;
using MathNet.Numerics.IntegralTransforms;

namespace Coilwright.Shared;

/// <summary>
/// What an audio interface would record of a sweep: before a resistor, and at the joint of resistor and pickup; delayed by 137 samples.
/// </summary>
internal static class SimulatedRecording
{
    public static double[][] Of(LogSweep sweep, double rateHz, LumpedPickup pickup, double resistorOhm, double inputOhm, double inputF)
    {
        double[] played = sweep.Samples(rateHz, 0.5);
        int length = 1 << (int)Math.Ceiling(Math.Log2(played.Length + rateHz));
        Complex[] first = new Complex[length];
        for (int i = 0; i < played.Length; i++)
        {
            first[i + 137] = played[i];
        }

        Complex[] second = (Complex[])first.Clone();
        Fourier.Forward(second, FourierOptions.Matlab);
        for (int i = 0; i <= length / 2; i++)
        {
            double hz = Math.Max(0.5, i * rateHz / length);
            Complex shunt = 1 / (1 / PickupImpedance.Ohm(pickup, hz) + new Complex(1 / inputOhm, 2 * Math.PI * hz * inputF));
            second[i] *= shunt / (resistorOhm + shunt);
            second[(length - i) % length] = Complex.Conjugate(second[i]);
        }

        Fourier.Inverse(second, FourierOptions.Matlab);
        int kept = (int)(played.Length + rateHz);
        return
        [
            [.. first.Take(kept).Select(value => value.Real)],
            [.. second.Take(kept).Select(value => value.Real)],
        ];
    }
}
