namespace Coilwright.Physics.Strings;

/// <summary>How a string's steel answers a field.</summary>
public enum StringLaw
{
    /// <summary>M = χH/(1 + χ|H|/Ms): initial susceptibility χ, saturation Ms (Fröhlich's law).</summary>
    Saturating,

    /// <summary>M = χH without end. Shown for comparison: it magnetises a string to several tesla.</summary>
    Linear,
}

/// <summary>One string as a pickup sees it: the magnetic core. SI units.</summary>
public sealed record StringModel
{
    /// <summary>Diameter of the magnetic core, m, 0.1…5 mm: the whole of a plain string.</summary>
    public required double CoreDiameterM { get; init; }

    /// <summary>Outer diameter, m: where the underside lies.</summary>
    public required double OuterDiameterM { get; init; }

    /// <summary>Initial relative permeability, above 1.</summary>
    public required Estimate RelativePermeability { get; init; }

    /// <summary>Saturation polarisation, T; 1.8 unless known (assumed, a carbon steel's).</summary>
    public double SaturationT { get; init; } = 1.8;

    /// <summary>How the steel answers a field.</summary>
    public StringLaw Law { get; init; } = StringLaw.Saturating;
}
