using System.Globalization;

namespace Coilwright.Workshop.Entry;

/// <summary>
/// Reads plain numbers as people type them: counts of coils and pieces ("8,000", "8.000", "8 000", "8k"), and numbers without a unit
/// ("0,74").
/// </summary>
public static class CountParser
{
    /// <summary>A whole number of things. Turns, which may end in quarters, are read by <see cref="QuantityParser"/>.</summary>
    /// <param name="typed">What the person typed.</param>
    /// <param name="least">Smallest allowed.</param>
    /// <param name="most">Largest allowed.</param>
    /// <param name="count">The number; <paramref name="least"/> when it was not understood or lies outside.</param>
    /// <param name="why">Why not, in workshop words; empty when it was.</param>
    public static bool TryParse(string typed, int least, int most, out int count, out string why)
    {
        count = least;
        if (!QuantityParser.TryParse(typed, QuantityKind.Turns, unitRequired: false, out Entered entered, out why))
        {
            why = why.Length > 0 && why.StartsWith("the ", StringComparison.Ordinal) ? why : $"\"{typed.Trim()}\" is not a whole number";
            return false;
        }

        bool inside = entered.Si >= least && entered.Si <= most;
        why = inside ? "" : "this is outside what is allowed";
        if (Math.Abs(entered.Si - Math.Round(entered.Si)) > 1e-9)
        {
            why = $"\"{typed.Trim()}\" is not a whole number";
        }

        count = why.Length == 0 ? (int)Math.Round(entered.Si) : least;
        return why.Length == 0;
    }

    /// <summary>The range in words, "1 to 10,000".</summary>
    public static string Range(int least, int most) => string.Create(CultureInfo.InvariantCulture, $"{least:#,##0} to {most:#,##0}");

    /// <summary>A number without a unit, point or comma decimal.</summary>
    /// <param name="typed">What the person typed.</param>
    /// <param name="number">The number, finite; NaN when it was not understood.</param>
    public static bool TryNumber(string typed, out double number)
    {
        number = double.NaN;
        string text = typed.Trim().Replace('\u2212', '-');
        int at = text.AsSpan().IndexOfAny('e', 'E');
        (string digits, string exponent) = at < 0 ? (text, "") : (text[..at], text[at..]);
        bool read =
            digits.Length > 0
            && NumberParser.Read(digits, SeparatorMeaning.Decimal, out _) is { } plain
            && double.TryParse(plain.Plain + exponent, NumberStyles.Float, CultureInfo.InvariantCulture, out number)
            && double.IsFinite(number);
        number = read ? number : double.NaN;
        return read;
    }
}
