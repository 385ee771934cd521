namespace Coilwright.Workshop.Polarity;

/// <summary>The side a winding direction is seen from.</summary>
public enum SeenFrom
{
    /// <summary>The strings' side.</summary>
    Top,
    Bottom,
}
