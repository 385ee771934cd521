using System.Numerics;
using Coilwright.Analysis.Listening;
using Coilwright.Application.Curves;
using Coilwright.Application.Measuring;
using Coilwright.Formats.Listening;
using Coilwright.Physics.Sound;
using Coilwright.Physics.Strings;

namespace Coilwright.Application.Listening;

/// <summary>A string that was plucked, with what a pickup hears of it.</summary>
/// <param name="On">The string and its pluck.</param>
/// <param name="Aperture">What the pickup hears along it.</param>
/// <param name="Partials">Its partials up to the highest, rising.</param>
internal sealed record PlayedString(PluckedOn On, StringAperture Aperture, IReadOnlyList<HeardPartial> Partials);

/// <summary>Plucked strings over one pickup, as voltage behind its load.</summary>
/// <param name="source">The pickup on its load.</param>
/// <param name="apertures">What the pickup hears along each string, by ascending x; asked for where its model has strings.</param>
internal sealed class StringSynthesis(ResponseSource source, Func<IReadOnlyList<StringAperture>> apertures)
{
    private const double FadeS = 0.03,
        LeastDb = -200;

    /// <summary>Samples per second.</summary>
    public const int RateHz = MakeSignal.UsualRateHz;

    /// <summary>A synthesis that finds by itself what the pickup hears.</summary>
    public static StringSynthesis Of(ResponseSource source, CancellationToken cancel) =>
        new(source, () => ApertureForecast.Of(source.Model!, cancel));

    /// <summary>One string as the pickup hears it.</summary>
    public PlayedString Play(PluckedOn played)
    {
        StringAperture aperture = ApertureOf(played);
        IReadOnlyList<StringPartial> partials = played.Plucked.Partials(HearPluck.HighestHz);
        IReadOnlyList<Complex> gains = source.Gains([.. partials.Select(one => one.FrequencyHz)])!;
        double[] induced =
        [
            .. partials.Select(one => one.VelocityMPerS * aperture.Heard(played.Plucked.RadPerM(one.Number), played.FromBridgeM)),
        ];
        double[] levels = [.. induced.Zip(gains, (volt, gain) => Math.Abs(volt) * gain.Magnitude)];
        double strongest = Math.Max(levels.Max(), double.Epsilon);
        return new PlayedString(
            played,
            aperture,
            [.. partials.Select((one, i) => new HeardPartial(one, induced[i], Db(levels[i] / strongest)))]
        );
    }

    /// <summary>The voltage behind the load, V, faded out at its end.</summary>
    /// <param name="strings">Each string with when it is plucked, s.</param>
    /// <param name="durationS">Length, s, longer than the last of them.</param>
    public double[] Volts(IReadOnlyList<(PlayedString Played, double StartS)> strings, double durationS)
    {
        int count = (int)Math.Round(durationS * RateHz);
        double[] induced = new double[count];
        foreach ((PlayedString played, double start) in strings)
        {
            int first = (int)Math.Round(start * RateHz);
            double[] one = DampedSines.Samples(
                [.. played.Partials.Select(each => (each.InducedV, each.Partial.FrequencyHz, each.Partial.DecayPerS))],
                RateHz,
                Math.Max(0, count - first)
            );
            for (int i = 0; i < one.Length; i++)
            {
                induced[first + i] += one[i];
            }
        }

        double[] volts = FrequencyFilter.Of(RateHz, hz => source.Gains(hz)!).Apply(induced);
        for (int i = 0; i < Math.Min(count, (int)(FadeS * RateHz)); i++)
        {
            volts[count - 1 - i] *= i / (FadeS * RateHz);
        }

        return volts;
    }

    /// <summary>Root mean square of the first second, or of all of a shorter sound.</summary>
    public static double RmsOf(double[] volts)
    {
        int first = Math.Min(volts.Length, RateHz);
        return Math.Sqrt(volts.Take(first).Sum(volt => volt * volt) / first);
    }

    /// <summary>The recipe's own along the string; a point where nothing is known of magnets and coils.</summary>
    private StringAperture ApertureOf(PluckedOn played) =>
        source.Model is { Strings: not null } ? apertures()[played.Number - 1] : StringAperture.OfPoints((0, 1));

    private static double Db(double ratio) => Math.Max(LeastDb, 20 * Math.Log10(Math.Max(ratio, double.Epsilon)));
}
