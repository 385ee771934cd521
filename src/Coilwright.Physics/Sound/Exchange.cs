using System.Numerics;

namespace Coilwright.Physics.Sound;

/// <summary>One response divided out of a sound and another put in its place, as far as the first can be undone.</summary>
/// <param name="LimitHz">Highest frequency up to which the first is undone, Hz; null when it is over the whole band.</param>
/// <param name="MostUndoneDb">By how much the first is raised at most, dB against its level at 20 Hz.</param>
public sealed record Exchange(double? LimitHz, double MostUndoneDb)
{
    /// <summary>A response is not raised by more than this, dB against its level at 20 Hz: our bound.</summary>
    public const double MostDb = 40;

    private const double ReferenceHz = 20;
    private static readonly double s_least = Math.Pow(10, -MostDb / 20);

    private double _floor;

    /// <summary>How far a response can be undone in a sound that is clear of noise up to a frequency.</summary>
    /// <param name="from">Its complex gain at frequencies in Hz.</param>
    /// <param name="clearHz">Highest frequency that is clear, Hz.</param>
    /// <param name="bandHz">Highest frequency of the sound, Hz; above it nothing is heard.</param>
    public static Exchange Within(Func<double[], IReadOnlyList<Complex>> from, double clearHz, double bandHz)
    {
        double[] hz = [ReferenceHz, .. Enumerable.Range(1, 2000).Select(k => bandHz * k / 2000)];
        double[] size = [.. from(hz).Select(gain => gain.Magnitude)];
        double least = s_least * size[0];
        int weak = Array.FindIndex(size, 1, one => one < least);
        double limit = Math.Min(clearHz, weak > 0 ? hz[weak] : bandHz);
        double[] undone = [.. size.Where((_, i) => i > 0 && hz[i] <= limit)];
        double floor = Math.Max(undone.Length > 0 ? undone[^1] : size[0], least),
            lowest = Math.Max(undone.Append(size[0]).Min(), least);
        return new Exchange(limit < bandHz ? limit : null, 20 * Math.Log10(size[0] / lowest)) { _floor = limit < bandHz ? floor : least };
    }

    /// <summary>The gain that exchanges them: to/from, where above the limit from is taken no smaller than it is there.</summary>
    /// <param name="frequenciesHz">Frequencies, Hz.</param>
    /// <param name="from">Gain of what is undone, there.</param>
    /// <param name="to">Gain of what is put in its place, there.</param>
    public Complex[] Gains(double[] frequenciesHz, IReadOnlyList<Complex> from, IReadOnlyList<Complex> to) =>
        [.. frequenciesHz.Select((hz, i) => to[i] / (hz > LimitHz || LimitHz is null ? Held(from[i]) : from[i]))];

    private Complex Held(Complex gain) => gain.Magnitude < _floor ? Complex.FromPolarCoordinates(_floor, gain.Phase) : gain;
}
