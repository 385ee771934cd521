using System.Runtime.CompilerServices;

namespace Coilwright.Physics;

/// <summary>
/// Range checks for numbers that enter the engine. A failure here is our bug: a person's entry is checked, in words, before it gets this
/// far.
/// </summary>
public static class Require
{
    /// <summary>Returns <paramref name="value"/> if it lies in [min, max]; NaN never does.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside the range.</exception>
    /// <param name="value">The number.</param>
    /// <param name="min">Smallest that is allowed.</param>
    /// <param name="max">Largest that is allowed.</param>
    /// <param name="name">What it is called in the message; the expression itself unless said.</param>
    public static double InRange(double value, double min, double max, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value >= min && value <= max
            ? value
            : throw new ArgumentOutOfRangeException(name, value, FormattableString.Invariant($"{name} must lie in [{min}, {max}]."));
}
