namespace Coilwright.Workshop.Entry;

/// <summary>The digits of a typed number in plain form, and what else they can mean.</summary>
/// <param name="Plain">The usual reading, such as "6.210".</param>
/// <param name="Grouped">The reading with the separator as one of thousands, "6210"; null when there is only one reading.</param>
/// <param name="IsOpen">True when neither reading is the usual one, as with a single comma before three digits: the size of the thing
/// decides, or the person.</param>
internal sealed record ParsedDigits(string Plain, string? Grouped = null, bool IsOpen = false);

/// <summary>How a single point or comma before exactly three digits is meant.</summary>
internal enum SeparatorMeaning
{
    /// <summary>It groups thousands: turns, pieces, coils.</summary>
    Count,

    /// <summary>A point is decimal unless only thousands are possible; a comma can be either.</summary>
    Quantity,

    /// <summary>It is decimal, as before a unit with a power of ten: "7,432 kΩ".</summary>
    Decimal,
}
