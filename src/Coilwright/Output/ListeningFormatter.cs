using System.Globalization;
using Coilwright.Application.Listening;
using Coilwright.Formats.Listening;
using Coilwright.Papers.Formatting;
using Coilwright.Physics;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Output;

/// <summary>What is heard, for people.</summary>
internal static class ListeningFormatter
{
    private const int NotchesShown = 5;

    private static readonly (string Key, string Label)[] s_labels =
    [
        ("pitch", "pitch"),
        ("scaleLength", "scale length"),
        ("length", "sounding length"),
        ("fromBridge", "pickup from the bridge"),
        ("pluck", "pluck from the bridge"),
        ("pluckWidth", "width of the pluck"),
        ("lift", "lifted by"),
    ];

    /// <summary>A plucked string.</summary>
    public static string Write(ListeningAnswer answer, string path)
    {
        List<string> lines =
        [
            string.Create(CultureInfo.InvariantCulture, $"{answer.Name}, string {answer.StringNumber}"),
            .. s_labels.Select(label => Line(label.Label, answer.Played.First(one => one.Key == label.Key))),
            Notches("deaf by its place at", answer.Notches.ByPlaceHz),
            Notches("deaf by its length along the string at", answer.Notches.ByApertureHz),
        ];
        if (answer is { PeakV: { } peak, RmsV: { } rms, FullScaleV: { } full })
        {
            lines.Add(
                $"  level  {Value(peak, "V")} at most, {Value(rms, "V")} r.m.s. in the first second; full scale of the file is "
                    + Value(full, "V")
            );
        }

        lines.AddRange(answer.Assumed.Select(sentence => "  assumed: " + sentence));
        lines.Add(Written(path, answer.RateHz));
        return CautionFormatter.Below(string.Join(Environment.NewLine, lines), Cautions.For(Job.Listening));
    }

    /// <summary>A recording as another pickup would have given it.</summary>
    public static string Write(RevoicedSound sound, string path)
    {
        List<string> lines = [sound.Undone];
        if (sound.LevelDb < 0)
        {
            lines.Add(
                string.Create(CultureInfo.InvariantCulture, $"  the whole is {-sound.LevelDb:0.0} dB softer, so that nothing is cut off")
            );
        }

        lines.AddRange(sound.Notes.Select(note => "  note: " + note));
        lines.Add(Written(path, sound.RateHz));
        return CautionFormatter.Below(string.Join(Environment.NewLine, lines), Cautions.For(Job.Listening));
    }

    private static string Line(string label, PlayedQuantity one) =>
        $"  {label}  {Value(one.Value.Value, one.Unit)}{(one.Value.Basis == Basis.Assumed ? " (assumed)" : "")}";

    private static string Notches(string label, IReadOnlyList<double> hz)
    {
        string first = string.Join(", ", hz.Take(NotchesShown).Select(one => Value(one, "Hz")));
        string rest = hz.Count > NotchesShown ? " …" : "";
        return hz.Count > 0 ? $"  {label} {first}{rest}" : $"  {label} no frequency up to 20 kHz";
    }

    private static string Written(string path, int rateHz) =>
        string.Create(CultureInfo.InvariantCulture, $"{path}: one channel of 24 bits, {rateHz} samples a second");

    private static string Value(double value, string unit) => FigureFormatter.Value(value, unit, 4);
}
