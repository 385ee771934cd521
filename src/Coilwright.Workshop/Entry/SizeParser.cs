using System.Buffers;

namespace Coilwright.Workshop.Entry;

/// <summary>
/// Reads a length of a part that may carry its 95 % half-width: "6.2 mm ± 0.05 mm", "6.2 ± 0.05 mm", "2.45 in ± 1 %", "6.2 mm +/- 0.05".
/// </summary>
/// <remarks>A half-width without a unit is in the unit of the length, and a length without one in that of its half-width.</remarks>
public static class SizeParser
{
    /// <summary>A place may be known no worse than this, m: our limit.</summary>
    private const double MostOfPlaceM = 5e-3;

    private const string Example = "for example \"6.2 mm ± 0.05 mm\" or \"6.2 mm ± 1 %\"";

    private static readonly SearchValues<char> s_digits = SearchValues.Create("0123456789.,");
    private static readonly Limits s_part = new(QuantityKind.Fraction, 0, 1e6, "%", "1 %");

    /// <summary>True when a text says how well its length is known.</summary>
    public static bool HasInterval(string typed) => Parts(typed).Length > 1;

    /// <summary>Reads a length with or without its half-width; a half-width beyond what is possible is refused here.</summary>
    /// <param name="typed">What the person typed.</param>
    /// <param name="limits">Kind and range of the field.</param>
    /// <param name="unitRequired">True to refuse a bare number.</param>
    /// <param name="customaryUnit">Unit of a bare number; null takes the kind's SI unit.</param>
    public static ParsedQuantity Read(string typed, Limits limits, bool unitRequired, string? customaryUnit = null)
    {
        string[] parts = Parts(typed);
        if (parts.Length == 1)
        {
            return QuantityParser.Read(typed, limits, unitRequired, customaryUnit);
        }

        if (parts.Length > 2)
        {
            return Refused($"there is more than one ± here; one length and one half-width are needed, {Example}");
        }

        string value = EndsInDigit(parts[0]) && !EndsInDigit(parts[1]) && !IsPart(parts[1]) ? $"{parts[0]} {UnitOf(parts[1])}" : parts[0];
        ParsedQuantity length = QuantityParser.Read(value, limits, unitRequired, customaryUnit);
        return length.Entered.IsKnown ? With(length, parts[1], typed, limits) : length;
    }

    /// <summary>How it was understood: "6.2 mm ± 0.05 mm"; inches and thou in millimetres besides.</summary>
    public static string Echo(Entered entered)
    {
        string value = QuantityParser.Echo(entered, QuantityKind.Length);
        if (entered.HalfWidth is not { } half)
        {
            return value;
        }

        string within = QuantityParser.Echo(entered with { Si = half }, QuantityKind.Length);
        return entered.UnitTyped is "in" or "thou"
            ? $"{value} ± {within} ({Millimetres(entered.Si, 4)} ± {Millimetres(half, 3)})"
            : $"{value} ± {within}";
    }

    private static string Millimetres(double lengthM, int digits) => QuantityParser.FormatIn(lengthM, QuantityKind.Length, "mm", digits);

    private static ParsedQuantity With(ParsedQuantity length, string within, string typed, Limits limits)
    {
        double value = length.Entered.Si;
        string range = RangeOf(length.Entered, limits);
        if (within.Length == 0)
        {
            return Refused($"there is no number behind the ±; {Example}", range);
        }

        if (within[0] is '-' or '\u2212')
        {
            return Refused("what stands behind the ± is below zero; it says how far the length may lie off either way", range);
        }

        string text = EndsInDigit(within) ? $"{within} {length.Entered.UnitTyped}" : within;
        Limits limitsOfHalf = IsPart(within) ? s_part : limits with { Min = 0, Max = Math.Abs(limits.Max) };
        ParsedQuantity half = QuantityParser.Read(text, limitsOfHalf, unitRequired: true);
        if (!half.Entered.IsKnown)
        {
            return Refused($"behind the ±: {half.Why}, or a part of the length in %", range) with
            {
                Readings = [.. half.Readings.Select(reading => $"{length.Plain} ± {reading}")],
            };
        }

        double halfM = IsPart(within) ? half.Entered.Si * Math.Abs(value) : half.Entered.Si;
        return halfM < Most(value, limits) || halfM <= 0
            ? length with
            {
                Entered = length.Entered with { Typed = typed, HalfWidth = halfM },
                Plain = $"{length.Plain} ± {half.Plain}",
            }
            : Refused(TooWide(limits), range);
    }

    private static string TooWide(Limits limits) =>
        IsSize(limits) ? "the ± is as wide as the length itself, or wider" : "the ± is wider than the place of a part can be off";

    /// <summary>A length of something is above zero; a place may lie on either side.</summary>
    private static bool IsSize(Limits limits) => limits.Min >= 0;

    private static double Most(double value, Limits limits) => IsSize(limits) ? value : MostOfPlaceM;

    private static string RangeOf(Entered length, Limits limits)
    {
        string most = QuantityParser.Echo(length with { Si = Most(length.Si, limits) }, QuantityKind.Length);
        return IsSize(limits) ? $"± 0 to less than {most}, or to less than 100 %" : $"± 0 to less than {most}";
    }

    private static ParsedQuantity Refused(string why, string? allowed = null) => new(Entered.Unknown, why) { Allowed = allowed };

    private static string[] Parts(string typed) =>
        [
            .. typed
                .Replace("+/-", "±", StringComparison.Ordinal)
                .Replace("+-", "±", StringComparison.Ordinal)
                .Split('±')
                .Select(part => part.Trim()),
        ];

    private static bool IsPart(string text) => text.EndsWith('%') || text.EndsWith('‰');

    private static bool EndsInDigit(string text) => text.Length > 0 && (char.IsAsciiDigit(text[^1]) || text[^1] is '.' or ',');

    private static string UnitOf(string text) => text[(text.AsSpan().LastIndexOfAny(s_digits) + 1)..].Trim();
}
