using Coilwright.Bench;
using Coilwright.Formats.Listening;

namespace Coilwright.Application.Listening;

/// <summary>A design as it sounds.</summary>
/// <param name="Name">Recipe and revision.</param>
/// <param name="LoadName">What hangs on it.</param>
/// <param name="Strings">What was played and heard of each string, in the order of the plucks.</param>
/// <param name="Volts">Voltage behind the load; without a level where <paramref name="IsLevelKnown"/> is false.</param>
/// <param name="IsLevelKnown">False where nothing is known of magnets and strings.</param>
public sealed record HeardDesign(
    string Name,
    string LoadName,
    IReadOnlyList<ListeningAnswer> Strings,
    IReadOnlyList<double> Volts,
    bool IsLevelKnown
)
{
    /// <summary>Its place on the page, from 0; a place before it may be empty.</summary>
    public int Place { get; init; }

    /// <summary>Largest voltage, V.</summary>
    public double PeakV { get; init; }

    /// <summary>Root mean square of the first second, V.</summary>
    public double RmsV { get; init; }
}

/// <summary>Designs that are heard one against the other: files of one rate and one length.</summary>
/// <param name="Asked">The question.</param>
/// <param name="Designs">What sounds, in the order of the page.</param>
public sealed record HeardDesigns(ListenQuestion Asked, IReadOnlyList<HeardDesign> Designs)
{
    /// <summary>Samples per second of each file.</summary>
    public static int RateHz => StringSynthesis.RateHz;

    /// <summary>
    /// What a design is multiplied by, full scale per volt. Matched: all have one r.m.s. of the first second; otherwise one factor for
    /// all. The loudest moment of them all stands at 0.7 of full scale.
    /// </summary>
    /// <param name="place">Which, from 0.</param>
    public double ScaleOf(int place)
    {
        double[] equal = [.. Designs.Select(design => Asked.Matched ? 1 / design.RmsV : 1)];
        double loudest = Designs.Select((design, i) => design.PeakV * equal[i]).Max();
        return equal[place] * HearPluck.Level / loudest;
    }

    /// <summary>By how much a design is louder than the first one before levels are matched, dB of r.m.s.; null where not known.</summary>
    /// <param name="place">Which, from 0.</param>
    public double? LouderDb(int place) =>
        Designs[0].IsLevelKnown && Designs[place].IsLevelKnown ? 20 * Math.Log10(Designs[place].RmsV / Designs[0].RmsV) : null;

    /// <summary>True where all play the same notes, to a thousandth; otherwise what is heard is not the pickup alone.</summary>
    public bool SameNotes =>
        Designs.All(design =>
            design.Strings.Count == Designs[0].Strings.Count
            && design.Strings.Zip(Designs[0].Strings).All(pair => Math.Abs(PitchHz(pair.First) / PitchHz(pair.Second) - 1) < 1e-3)
        );

    /// <summary>The sound file of a design, one channel of 24 bits.</summary>
    /// <param name="place">Which, from 0.</param>
    public byte[] Wave(int place)
    {
        double scale = ScaleOf(place);
        return WaveFile.Write(RateHz, [.. Designs[place].Volts.Select(volt => volt * scale)]);
    }

    private static double PitchHz(ListeningAnswer answer) => answer.Played.First(one => one.Key == "pitch").Value.Value;
}
