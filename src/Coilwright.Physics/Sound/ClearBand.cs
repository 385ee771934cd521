using System.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace Coilwright.Physics.Sound;

/// <summary>How far up a recording stands clear of its own noise.</summary>
/// <remarks>
/// Third-octave bands of short spectra: the loud tenth of the blocks against the quiet tenth, where the quiet ones lie 30 dB or more below
/// the loud; otherwise the recording never rests, and the noise is taken as the rounding to its bits, LSB²/12. All bounds are our own.
/// </remarks>
public static class ClearBand
{
    private const int Block = 4096;

    private const double ClearPower = 10,
        RestPower = 1e-3,
        LowestHz = 50,
        HighestPart = 0.45;

    private static readonly double s_third = Math.Pow(2, 1 / 3.0);

    /// <summary>Upper edge of the highest band whose sound is 10 dB clear of the noise, Hz; null when none is.</summary>
    /// <param name="sound">Samples, −1…1.</param>
    /// <param name="rateHz">Samples per second.</param>
    /// <param name="bits">Bits that they were rounded to.</param>
    public static double? HighestHz(double[] sound, double rateHz, int bits)
    {
        double[] edges = [.. Edges(rateHz)];
        double[][] blocks = [.. Blocks(sound).Select(block => BandPowers(block, edges, rateHz)).OrderBy(powers => powers.Sum())];
        int tenth = Math.Max(1, blocks.Length / 10);
        double[][] quiet = blocks[..tenth],
            loud = blocks[^tenth..];
        bool rests = Total(quiet) < RestPower * Total(loud);
        double perBin = Math.Pow(2, 2 - 2 * bits) / 12 * Block * 3 / 8; // a Hann window has a mean square of 3/8
        for (int band = edges.Length - 2; band >= 0; band--)
        {
            double rounding = perBin * Math.Max(1, (edges[band + 1] - edges[band]) * Block / rateHz),
                noise = Math.Max(rounding, rests ? Mean(quiet, band) : 0);
            if (Mean(loud, band) > ClearPower * noise)
            {
                return edges[band + 1];
            }
        }

        return null;
    }

    private static double Total(double[][] blocks) => blocks.Average(powers => powers.Sum());

    private static double Mean(double[][] blocks, int band) => blocks.Average(powers => powers[band]);

    private static IEnumerable<double> Edges(double rateHz)
    {
        double last = HighestPart * rateHz;
        for (double edge = LowestHz; edge < last; edge *= s_third)
        {
            yield return edge;
        }

        yield return last;
    }

    private static IEnumerable<Complex[]> Blocks(double[] sound)
    {
        for (int from = 0; from == 0 || from + Block <= sound.Length; from += Block)
        {
            Complex[] block = new Complex[Block];
            for (int i = 0; i < Block && from + i < sound.Length; i++)
            {
                block[i] = sound[from + i] * (0.5 - 0.5 * Math.Cos(2 * Math.PI * i / Block));
            }

            Fourier.Forward(block, FourierOptions.Matlab);
            yield return block;
        }
    }

    private static double[] BandPowers(Complex[] block, double[] edges, double rateHz)
    {
        double[] powers = new double[edges.Length - 1];
        for (int k = 1; k < Block / 2; k++)
        {
            int band = Array.FindLastIndex(edges, edge => edge <= k * rateHz / Block);
            if (band >= 0 && band < powers.Length)
            {
                powers[band] += block[k].Real * block[k].Real + block[k].Imaginary * block[k].Imaginary;
            }
        }

        return powers;
    }
}
