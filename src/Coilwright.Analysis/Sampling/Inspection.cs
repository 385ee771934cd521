namespace Coilwright.Analysis.Sampling;

/// <summary>How sharply a lot is looked at.</summary>
public enum Inspection
{
    /// <summary>To begin with, and as long as nothing speaks for another.</summary>
    Normal,

    /// <summary>After lots that failed.</summary>
    Tightened,

    /// <summary>After a long run of good lots.</summary>
    Reduced,
}
