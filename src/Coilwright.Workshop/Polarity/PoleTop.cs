namespace Coilwright.Workshop.Polarity;

/// <summary>Which pole a coil shows the strings.</summary>
public enum PoleTop
{
    /// <summary>Not stated: nothing is said of phase or first swing.</summary>
    Unknown,
    North,
    South,
}
