namespace Coilwright.Physics.Sizes;

/// <summary>One length of a pickup that is known within an interval.</summary>
/// <param name="Kind">Which length.</param>
/// <param name="Part">Place of the coil, of the bar or of the sheet in the model; 0 for the strings.</param>
/// <param name="Row">Row of poles in that coil; 0 elsewhere.</param>
/// <param name="Name">In workshop words, without the coil's name: "core width of the bobbin".</param>
/// <param name="Estimate">Its value with the 95 % interval, m.</param>
public sealed record PartSize(SizeKind Kind, int Part, int Row, string Name, Estimate Estimate)
{
    /// <summary>Where the interval comes from, in workshop words.</summary>
    public string Source { get; init; } = "";

    /// <summary>
    /// Part of the half-width that differs from piece to piece, 0…1: 0 is common to a run, 1 is each piece's own. The two parts add in
    /// quadrature.
    /// </summary>
    public double PieceShare { get; init; } = 1;

    /// <summary>Half the width of the interval, m.</summary>
    public double HalfWidthM => (Estimate.High - Estimate.Low) / 2;

    /// <summary>True for a length that belongs to one coil.</summary>
    public bool IsOfCoil => Kind <= SizeKind.PoleTop;

    /// <summary>True for a length of the former and the window above it, which no core feels.</summary>
    public bool IsOfBobbin => Kind <= SizeKind.Flange;

    /// <summary>True for two coils' lengths that one tool or one drawing made: alike in kind, value and interval.</summary>
    /// <param name="other">Another length.</param>
    public bool IsAlike(PartSize other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return IsOfCoil
            && (Kind, Row, Name, Source) == (other.Kind, other.Row, other.Name, other.Source)
            && Estimate == other.Estimate
            && Math.Abs(PieceShare - other.PieceShare) < 1e-12;
    }
}
