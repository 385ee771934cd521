using Coilwright.Analysis.Originals;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Originals;

/// <summary>An original to be identified: what is known of it as a recipe, what was read on it, and what is not known.</summary>
/// <param name="Name">What the bench calls it.</param>
/// <param name="Known">The known parts; its wire and turns are placeholders where they are not known.</param>
/// <param name="Readings">What was read, resistances at 20 °C.</param>
/// <param name="Gauge">The wire's gauge where it is known, else null.</param>
/// <param name="Build">The film build where it is known, else null.</param>
/// <param name="PolesUnknown">True when a pole's material is not told.</param>
public sealed record Original(
    string Name,
    Recipe Known,
    IReadOnlyList<OriginalReading> Readings,
    string? Gauge,
    string? Build,
    bool PolesUnknown
);
