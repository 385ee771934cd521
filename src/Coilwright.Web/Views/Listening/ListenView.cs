using System.Globalization;
using Coilwright.Application.Listening;
using Coilwright.Formats.Listening;
using Coilwright.Papers.Formatting;

namespace Coilwright.Web.Views.Listening;

/// <summary>Designs that are heard one against the other, as their page tells them.</summary>
/// <param name="Heard">The sounds.</param>
/// <param name="Query">The question as a query.</param>
public sealed record ListenView(HeardDesigns Heard, string Query)
{
    private const int NotchesShown = 4;

    /// <summary>The sounds to turn to.</summary>
    public IReadOnlyList<ListenVoice> Voices { get; } =
    [
        .. Heard.Designs.Select(
            (design, at) =>
                new ListenVoice(
                    LetterOf(design.Place),
                    $"{design.Name}, {Lower(design.LoadName)}",
                    string.Create(CultureInfo.InvariantCulture, $"/listen/{at}.wav?{Query}"),
                    $"{LetterOf(design.Place)} {design.Name}.wav"
                )
        ),
    ];

    /// <summary>What is heard of each design, in a sentence.</summary>
    public IReadOnlyList<(string Letter, string Words)> Told { get; } =
    [.. Heard.Designs.Select(design => (LetterOf(design.Place), $"{Played(design)}. {Level(design)}{Deaf(design)}"))];

    /// <summary>What was done to the levels, and what one has more than the other.</summary>
    public string Levels { get; } = LevelsOf(Heard);

    /// <summary>That it is not the same note; empty where it is.</summary>
    public string OtherNote { get; } =
        Heard.SameNotes ? "" : "They do not play the same notes: their strings differ. What you hear is not the pickup alone.";

    /// <summary>What the sound takes for granted or leaves out, in sentences.</summary>
    public IReadOnlyList<string> Assumed { get; } =
    [
        .. Heard.Designs.SelectMany(design => design.Strings).SelectMany(answer => answer.Assumed).Distinct(),
        "no amplifier, no loudspeaker and no room stand in it but yours",
    ];

    /// <summary>A for the first.</summary>
    public static string LetterOf(int place) => ((char)('A' + place)).ToString();

    /// <summary>What was done to the levels, and what one has more than the other.</summary>
    public static string LevelsOf(HeardDesigns heard)
    {
        string[] louder =
        [
            .. Enumerable
                .Range(1, heard.Designs.Count - 1)
                .Where(at => heard.LouderDb(at) is not null)
                .Select(at => Louder(heard.Designs[at], heard.LouderDb(at)!.Value, heard.Designs[0])),
        ];
        string told = string.Join("; ", louder);
        if (!heard.Asked.Matched)
        {
            return told.Length > 0
                ? $"True levels: {told}. What is louder is easily taken for better: match the levels to hear the tone alone."
                : "True level.";
        }

        string before = told.Length > 0 ? $" Unmatched, {told}." : "";
        return "Levels are matched: all have the same r.m.s. voltage in the first second. To the ear a few tenths of a decibel may be left."
            + before;
    }

    private static string Louder(HeardDesign design, double db, HeardDesign first)
    {
        string size = string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(db):0.0} dB");
        return $"{LetterOf(design.Place)} is {size} {(db >= 0 ? "louder" : "softer")} than {LetterOf(first.Place)}";
    }

    private static string Played(HeardDesign design) =>
        design.Strings.Count > 1
            ? $"{design.Strings.Count} open strings, {Pitch(design.Strings[0])} to {Pitch(design.Strings[^1])}"
            : $"String {design.Strings[0].StringNumber} at {Pitch(design.Strings[0])}, plucked {Length(design.Strings[0], "pluck")} and "
                + $"heard {Length(design.Strings[0], "fromBridge")} from the bridge";

    private static string Level(HeardDesign design) =>
        design.IsLevelKnown
            ? $"{Value(design.PeakV, "V")} at most, {Value(design.RmsV, "V")} r.m.s. in the first second."
            : "Nothing is known of its magnets or strings: its level means nothing.";

    private static string Deaf(HeardDesign design) =>
        design.Strings.Count > 1
            ? ""
            : $" Deaf by its place at {Notches(design.Strings[0].Notches.ByPlaceHz)}, by its length along the string at "
                + $"{Notches(design.Strings[0].Notches.ByApertureHz)}.";

    private static string Notches(IReadOnlyList<double> hz)
    {
        string first = string.Join(", ", hz.Take(NotchesShown).Select(one => Value(one, "Hz")));
        string rest = hz.Count > NotchesShown ? " and on" : "";
        return hz.Count > 0 ? first + rest : "no frequency up to 20 kHz";
    }

    private static string Pitch(ListeningAnswer answer) => Value(answer.Played.First(one => one.Key == "pitch").Value.Value, "Hz");

    private static string Length(ListeningAnswer answer, string key) => Value(answer.Played.First(one => one.Key == key).Value.Value, "m");

    private static string Value(double value, string unit) => FigureFormatter.Value(value, unit, 3);

    private static string Lower(string name) => $"on load {name.ToLowerInvariant()}";
}
