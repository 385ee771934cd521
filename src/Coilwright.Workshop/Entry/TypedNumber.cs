using System.Globalization;
using System.Text.RegularExpressions;

namespace Coilwright.Workshop.Entry;

/// <summary>Reads the digits of a typed number: decimal point or comma, groups of three, powers of ten.</summary>
internal static partial class TypedNumber
{
    /// <summary>Turns the typed digits into a plain "1234.5" for an invariant parse.</summary>
    /// <param name="digits">Digits with points, commas, apostrophes and spaces, a sign allowed.</param>
    /// <param name="whole">True where only whole numbers are usual (turns, turns per minute): one separator before three digits then groups thousands.</param>
    /// <param name="commaIsDecimal">True where a single comma can only be a decimal one, as in "7,432 kΩ".</param>
    /// <param name="why">Why it was not understood.</param>
    public static string? Plain(string digits, bool whole, bool commaIsDecimal, out string why)
    {
        why = "";
        string text = digits;
        if (text.AsSpan().IndexOfAny(' ', '\'') >= 0)
        {
            if (!Spaced().IsMatch(text))
            {
                why = $"the spaces in \"{digits}\" do not group thousands";
                return null;
            }

            text = text.Replace(" ", "", StringComparison.Ordinal).Replace("'", "", StringComparison.Ordinal);
        }

        int commas = text.Count(c => c == ',');
        int points = text.Count(c => c == '.');
        return (commas, points) switch
        {
            (0, 0) => text,
            ( > 0, > 0) => BothSigns(text, digits, out why),
            (1, 0) or (0, 1) => OneSign(text, whole, commaIsDecimal || points == 1, out why),
            _ => Grouped(text, commas > 0 ? ',' : '.', digits, out why),
        };
    }

    private static string? OneSign(string text, bool whole, bool decimalSign, out string why)
    {
        why = "";
        bool looksGrouped = Thousands().IsMatch(text);
        if (looksGrouped && whole)
        {
            return text.Replace(",", "", StringComparison.Ordinal).Replace(".", "", StringComparison.Ordinal);
        }

        if (looksGrouped && !decimalSign)
        {
            why = $"\"{text}\" can mean {text.Replace(',', '.')} or {text.Replace(",", "", StringComparison.Ordinal)}; write it one of these ways";
            return null;
        }

        return text.Replace(',', '.');
    }

    private static string? BothSigns(string text, string digits, out string why)
    {
        char decimalSign = text.LastIndexOf(',') > text.LastIndexOf('.') ? ',' : '.';
        char groupSign = decimalSign == ',' ? '.' : ',';
        int at = text.LastIndexOf(decimalSign);
        string? whole = text.IndexOf(decimalSign, StringComparison.Ordinal) == at ? Grouped(text[..at], groupSign, digits, out why) : Refuse(digits, out why);
        return whole is null ? null : whole + "." + text[(at + 1)..];
    }

    private static string? Grouped(string text, char sign, string digits, out string why)
    {
        string[] groups = text.TrimStart('+', '-').Split(sign);
        if (groups[0].Length is < 1 or > 3 || groups[0][0] == '0' || groups.Skip(1).Any(group => group.Length != 3))
        {
            return Refuse(digits, out why);
        }

        why = "";
        return text.Replace(sign.ToString(CultureInfo.InvariantCulture), "", StringComparison.Ordinal);
    }

    private static string? Refuse(string digits, out string why)
    {
        why = $"the points and commas in \"{digits}\" do not make one number";
        return null;
    }

    [GeneratedRegex(@"^[+-]?[1-9]\d{0,2}[.,]\d{3}$", RegexOptions.CultureInvariant)]
    private static partial Regex Thousands();

    [GeneratedRegex(@"^[+-]?[1-9]\d{0,2}(?:[ ']\d{3})+(?:[.,]\d+)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Spaced();
}
