namespace Coilwright.Analysis.Planning;

/// <summary>A winder, a bench, a pot: does one step at a time.</summary>
/// <param name="Name">What the shop calls it.</param>
public sealed record Station(string Name)
{
    /// <summary>When it is open; null when always. A step, with the set-up before it, lies within one opening.</summary>
    public IReadOnlyList<OpenHours>? Hours { get; init; }
}
