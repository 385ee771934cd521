using System.Globalization;
using Coilwright.Papers.Spec;

namespace Coilwright.Papers.Shipping;

/// <summary>A reading beside its limits.</summary>
/// <param name="Reading">What was read.</param>
/// <param name="Low">Lowest that passes, SI, a DC resistance at 20 °C; null for none.</param>
/// <param name="High">Highest that passes; null for none.</param>
public sealed record CertifiedReading(PieceReading Reading, double? Low = null, double? High = null)
{
    /// <summary>True inside the limits, false outside or without a number; null when there is no limit.</summary>
    public bool? Inside =>
        Low is null && High is null ? null : Reading.IsNumber && !(Reading.Comparable < Low) && !(Reading.Comparable > High);

    /// <summary>The limits in words.</summary>
    internal string Limits =>
        (Low, High) switch
        {
            ({ } low, { } high) => $"{ReadingFormatter.Value(Reading, low)} – {ReadingFormatter.Value(Reading, high)}",
            ({ } low, null) => "from " + ReadingFormatter.Value(Reading, low),
            (null, { } high) => "up to " + ReadingFormatter.Value(Reading, high),
            _ => "none",
        };

    /// <summary>Inside, outside, or so near to a limit that the instrument cannot tell.</summary>
    internal string Words =>
        Inside switch
        {
            null => "no limit",
            _ when Reading.IsNumber && Reading.HalfPart is { } half && Near(Math.Abs(Reading.Comparable) * half) => string.Create(
                CultureInfo.InvariantCulture,
                $"{(Inside == true ? "inside" : "outside")}, by less than the uncertainty"
            ),
            true => "inside",
            false => "outside",
        };

    private bool Near(double half) =>
        (Low is { } low && Math.Abs(Reading.Comparable - low) < half) || (High is { } high && Math.Abs(Reading.Comparable - high) < half);
}
