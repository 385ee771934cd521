namespace Coilwright.Workshop.Quantities;

/// <summary>What must be told with a value before another can be held against it.</summary>
public enum StandsBeside
{
    /// <summary>Nothing.</summary>
    Nothing,

    /// <summary>The temperature of the copper.</summary>
    Temperature,

    /// <summary>The frequency it was read at.</summary>
    Frequency,

    /// <summary>The distance of the probe.</summary>
    Distance,
}
