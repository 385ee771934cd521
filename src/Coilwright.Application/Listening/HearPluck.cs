using Coilwright.Application.Curves;
using Coilwright.Bench;
using Coilwright.Formats.Listening;
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

    /// <summary>Largest value of a file, of full scale.</summary>
    internal const double Level = 0.7;

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

        StringSynthesis synthesis = StringSynthesis.Of(source, cancel);
        PlayedString heard = synthesis.Play(played);
        double duration = asked.DurationS ?? UsualDurationS;
        double[] volts = synthesis.Volts([(heard, 0)], duration);
        double peak = Math.Max(volts.Max(Math.Abs), 1e-12);
        byte[] wave = WaveFile.Write(StringSynthesis.RateHz, [.. volts.Select(volt => volt * Level / peak)]);
        ListeningAnswer answer = AnswerOf(source, asked, heard, duration);
        return new ReadOutcome<HeardSound>(new HeardSound(source.Model?.Strings is null ? answer : Levels(answer, volts, peak), wave), []);
    }

    /// <summary>What is told of one string.</summary>
    internal static ListeningAnswer AnswerOf(ResponseSource source, PluckQuestion asked, PlayedString heard, double durationS) =>
        new(
            source.Name,
            heard.On.Number,
            heard.On.Played,
            heard.Partials,
            Notches.Of(heard.On.Plucked, heard.Aperture, heard.On.FromBridgeM, HighestHz)
        )
        {
            DurationS = durationS,
            RateHz = StringSynthesis.RateHz,
            Assumed = ListeningNotes.Of(source, asked),
        };

    private static ListeningAnswer Levels(ListeningAnswer answer, double[] volts, double peak) =>
        answer with
        {
            PeakV = peak,
            RmsV = StringSynthesis.RmsOf(volts),
            FullScaleV = peak / Level,
        };
}
