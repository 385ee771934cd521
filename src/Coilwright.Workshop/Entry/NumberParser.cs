using System.Globalization;
using System.Text.RegularExpressions;

namespace Coilwright.Workshop.Entry;

/// <summary>Reads the digits of a typed number: decimal point or comma, groups of three, powers of ten.</summary>
internal static partial class NumberParser
{
    /// <summary>Turns the typed digits into plain digits such as "1234.5" for an invariant parse.</summary>
    /// <param name="digits">Digits with points, commas, apostrophes and spaces, a sign allowed.</param>
    /// <param name="manner">How a single separator before exactly three digits is meant.</param>
    /// <param name="why">Why it was not understood; empty when it was.</param>
    public static ParsedDigits? Read(string digits, SeparatorMeaning manner, out string why)
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
            return new ParsedDigits(text.Replace(',', '.'));
        }

        int commas = text.Count(c => c == ',');
        int points = text.Count(c => c == '.');
        return (commas, points) switch
        {
            (0, 0) => new ParsedDigits(text),
            (> 0, > 0) => Sure(BothSigns(text, digits, out why)),
            (1, 0) or (0, 1) => OneSign(text, manner, isComma: commas == 1),
            _ => Sure(Grouped(text, commas > 0 ? ',' : '.', digits, out why)),
        };
    }

    private static ParsedDigits? Sure(string? plain) => plain is null ? null : new ParsedDigits(plain);

    private static ParsedDigits OneSign(string text, SeparatorMeaning manner, bool isComma)
    {
        string asDecimal = text.Replace(',', '.');
        if (!Thousands().IsMatch(text) || manner == SeparatorMeaning.Decimal)
        {
            return new ParsedDigits(asDecimal);
        }

        string asGroup = asDecimal.Replace(".", "", StringComparison.Ordinal);
        return manner == SeparatorMeaning.Count ? new ParsedDigits(asGroup) : new ParsedDigits(asDecimal, asGroup, IsOpen: isComma);
    }

    private static string? BothSigns(string text, string digits, out string why)
    {
        char decimalSign = text.LastIndexOf(',') > text.LastIndexOf('.') ? ',' : '.';
        char groupSign = decimalSign == ',' ? '.' : ',';
        int at = text.LastIndexOf(decimalSign);
        string? whole =
            text.IndexOf(decimalSign, StringComparison.Ordinal) == at
                ? Grouped(text[..at], groupSign, digits, out why)
                : Refuse(digits, out why);
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
