namespace Coilwright.Physics.Winding;

/// <summary>How the wire's speed pulses while a core that is not round turns.</summary>
/// <remarks>
/// With the guide far off the wire keeps its direction, and the core takes wire up at ω times the distance of the wire's line from the
/// axis:
/// the core's support function, h(φ) = a|cos φ| + b|sin φ| + r for half straights a and b and corner radius r. Its mean over a turn is the
/// perimeter ÷ 2π
/// (Cauchy). A guide nearer than a few core lengths softens the pulse. Derived; checked against a core unrolled numerically.
/// </remarks>
public static class WireSpeed
{
    /// <summary>Distance of the wire from the spindle's axis, m: wire speed is this times the angular speed.</summary>
    /// <param name="bobbin">The core.</param>
    /// <param name="distanceM">How far out the turn lies, m.</param>
    /// <param name="angleRad">Angle of the spindle; 0 where the core's length lies across the wire.</param>
    public static double LeverM(Bobbin bobbin, double distanceM, double angleRad)
    {
        ArgumentNullException.ThrowIfNull(bobbin);
        return bobbin.LongStraightM / 2 * Math.Abs(Math.Cos(angleRad))
            + bobbin.ShortStraightM / 2 * Math.Abs(Math.Sin(angleRad))
            + bobbin.EndRadiusM
            + distanceM;
    }

    /// <summary>Wire speed over its mean, by angle.</summary>
    /// <param name="bobbin">The core.</param>
    /// <param name="distanceM">How far out the turn lies, m.</param>
    /// <param name="angleRad">Angle of the spindle; 0 where the core's length lies across the wire.</param>
    public static double OverMean(Bobbin bobbin, double distanceM, double angleRad) =>
        LeverM(bobbin, distanceM, angleRad) / (bobbin.TurnLengthM(distanceM) / (2 * Math.PI));

    /// <summary>Fastest over slowest within a turn.</summary>
    /// <param name="bobbin">The core.</param>
    /// <param name="distanceM">How far out the turn lies, m.</param>
    public static double Ratio(Bobbin bobbin, double distanceM)
    {
        ArgumentNullException.ThrowIfNull(bobbin);
        double a = bobbin.LongStraightM / 2,
            b = bobbin.ShortStraightM / 2,
            r = bobbin.EndRadiusM + distanceM;
        return (Math.Sqrt(a * a + b * b) + r) / (Math.Min(a, b) + r);
    }
}
