using Coilwright.Bench;

namespace Coilwright.Application.Listening;

/// <summary>A recording, and the same as another pickup would have given it: two files of one rate and one length.</summary>
public sealed class HeardRecording
{
    internal HeardRecording(Guid id, RevoiceQuestion asked, string from, string to, RevoicedSound sound)
    {
        (Id, Asked, From, To) = (id, asked, from, to);
        (Undone, Notes) = (sound.Undone, sound.Notes);
        double recorded = RmsOf(sound.Recorded),
            heard = RmsOf(sound.Heard);
        LouderDb = 20 * Math.Log10(heard / recorded);
        (double first, double second) = asked.Matched ? (1 / recorded, 1 / heard) : (1, 1);
        double loudest = Math.Max(first * sound.Recorded.Max(Math.Abs), second * sound.Heard.Max(Math.Abs)),
            scale = HearPluck.Level / loudest;
        Recorded = WaveFile.Write(sound.RateHz, [.. sound.Recorded.Select(one => one * first * scale)]);
        Heard = WaveFile.Write(sound.RateHz, [.. sound.Heard.Select(one => one * second * scale)]);
    }

    /// <summary>Its key, which nobody can guess.</summary>
    public Guid Id { get; }

    /// <summary>What was asked.</summary>
    public RevoiceQuestion Asked { get; }

    /// <summary>The pickup of the recording, with its load.</summary>
    public string From { get; }

    /// <summary>The pickup wanted, with its load.</summary>
    public string To { get; }

    /// <summary>How far the first pickup could be undone, in a sentence without its full stop.</summary>
    public string Undone { get; }

    /// <summary>What to know of the recording and the result, in sentences.</summary>
    public IReadOnlyList<string> Notes { get; }

    /// <summary>By how much the result is louder than the recording before levels are matched, dB of r.m.s. over all of it.</summary>
    public double LouderDb { get; }

    /// <summary>The recording as a file, one channel of 24 bits.</summary>
    public byte[] Recorded { get; }

    /// <summary>What the other pickup would have given as a file, one channel of 24 bits.</summary>
    public byte[] Heard { get; }

    private static double RmsOf(IReadOnlyList<double> samples) =>
        Math.Max(Math.Sqrt(samples.Sum(one => one * one) / Math.Max(1, samples.Count)), 1e-12);
}
