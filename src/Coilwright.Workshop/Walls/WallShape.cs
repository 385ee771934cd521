namespace Coilwright.Workshop.Walls;

/// <summary>What the values are taken to be when capability is told.</summary>
public enum WallShape
{
    Normal,

    /// <summary>The logarithms are normal.</summary>
    LogNormal,

    /// <summary>Nothing is assumed: the percentiles of the values themselves.</summary>
    AsTheyLie,
}
