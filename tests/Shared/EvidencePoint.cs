namespace Coilwright.Shared;

/// <summary>How a value is held.</summary>
internal enum EvidenceBound
{
    /// <summary>± in the value's unit.</summary>
    Absolute,

    /// <summary>± as a part of what is expected.</summary>
    Relative,

    /// <summary>The deviation as a part of what is expected lies between two bounds.</summary>
    RelativeBetween,

    /// <summary>The value lies between two bounds.</summary>
    Between,

    /// <summary>A found interval has the value in it.</summary>
    Interval,

    /// <summary>The same, exactly.</summary>
    Same,
}

/// <summary>One value held to one bound.</summary>
/// <param name="Kind">How it is held.</param>
/// <param name="Found">The value.</param>
/// <param name="Expected">What it is held against.</param>
/// <param name="Low">The bound, or the lower one of two.</param>
/// <param name="High">The bound, or the upper one of two.</param>
/// <param name="Unit">Its unit; empty for a plain number.</param>
internal sealed record EvidencePoint(EvidenceBound Kind, double Found, double Expected, double Low, double High, string Unit)
{
    /// <summary>The deviation, in the unit of the bound.</summary>
    public double Off => Kind is EvidenceBound.Relative or EvidenceBound.RelativeBetween ? Found / Expected - 1 : Found - Expected;

    /// <summary>How much of the bound is used; more than 1, or not a number, is a failure.</summary>
    public double Share =>
        Kind switch
        {
            EvidenceBound.Absolute or EvidenceBound.Relative => Part(Math.Abs(Off), High),
            EvidenceBound.RelativeBetween when Low <= 0 && High >= 0 => Part(Off, Off <= 0 ? Low : High),
            EvidenceBound.RelativeBetween => Part(Math.Abs(Off - (Low + High) / 2), (High - Low) / 2),
            EvidenceBound.Between or EvidenceBound.Interval => Part(Math.Abs(Found - (Low + High) / 2), (High - Low) / 2),
            _ => 0,
        };

    /// <summary>0 of 0 is met; anything of 0 is not.</summary>
    private static double Part(double off, double bound) =>
        off switch
        {
            0 => 0,
            _ when bound == 0 => double.PositiveInfinity,
            _ => off / bound,
        };
}
