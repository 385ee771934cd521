using Coilwright.Physics;
using Coilwright.Physics.Strings;

namespace Coilwright.Formats.Listening;

/// <summary>A plucked string as a pickup gives it: what was played, what is heard of it, and what was assumed.</summary>
/// <param name="Name">The pickup.</param>
/// <param name="StringNumber">1 for the string at the lowest x.</param>
/// <param name="Played">The string and its pluck, by name of the field.</param>
/// <param name="Partials">Partials up to 20 kHz, rising.</param>
/// <param name="Notches">Where the pickup is deaf.</param>
public sealed record ListeningAnswer(
    string Name,
    int StringNumber,
    IReadOnlyList<PlayedQuantity> Played,
    IReadOnlyList<HeardPartial> Partials,
    Notches Notches
)
{
    /// <summary>Largest voltage behind the load, V; null where nothing is known of magnets and string.</summary>
    public double? PeakV { get; init; }

    /// <summary>Root mean square of the first second, V.</summary>
    public double? RmsV { get; init; }

    /// <summary>What full scale of the sound file stands for, V.</summary>
    public double? FullScaleV { get; init; }

    /// <summary>Length of the sound, s.</summary>
    public double DurationS { get; init; }

    /// <summary>Samples per second.</summary>
    public int RateHz { get; init; }

    /// <summary>What was assumed, in sentences.</summary>
    public IReadOnlyList<string> Assumed { get; init; } = [];
}

/// <summary>One thing of what was played.</summary>
/// <param name="Key">Its field in the file.</param>
/// <param name="Value">Its value and where it comes from.</param>
/// <param name="Unit">Its SI unit.</param>
public sealed record PlayedQuantity(string Key, Estimate Value, string Unit);

/// <summary>One partial as it is heard.</summary>
/// <param name="Partial">The string's own.</param>
/// <param name="InducedV">Voltage that it induces at its start, V, signed.</param>
/// <param name="LevelDb">Its level behind the load at its start against the strongest, dB; not below −200.</param>
public sealed record HeardPartial(StringPartial Partial, double InducedV, double LevelDb);
