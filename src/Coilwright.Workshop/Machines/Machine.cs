using Coilwright.Physics.Winding;

namespace Coilwright.Workshop.Machines;

/// <summary>How a winder lays the wire and knows when to stop.</summary>
public enum MachineKind
{
    /// <summary>The wire is guided by hand; a counter counts.</summary>
    HandGuided,

    /// <summary>A cam moves the guide to and fro.</summary>
    Cam,

    /// <summary>A screw moves the guide, driven through change gears.</summary>
    Gear,

    /// <summary>A stepper moves the guide, so many steps a turn.</summary>
    Stepper,

    /// <summary>No counter: the coil is wound for a time.</summary>
    Timed,
}

/// <summary>Which side of the bobbin looks away from the motor, towards the free end of the spindle.</summary>
public enum MountedSide
{
    Top,
    Bottom,
}

/// <summary>One winder of a shop, as data. SI units.</summary>
public sealed record Machine
{
    public required string Name { get; init; }
    public required MachineKind Kind { get; init; }

    /// <summary>Null for a machine without a counter, or one whose marked test was not made yet.</summary>
    public CounterTest? Counter { get; init; }

    /// <summary>What moves the guide; null when a hand does.</summary>
    public Traverse? Traverse { get; init; }

    /// <summary>Speeds it can run; null when not stated.</summary>
    public SpeedRange? Speed { get; init; }

    /// <summary>Coils wound at once, 1…50.</summary>
    public int Spindles { get; init; } = 1;

    /// <summary>Lowest and highest tension its brake can be set to, N; null when not stated.</summary>
    public (double LowN, double HighN)? TensionN { get; init; }

    /// <summary>The shop's own tension on this machine by gauge, N.</summary>
    public IReadOnlyDictionary<string, double> OwnTensionN { get; init; } = new Dictionary<string, double>();

    /// <summary>The shop's own tension for a gauge, N; null when it has none.</summary>
    public double? OwnTensionFor(string gauge) => OwnTensionN.TryGetValue(gauge, out double own) ? own : null;

    /// <summary>Side of the bobbin that the person at the free end of the spindle looks at.</summary>
    public MountedSide FacesYou { get; init; } = MountedSide.Top;

    /// <summary>How well a timed machine keeps to its turns; null for one with a counter.</summary>
    public TimedRun? Timed { get; init; }
}

/// <summary>Speeds of a spindle, turns per minute.</summary>
/// <param name="LowRpm">Slowest.</param>
/// <param name="HighRpm">Fastest.</param>
/// <param name="StepsRpm">The only speeds there are; empty when any between the ends can be set.</param>
public sealed record SpeedRange(double LowRpm, double HighRpm, IReadOnlyList<double> StepsRpm)
{
    /// <summary>The speed it can run that comes nearest to the one wanted without passing it; the slowest when all do.</summary>
    public double Nearest(double wantedRpm) =>
        StepsRpm.Count > 0
            ? StepsRpm.Where(step => step <= wantedRpm).DefaultIfEmpty(StepsRpm.Min()).Max()
            : Math.Clamp(wantedRpm, LowRpm, HighRpm);
}

/// <summary>How a machine without a counter runs.</summary>
/// <param name="SpeedSpread">95 % doubt of the speed over a coil, as a part of it: 0.08 is ±8 %.</param>
/// <param name="SpeedSpreadStated">False when the shop stated none and <see cref="ClockStop.UsualSpeedSpread"/> was taken.</param>
/// <param name="StopS">95 % doubt of starting and stopping, s.</param>
public sealed record TimedRun(double SpeedSpread, bool SpeedSpreadStated, double StopS)
{
    /// <summary>95 % doubt of the turns of one coil, as a part of them.</summary>
    /// <param name="seconds">How long it is wound, s.</param>
    public double TurnsSpread(double seconds) => ClockStop.TurnsSpread(SpeedSpread, StopS, seconds);
}
