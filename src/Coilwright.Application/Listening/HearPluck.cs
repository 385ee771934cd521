using System.Numerics;
using Coilwright.Analysis.Listening;
using Coilwright.Application.Curves;
using Coilwright.Application.Measuring;
using Coilwright.Bench;
using Coilwright.Formats.Listening;
using Coilwright.Physics.Sound;
using Coilwright.Physics.Strings;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Listening;

/// <summary>A sound file with what is heard in it.</summary>
/// <param name="Answer">What was played and heard.</param>
/// <param name="Wave">The file, one channel of 24 bits.</param>
public sealed record HeardSound(ListeningAnswer Answer, byte[] Wave);

/// <summary>A person wants to hear a plucked string through a pickup on its load.</summary>
public sealed class HearPluck
{
    /// <summary>Highest partial, Hz.</summary>
    public const double HighestHz = 20_000;

    /// <summary>Length of the sound unless another is said, s.</summary>
    public const double UsualDurationS = 5;

    private const double FadeS = 0.03,
        Level = 0.7,
        LeastDb = -200;

    /// <summary>The sound, or every problem by its field: "string", "pitch", "pluck"; one of the load stands under "--load".</summary>
    /// <param name="source">A recipe's pickup, a measured one or a circuit, on its load.</param>
    /// <param name="asked">What to play.</param>
    /// <param name="cancel">Stops it.</param>
    public ReadOutcome<HeardSound> Hear(ResponseSource source, PluckQuestion asked, CancellationToken cancel)
    {
        ReadOutcome<PluckedOn> on = PluckedOn.Of(source.Model, asked);
        if (on.Value is not { } played)
        {
            return new ReadOutcome<HeardSound>(null, on.Problems);
        }

        if (source.Gains([1000]) is null)
        {
            return new ReadOutcome<HeardSound>(null, [RespondToLoad.Silent(source).Why!]);
        }

        StringAperture aperture = ApertureOf(source, played, cancel);
        IReadOnlyList<HeardPartial> partials = Heard(source, played, aperture);
        double duration = asked.DurationS ?? UsualDurationS;
        double[] volts = Sound(source, partials, duration);
        double peak = Math.Max(volts.Max(Math.Abs), 1e-12);
        ListeningAnswer answer = new(
            source.Name,
            played.Number,
            played.Played,
            partials,
            Notches.Of(played.Plucked, aperture, played.FromBridgeM, HighestHz)
        )
        {
            DurationS = duration,
            RateHz = MakeSignal.UsualRateHz,
            Assumed = ListeningNotes.Of(source, asked),
        };
        byte[] wave = WaveFile.Write(MakeSignal.UsualRateHz, [.. volts.Select(volt => volt * Level / peak)]);
        return new ReadOutcome<HeardSound>(new HeardSound(source.Model?.Strings is null ? answer : Levels(answer, volts, peak), wave), []);
    }

    private static ListeningAnswer Levels(ListeningAnswer answer, double[] volts, double peak)
    {
        int first = Math.Min(volts.Length, MakeSignal.UsualRateHz);
        return answer with
        {
            PeakV = peak,
            RmsV = Math.Sqrt(volts.Take(first).Sum(volt => volt * volt) / first),
            FullScaleV = peak / Level,
        };
    }

    /// <summary>The recipe's own along the string; a point where nothing is known of magnets and coils.</summary>
    private static StringAperture ApertureOf(ResponseSource source, PluckedOn played, CancellationToken cancel) =>
        source.Model is { Strings: not null } model
            ? ApertureForecast.Of(model, cancel)[played.Number - 1]
            : StringAperture.OfPoints((0, 1));

    private static HeardPartial[] Heard(ResponseSource source, PluckedOn played, StringAperture aperture)
    {
        IReadOnlyList<StringPartial> partials = played.Plucked.Partials(HighestHz);
        IReadOnlyList<Complex> gains = source.Gains([.. partials.Select(one => one.FrequencyHz)])!;
        double[] induced =
        [
            .. partials.Select(one => one.VelocityMPerS * aperture.Heard(played.Plucked.RadPerM(one.Number), played.FromBridgeM)),
        ];
        double[] levels = [.. induced.Zip(gains, (volt, gain) => Math.Abs(volt) * gain.Magnitude)];
        double strongest = Math.Max(levels.Max(), double.Epsilon);
        return [.. partials.Select((one, i) => new HeardPartial(one, induced[i], Db(levels[i] / strongest)))];
    }

    private static double Db(double ratio) => Math.Max(LeastDb, 20 * Math.Log10(Math.Max(ratio, double.Epsilon)));

    private static double[] Sound(ResponseSource source, IReadOnlyList<HeardPartial> partials, double durationS)
    {
        int rate = MakeSignal.UsualRateHz,
            count = (int)Math.Round(durationS * rate);
        double[] induced = DampedSines.Samples(
            [.. partials.Select(one => (one.InducedV, one.Partial.FrequencyHz, one.Partial.DecayPerS))],
            rate,
            count
        );
        double[] volts = FrequencyFilter.Of(rate, hz => source.Gains(hz)!).Apply(induced);
        for (int i = 0; i < Math.Min(count, (int)(FadeS * rate)); i++)
        {
            volts[count - 1 - i] *= i / (FadeS * rate);
        }

        return volts;
    }
}
