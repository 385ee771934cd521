namespace Coilwright.Analysis.Solving;

/// <summary>How a quantity is wanted.</summary>
public enum ObjectiveKind
{
    /// <summary>A value within a tolerance.</summary>
    Equal,

    /// <summary>The value or more.</summary>
    AtLeast,

    /// <summary>The value or less.</summary>
    AtMost,

    /// <summary>As much as possible.</summary>
    Most,

    /// <summary>As little as possible.</summary>
    Least,
}

/// <summary>One wish about a result.</summary>
/// <param name="Quantity">Name of the file formats, for example "dcResistance".</param>
/// <param name="Kind">How.</param>
/// <param name="Value">Wanted value, SI or dB; 0 for as much or as little as possible.</param>
/// <param name="Tolerance">Of an equality: a part of the value, or dB for a gain.</param>
/// <param name="IsLevel">True for a quantity in dB, whose distance is a difference instead of a ratio.</param>
public sealed record Objective(string Quantity, ObjectiveKind Kind, double Value, double Tolerance, bool IsLevel)
{
    /// <summary>True when a value can meet it or miss it.</summary>
    public bool IsLimit => Kind is ObjectiveKind.Equal or ObjectiveKind.AtLeast or ObjectiveKind.AtMost;

    /// <summary>Smallest value that meets it, SI or dB; −∞ where none is too small.</summary>
    public double Lowest =>
        Kind switch
        {
            ObjectiveKind.AtLeast => Value,
            ObjectiveKind.Equal => Value - (IsLevel ? Tolerance : Tolerance * Math.Abs(Value)),
            _ => double.NegativeInfinity,
        };

    /// <summary>Largest value that meets it, SI or dB; +∞ where none is too large.</summary>
    public double Highest =>
        Kind switch
        {
            ObjectiveKind.AtMost => Value,
            ObjectiveKind.Equal => Value + (IsLevel ? Tolerance : Tolerance * Math.Abs(Value)),
            _ => double.PositiveInfinity,
        };

    /// <summary>
    /// How far a value misses the want: 0 when it is met, else in parts of the wanted value (6 dB count as 1); 10 when the quantity does
    /// not exist.
    /// </summary>
    public double Miss(double value)
    {
        if (!IsLimit)
        {
            return 0;
        }

        if (!double.IsFinite(value))
        {
            return 10;
        }

        double off = Off(value);
        return Kind switch
        {
            ObjectiveKind.AtLeast => Math.Max(0, -off),
            ObjectiveKind.AtMost => Math.Max(0, off),
            _ => Math.Max(0, Math.Abs(off) - Allowed),
        };
    }

    /// <summary>Distance from the wanted value in tolerances, for an equality; 0 otherwise.</summary>
    public double Deviation(double value) =>
        Kind == ObjectiveKind.Equal && double.IsFinite(value) ? Off(value) / Math.Max(1e-9, Allowed) : 0;

    /// <summary>The same want, a little harder, so that what a quick evaluation finds still holds in a full one.</summary>
    public Objective WithMargin(double part) =>
        Kind switch
        {
            ObjectiveKind.AtLeast => this with { Value = Value + part * Size },
            ObjectiveKind.AtMost => this with { Value = Value - part * Size },
            ObjectiveKind.Equal => this with { Tolerance = Math.Max(Tolerance * 0.5, Tolerance - (IsLevel ? 6 * part : part)) },
            _ => this,
        };

    /// <summary>How far off still meets an equality, in the parts of <see cref="Off"/>.</summary>
    private double Allowed => IsLevel ? Tolerance / 6 : Tolerance;

    private double Size => IsLevel ? 6 : Math.Abs(Value);

    private double Off(double value) => IsLevel ? (value - Value) / 6 : (value - Value) / Math.Max(1e-300, Math.Abs(Value));
}
