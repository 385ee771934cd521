using System.Globalization;
using Coilwright.Bench;
using Coilwright.Physics.Sound;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Listening;

/// <summary>A recording of one pickup: its samples, how far up they are clear, and what is wrong or to be known of it.</summary>
/// <param name="Samples">The channel taken.</param>
/// <param name="ClearHz">Highest frequency that is clear of noise, Hz; zero when none is.</param>
/// <param name="Problems">Why it cannot be used; empty when it can.</param>
/// <param name="Notes">What to know of it, in sentences.</param>
internal sealed record DryRecording(double[] Samples, double ClearHz, IReadOnlyList<Problem> Problems, IReadOnlyList<string> Notes)
{
    /// <summary>Longest recording, s: what fits into memory with room.</summary>
    public const double LongestS = 600;

    private const double SilentPeak = 1e-4,
        Clipped = 0.9995,
        LowestRateHz = 8_000,
        HighestRateHz = 192_000;

    private const int ClippedTogether = 3;

    private static readonly int[] s_usualRates = [44_100, 48_000, 88_200, 96_000, 192_000];

    public static DryRecording Of(WaveFile file)
    {
        double[] samples = file.Channels.MaxBy(channel => channel.Sum(value => value * value))!;
        Problem[] problems = [.. Wrong(file, samples)];
        double? clear = problems.Length == 0 ? ClearBand.HighestHz(samples, file.RateHz, file.Bits) : null;
        return new DryRecording(samples, clear ?? 0, problems, [.. Known(file, samples)]);
    }

    private static IEnumerable<Problem> Wrong(WaveFile file, double[] samples)
    {
        double lengthS = samples.Length / (double)file.RateHz;
        if (lengthS > LongestS)
        {
            string long_ = string.Create(CultureInfo.InvariantCulture, $"{lengthS / 60:0.0} min");
            yield return new Problem("in", "the recording is too long; cut out the part that you want to hear", long_, "up to 10 min");
        }

        if (file.RateHz is < (int)LowestRateHz or > (int)HighestRateHz)
        {
            yield return new Problem("in", "the recording's rate is not usable; record it again", $"{file.RateHz} Hz", "8 kHz to 192 kHz");
        }

        if (samples.Length == 0 || samples.Max(Math.Abs) < SilentPeak)
        {
            yield return new Problem("in", "the recording is silent: it never rises above −80 dB of full scale", Allowed: "a sound");
        }
    }

    private static IEnumerable<string> Known(WaveFile file, double[] samples)
    {
        if (file.Channels.Count > 1)
        {
            yield return $"the recording has {file.Channels.Count} channels: the loudest of them is taken";
        }

        int cut = CutTops(samples);
        if (cut > 0)
        {
            yield return $"the recording is clipped in {cut} places: what was cut off there cannot be had back; record it softer";
        }

        if (!s_usualRates.Contains(file.RateHz))
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"the recording has {file.RateHz} samples a second: the sound is written at the same rate and ends at {file.RateHz / 2} Hz"
            );
        }
    }

    /// <summary>Places where three samples in a row or more stand at full scale.</summary>
    private static int CutTops(double[] samples)
    {
        int places = 0,
            row = 0;
        foreach (double value in samples)
        {
            row = Math.Abs(value) >= Clipped ? row + 1 : 0;
            places += row == ClippedTogether ? 1 : 0;
        }

        return places;
    }
}
