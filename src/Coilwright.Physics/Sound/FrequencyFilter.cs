using System.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace Coilwright.Physics.Sound;

/// <summary>A sound through a response that is known by its complex gain against frequency.</summary>
/// <remarks>
/// The gain at evenly spaced frequencies is turned into an impulse response, as long before its zero as behind it, and the sound is
/// convolved with it block by block in the frequency domain (overlap-add). Sound and gain are taken as limited to half the rate.
/// </remarks>
public sealed class FrequencyFilter
{
    /// <summary>Length of the impulse response, samples: a third of a second at 48 kHz, far longer than a pickup rings.</summary>
    private const int Taps = 16_384;

    /// <summary>The gain at 0 Hz is taken from here, Hz.</summary>
    private const double LowestHz = 1e-3;

    private readonly Complex[] _spectrum;

    private FrequencyFilter(Complex[] spectrum) => _spectrum = spectrum;

    /// <summary>A filter of a gain.</summary>
    /// <param name="rateHz">Samples per second of the sound, 4,000…400,000.</param>
    /// <param name="gainAt">Complex gain at frequencies in Hz, in their order; finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate lies outside its range.</exception>
    public static FrequencyFilter Of(double rateHz, Func<double[], IReadOnlyList<Complex>> gainAt)
    {
        Require.InRange(rateHz, 4000, 400_000);
        double[] hz = [.. Enumerable.Range(0, Taps / 2 + 1).Select(k => Math.Max(LowestHz, k * rateHz / Taps))];
        IReadOnlyList<Complex> gain = gainAt(hz);
        Complex[] impulse = new Complex[Taps];
        (impulse[0], impulse[Taps / 2]) = (gain[0].Real, gain[Taps / 2].Real);
        for (int k = 1; k < Taps / 2; k++)
        {
            (impulse[k], impulse[Taps - k]) = (gain[k], Complex.Conjugate(gain[k]));
        }

        Fourier.Inverse(impulse, FourierOptions.Matlab);
        Complex[] spectrum = new Complex[2 * Taps];
        for (int i = 0; i < Taps; i++)
        {
            spectrum[i] = impulse[(i + Taps / 2) % Taps].Real; // its zero moves to the middle
        }

        Fourier.Forward(spectrum, FourierOptions.Matlab);
        return new FrequencyFilter(spectrum);
    }

    /// <summary>The sound behind the filter, as long as before and not delayed.</summary>
    /// <param name="sound">Samples.</param>
    public double[] Apply(double[] sound)
    {
        double[] heard = new double[sound.Length];
        Complex[] block = new Complex[2 * Taps];
        for (int from = 0; from < sound.Length; from += Taps)
        {
            Fill(block, sound.AsSpan(from, Math.Min(Taps, sound.Length - from)));
            Fourier.Forward(block, FourierOptions.Matlab);
            for (int k = 0; k < block.Length; k++)
            {
                block[k] *= _spectrum[k];
            }

            Fourier.Inverse(block, FourierOptions.Matlab);
            Add(heard, block, from - Taps / 2);
        }

        return heard;
    }

    private static void Fill(Complex[] block, ReadOnlySpan<double> part)
    {
        Array.Clear(block);
        for (int i = 0; i < part.Length; i++)
        {
            block[i] = part[i];
        }
    }

    private static void Add(double[] heard, Complex[] block, int start)
    {
        for (int i = Math.Max(0, -start); i < block.Length && start + i < heard.Length; i++)
        {
            heard[start + i] += block[i].Real;
        }
    }
}
