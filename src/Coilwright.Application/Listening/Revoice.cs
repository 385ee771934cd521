using Coilwright.Application.Curves;
using Coilwright.Bench;
using Coilwright.Physics.Sound;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Listening;

/// <summary>A recording as another pickup would have given it.</summary>
/// <param name="Wave">The file, one channel of 24 bits at the recording's rate.</param>
/// <param name="RateHz">Samples per second.</param>
/// <param name="Exchanged">How far the first pickup was undone.</param>
/// <param name="LevelDb">Change of the whole level so that the file holds it, dB; zero where none was needed.</param>
/// <param name="Notes">What to know of the recording and the result, in sentences.</param>
public sealed record RevoicedSound(byte[] Wave, int RateHz, Exchange Exchanged, double LevelDb, IReadOnlyList<string> Notes);

/// <summary>A person wants a dry recording that was made with one pickup as another would have given it.</summary>
public sealed class Revoice
{
    private const double Loudest = 0.98,
        BandPart = 0.45,
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
        double peak = heard.Max(Math.Abs),
            scale = peak > Loudest ? Loudest / peak : 1;
        return new RevoicedSound(
            WaveFile.Write(rateHz, [.. heard.Select(one => one * scale)]),
            rateHz,
            exchange,
            20 * Math.Log10(scale),
            [.. dry.Notes, "place, aperture and magnets of the first pickup stay in the sound: only the electrical responses are exchanged"]
        );
    }
}
