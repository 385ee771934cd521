namespace Coilwright.Analysis.Planning;

/// <summary>Why a job is late.</summary>
public enum LateCause
{
    /// <summary>From its release on it never waits: its own steps and gaps take as long.</summary>
    OwnWork,

    /// <summary>A station is busy with another job's step, or being set up after it.</summary>
    Busy,

    /// <summary>A station is closed.</summary>
    Closed,

    /// <summary>A step waits so that the one after it comes within its longest gap.</summary>
    LongestGap,
}
