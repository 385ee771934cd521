using System.Globalization;
using System.Text.RegularExpressions;
using Coilwright.Workshop.Readings;

namespace Coilwright.Bench;

/// <summary>Reads the line a meter sends, over a wire or as a keyboard.</summary>
/// <remarks>
/// Numbers are those of IEEE 488.2, section 8.7: NR1 ("+6301", whole), NR2 ("6301.20", with a point) and NR3 ("+6.30120E+03", with an
/// exponent); from memory of the standard,
/// not read. SCPI-1999 has 9.9E37 stand for infinity, −9.9E37 for minus infinity and 9.91E37 for "not a number" (from memory; +9.9E+37 for
/// overload is common practice).
/// A line may carry several values; the first is read, if it has a point or an exponent: "6,30" may be a person's decimal comma and is left
/// alone. White space before and behind is passed over, letters are not: a line that is no number is not one.
/// </remarks>
public static partial class MeterLine
{
    /// <summary>SCPI's "not a number".</summary>
    private const double NotANumber = 9.91e37;

    private const int LongestLine = 256;

    /// <summary>Reads a line; false when it is not a number.</summary>
    /// <param name="line">What was sent, with or without its line end.</param>
    /// <param name="reading">The reading.</param>
    public static bool TryRead(string line, out MeterReading reading)
    {
        string text = line.Trim();
        reading = new MeterReading(null, false, text);
        Match match = text.Length <= LongestLine ? Number().Match(text) : Match.Empty;
        if (
            !match.Success
            || !double.TryParse(match.Groups[1].Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
            || !double.IsFinite(value)
        )
        {
            return false;
        }

        bool nothing = IsNotANumber(value);
        bool over = !nothing && PossibleReading.IsOverRange(Math.Abs(value));
        reading = new MeterReading(nothing || over ? null : value, over, text);
        return true;
    }

    /// <summary>True for SCPI's "not a number", which an instrument sends when it has none to give.</summary>
    internal static bool IsNotANumber(double value) => Math.Abs(value - NotANumber) < 1e-6 * NotANumber;

    /// <summary>What coil entry understands of a line: plain ohms, "open", or the text unchanged when it is no meter's line.</summary>
    public static string AsTyped(string line)
    {
        if (!TryRead(line, out MeterReading reading))
        {
            return line;
        }

        if (reading.IsOverRange)
        {
            return PossibleReading.Open;
        }

        return reading.Value is { } value ? value.ToString("R", CultureInfo.InvariantCulture) : line;
    }

    [GeneratedRegex(
        @"^([+-]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]{1,3})?)(?:(?<=[.eE].*)\s*[,;].*)?$",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex Number();
}
