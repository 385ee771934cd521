using System.Numerics;
using Coilwright.Analysis.Curves;
using Coilwright.Bench;
using Coilwright.Formats.Curves;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Sound;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Curves;

/// <summary>A person has a recording of the measurement signal read.</summary>
public sealed class ReadSweep
{
    private const double LeastClearnessDb = 20;
    private const double Clipped = 0.9995;

    /// <summary>The impedance from a recording, or everything that is wrong with it.</summary>
    /// <param name="sweep">The signal that was played.</param>
    /// <param name="sound">The recording: before the resistor, and at the joint of resistor and pickup.</param>
    /// <param name="resistorOhm">The resistor.</param>
    /// <param name="inputOhm">Input resistance of the second channel, or null.</param>
    /// <param name="inputF">Capacitance of the second channel and its leads.</param>
    public ReadOutcome<CurveTable> Read(LogSweep sweep, WaveFile sound, double resistorOhm, double? inputOhm, double inputF)
    {
        List<Problem> problems = [];
        if (sound.Channels.Count != 2)
        {
            problems.Add(
                new Problem(
                    "",
                    "two channels are needed: before the resistor, and at the joint of resistor and pickup",
                    $"{sound.Channels.Count}",
                    "2"
                )
            );
        }
        else if (sound.Channels[0].Length < sweep.LengthS * sound.RateHz)
        {
            problems.Add(
                new Problem(
                    "",
                    "the recording is shorter than the signal",
                    FormattableString.Invariant($"{sound.Channels[0].Length / (double)sound.RateHz:0.0} s"),
                    FormattableString.Invariant($"at least {sweep.LengthS} s, better a second more")
                )
            );
        }

        if (sweep.ToHz >= 0.48 * sound.RateHz)
        {
            problems.Add(
                new Problem(
                    "to",
                    "the recording has too few samples a second for the last frequency",
                    $"{sound.RateHz}",
                    "more than 2.1 times the last frequency"
                )
            );
        }

        problems.AddRange(
            sound
                .Channels.Index()
                .Where(channel => channel.Item.Any(value => Math.Abs(value) >= Clipped))
                .Select(channel => new Problem("", $"channel {channel.Index + 1} is overdriven: it reaches full scale; record it softer"))
        );
        if (problems.Count == 0)
        {
            SweepRecording recording = SweepRecording.Deconvolve(sweep, sound.RateHz, sound.Channels);
            if (recording.ClearnessDb >= LeastClearnessDb)
            {
                double[] hz = PickupResponse.LogFrequencies(sweep.FromHz * 1.5, sweep.ToHz * 0.9, 240);
                Complex[] ohms = [.. hz.Select(one => recording.ImpedanceOhm(one, resistorOhm, inputOhm, inputF))];
                CurveTable table = new(
                    new MeasuredCurve(hz) { ImpedanceOhm = ohms },
                    "recording",
                    "none",
                    [
                        FormattableString.Invariant(
                            $"two channels at {sound.RateHz} samples a second, the signal {recording.ClearnessDb:0} dB clear of the rest"
                        ),
                    ]
                );
                return new ReadOutcome<CurveTable>(table, []);
            }

            problems.Add(
                new Problem(
                    "",
                    "the signal was not found in the first channel",
                    FormattableString.Invariant($"{recording.ClearnessDb:0} dB clear"),
                    "at least 20 dB; are first frequency, last frequency and length those of the signal played?"
                )
            );
        }

        return new ReadOutcome<CurveTable>(null, problems);
    }
}
