using System.Globalization;
using Coilwright.Application.Curves;
using Coilwright.Bench;
using Coilwright.Papers.Formatting;
using Coilwright.Physics.Sound;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Listening;

/// <summary>A recording as another pickup would have given it.</summary>
/// <param name="Recorded">The channel that was taken of the recording, of full scale.</param>
/// <param name="Heard">What the other pickup would have given, of full scale; it may go beyond.</param>
/// <param name="RateHz">Samples per second of both.</param>
/// <param name="Exchanged">How far the first pickup was undone.</param>
/// <param name="Notes">What to know of the recording and the result, in sentences.</param>
public sealed record RevoicedSound(
    IReadOnlyList<double> Recorded,
    IReadOnlyList<double> Heard,
    int RateHz,
    Exchange Exchanged,
    IReadOnlyList<string> Notes
)
{
    private const double Loudest = 0.98;

    /// <summary>Change of the whole level so that a file holds it, dB; zero where none is needed.</summary>
    public double LevelDb { get; } = 20 * Math.Log10(Math.Min(1, Loudest / Math.Max(Heard.Max(Math.Abs), 1e-12)));

    /// <summary>How far the first pickup could be undone, in a sentence without its full stop.</summary>
    public string Undone
    {
        get
        {
            string most = string.Create(CultureInfo.InvariantCulture, $"by at most {Exchanged.MostUndoneDb:0.0} dB");
            return Exchanged.LimitHz is { } limit
                ? $"the first pickup is undone up to {FigureFormatter.Value(limit, "Hz", 4)}, {most}; above that the recording's noise "
                    + "would be raised, and less is undone"
                : $"the first pickup is undone over the whole band, {most}";
        }
    }

    /// <summary>What the other pickup would have given as a file, one channel of 24 bits.</summary>
    public byte[] Wave()
    {
        double scale = Math.Pow(10, LevelDb / 20);
        return WaveFile.Write(RateHz, [.. Heard.Select(one => one * scale)]);
    }
}

/// <summary>A person wants a dry recording that was made with one pickup as another would have given it.</summary>
public sealed class Revoice
{
    private const double BandPart = 0.45,
        HighestHz = 20_000;

    /// <summary>The sound, or everything that is wrong.</summary>
    /// <param name="from">The pickup of the recording, on its load.</param>
    /// <param name="to">The pickup wanted, on its load.</param>
    /// <param name="recording">The recording.</param>
    public ReadOutcome<RevoicedSound> Exchange(ResponseSource from, ResponseSource to, WaveFile recording)
    {
        DryRecording dry = DryRecording.Of(recording);
        Problem[] problems = [.. dry.Problems, .. Silent("from", from), .. Silent("to", to)];
        return problems.Length > 0
            ? new ReadOutcome<RevoicedSound>(null, problems)
            : new ReadOutcome<RevoicedSound>(Made(from, to, dry, recording.RateHz), []);
    }

    private static Problem[] Silent(string field, ResponseSource source) =>
        source.Gains([1000]) is null ? [RespondToLoad.Silent(source).Why! with { Field = field }] : [];

    private static RevoicedSound Made(ResponseSource from, ResponseSource to, DryRecording dry, int rateHz)
    {
        double band = Math.Min(HighestHz, BandPart * rateHz);
        Exchange exchange = Physics.Sound.Exchange.Within(hz => from.Gains(hz)!, dry.ClearHz, band);
        double[] heard = FrequencyFilter.Of(rateHz, hz => exchange.Gains(hz, from.Gains(hz)!, to.Gains(hz)!)).Apply(dry.Samples);
        return new RevoicedSound(
            dry.Samples,
            heard,
            rateHz,
            exchange,
            [.. dry.Notes, "place, aperture and magnets of the first pickup stay in the sound: only the electrical responses are exchanged"]
        );
    }
}
