namespace Coilwright.Physics;

/// <summary>Where a number comes from.</summary>
public enum Basis
{
    /// <summary>Read from an instrument.</summary>
    Measured,

    /// <summary>Learnt from the shop's own readings.</summary>
    Learnt,

    /// <summary>Computed from other numbers.</summary>
    Forecast,

    /// <summary>Taken from a table, a standard or common practice.</summary>
    Assumed,
}

/// <summary>A value in SI units with its 95 % interval and its basis.</summary>
/// <param name="Value">The best value, in the SI unit that the owning member's name states.</param>
/// <param name="Low">Lower end of the 95 % interval; equals <paramref name="Value"/> when exact.</param>
/// <param name="High">Upper end of the 95 % interval; equals <paramref name="Value"/> when exact.</param>
/// <param name="Basis">Where the value comes from.</param>
public readonly record struct Estimate(double Value, double Low, double High, Basis Basis)
{
    /// <summary>Number of standard deviations from the middle to an end of a 95 % normal interval.</summary>
    public const double Sigmas95 = 1.959963984540054;

    /// <summary>True when the interval has no width: a count or a figure the person typed as fact.</summary>
    public bool IsExact => High <= Low;

    /// <summary>Half the width of the interval over 1.96: the standard deviation of a normal variable with this interval.</summary>
    public double StandardDeviation => (High - Low) / (2 * Sigmas95);

    /// <summary>A value without uncertainty.</summary>
    /// <param name="value">The best value, in the SI unit that the owning member's name states.</param>
    /// <param name="basis">Where it comes from.</param>
    public static Estimate Exact(double value, Basis basis = Basis.Measured) => new(value, value, value, basis);

    /// <summary>A value with a 95 % interval of ± <paramref name="fraction"/> of itself.</summary>
    /// <param name="value">The best value, in the SI unit that the owning member's name states.</param>
    /// <param name="fraction">Half-width of the interval over the value, zero or more.</param>
    /// <param name="basis">Where it comes from.</param>
    public static Estimate Within(double value, double fraction, Basis basis) =>
        new(value, value - Math.Abs(value) * fraction, value + Math.Abs(value) * fraction, basis);

    /// <summary>A value with a symmetric interval from a standard deviation.</summary>
    /// <param name="value">The best value, in the SI unit that the owning member's name states.</param>
    /// <param name="standardDeviation">Its standard deviation, in the same unit, zero or more.</param>
    /// <param name="basis">Where it comes from.</param>
    public static Estimate FromDeviation(double value, double standardDeviation, Basis basis) =>
        new(value, value - Sigmas95 * standardDeviation, value + Sigmas95 * standardDeviation, basis);
}
