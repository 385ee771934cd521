namespace Coilwright.Physics.Winding;

/// <summary>Sense of winding, seen from the top (the strings' side).</summary>
public enum WindingDirection
{
    /// <summary>Against the hands of a clock.</summary>
    CounterClockwise,

    /// <summary>With the hands of a clock.</summary>
    Clockwise,
}

/// <summary>How the wire is laid.</summary>
public enum Lay
{
    /// <summary>Neat layers, pitch close to the wire's overall diameter.</summary>
    Even,

    /// <summary>Open pitch with the guide wandering, by hand or on purpose.</summary>
    Scattered,
}

/// <summary>How one coil is wound. SI units.</summary>
public sealed record WindingModel
{
    /// <summary>Turns, 1…100,000.</summary>
    public required double Turns { get; init; }

    /// <summary>Sense of winding; it gives the sign of all that the coil links.</summary>
    public WindingDirection Direction { get; init; } = WindingDirection.CounterClockwise;

    /// <summary>How the wire is laid; sets pitch and wander where they are not stated.</summary>
    public Lay Lay { get; init; } = Lay.Scattered;

    /// <summary>Traverse travel per turn, m; null lets the lay choose.</summary>
    public double? PitchM { get; init; }

    /// <summary>Seeded wander of the guide about its place, one standard deviation, m; null lets the lay choose.</summary>
    public double? JitterM { get; init; }

    /// <summary>Wire tension, N; null when not stated.</summary>
    public double? TensionN { get; init; }

    /// <summary>Spindle speed, turns per minute; null when not stated.</summary>
    public double? SpeedRpm { get; init; }

    /// <summary>Radial thickness of the winding if it was measured, m; overrides the forecast.</summary>
    public double? MeasuredBuildM { get; init; }

    /// <summary>Self-capacitance if it was measured, F; overrides the forecast.</summary>
    public double? MeasuredCapacitanceF { get; init; }

    /// <summary>Lengthening of the wire by winding tension, as a fraction: 0.01 is 1 %.</summary>
    public double Stretch { get; init; }
}
