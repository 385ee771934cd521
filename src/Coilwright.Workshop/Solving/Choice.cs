namespace Coilwright.Workshop.Solving;

/// <summary>What may be varied.</summary>
public enum Choice
{
    Turns,
    Gauge,
    Build,
    Magnet,
    Connection,
    WindingHeight,
    CoreWidth,
    CoreLength,
}

/// <summary>One thing to vary, with the ends or the list that a person gave; empty for the usual ones.</summary>
/// <param name="What">What.</param>
/// <param name="Low">Lower end, turns or m.</param>
/// <param name="High">Upper end.</param>
/// <param name="Listed">Names, for a gauge, build, magnet or connection.</param>
public sealed record Varied(Choice What, double? Low = null, double? High = null, IReadOnlyList<string>? Listed = null);
