namespace Coilwright.Physics.Materials;

/// <summary>A figure of a material with its interval and standing.</summary>
/// <param name="Estimate">Value with interval, SI.</param>
/// <param name="Standing">"read" in a named source, "memory", or "assumed".</param>
/// <param name="Source">Where it was read, or what the assumption rests on.</param>
public sealed record MaterialFigure(Estimate Estimate, string Standing, string Source);

/// <summary>
/// What a pole, magnet, sheet, string or bobbin is made of, as far as a pickup notices. A shop's own figure overrides any of it.
/// </summary>
public sealed record Material
{
    /// <summary>Key used in recipes: "alnico-5", "nickel-silver"…</summary>
    public required string Key { get; init; }

    /// <summary>
    /// Relative permeability for small changes: the recoil permeability of a magnet, the initial one of a steel. At least 1.
    /// </summary>
    public required MaterialFigure RelativePermeability { get; init; }

    /// <summary>Conductivity at 20 °C, S/m.</summary>
    public required MaterialFigure ConductivitySPerM { get; init; }

    /// <summary>
    /// Source term µ0·M0 of a magnet charged and standing alone in the usual shape, T; null for what is no magnet. Not the remanence.
    /// </summary>
    public MaterialFigure? WorkingPolarisationT { get; init; }

    /// <summary>Relative permittivity; null where it does not matter.</summary>
    public MaterialFigure? RelativePermittivity { get; init; }

    /// <summary>True for what can be charged.</summary>
    public bool IsMagnet => WorkingPolarisationT is not null;
}
