namespace Coilwright.Physics.Wire;

/// <summary>One enamel chemistry.</summary>
public sealed record Insulation
{
    /// <summary>Key used in recipes: "plain-enamel", "polyurethane"…</summary>
    public required string Key { get; init; }

    /// <summary>Relative permittivity with its interval.</summary>
    public required Estimate Permittivity { get; init; }

    /// <summary>Density, kg/m³.</summary>
    public required double DensityKgPerM3 { get; init; }

    /// <summary>"read", "memory" or "assumed": where the permittivity comes from.</summary>
    public required string PermittivityStanding { get; init; }

    /// <summary>The same words for the density.</summary>
    public required string DensityStanding { get; init; }

    /// <summary>True when the enamel burns off under the iron; the fume of polyurethane is a hazard.</summary>
    public required bool Solderable { get; init; }

    /// <summary>What to know about the enamel, for example how it is stripped.</summary>
    public required string Note { get; init; }
}
