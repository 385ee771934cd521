using System.Collections.Frozen;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Coilwright.Workshop.Entry;

/// <summary>Reads quantities the way people in a workshop type them, and writes them back so that they can see what was understood.</summary>
/// <remarks>
/// Understood are "7.43 k", "7k43", "7,43 kΩ", "7.43 kohm", "7430", "2u2", "2.5 thou", "1e3". A comma or a point is the decimal sign.
/// A single comma before exactly three digits ("1,234") is refused with both readings, because a wrong number is worse than a question;
/// it is decimal after a leading zero ("0,063 mm") and with k, M or G ("7,432 kΩ"), and groups thousands in turns and turns per minute ("8,000").
/// The letter F means Fahrenheit in a temperature and farad in a capacitance.
/// </remarks>
public static partial class QuantityText
{
    private const int LongestTyped = 60;

    private static readonly FrozenSet<string> s_open = new[] { "open", "ol", "o.l", "o.l.", "0l", "0.l", "inf", "infinite", "infinity", "∞", "overload", "over", "over range" }
        .ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    /// <summary>True when the text says that a meter found no connection: "open", "OL", "inf", "∞".</summary>
    public static bool IsOpen(string typed) => s_open.Contains(Tidy(typed));

    /// <summary>Reads a quantity. Nothing is checked against what is sensible: an impossible reading is still a reading.</summary>
    /// <param name="typed">What the person typed.</param>
    /// <param name="kind">What it measures.</param>
    /// <param name="unitRequired">True to refuse a bare number.</param>
    /// <param name="entered">The value in SI, with what was typed.</param>
    /// <param name="why">Why it was not understood, in workshop words; empty when it was.</param>
    /// <param name="customaryUnit">Unit of a bare number; null takes the kind's SI unit (% for a fraction, Ω for a resistance).</param>
    public static bool TryParse(string typed, QuantityKind kind, bool unitRequired, out Entered entered, out string why, string? customaryUnit = null)
    {
        entered = Entered.Unknown;
        string text = Tidy(typed);
        if (text.Length is 0 or > LongestTyped)
        {
            why = text.Length == 0 ? "nothing was entered" : "this is too long to be a quantity";
            return false;
        }

        if (TryInfix(text, kind, out double si, out Unit? unit) || TryPlain(text, kind, unitRequired, customaryUnit, out si, out unit, out why))
        {
            if (double.IsFinite(si))
            {
                entered = new Entered(si, typed, unit!.Symbol);
                why = "";
                return true;
            }

            why = $"\"{text}\" is too large a number";
        }

        return false;
    }

    /// <summary>How it was understood, for example "7.43 kΩ"; digits as typed are kept up to six.</summary>
    public static string Echo(Entered entered, QuantityKind kind)
    {
        Unit unit = UnitTable.Find(kind, entered.UnitTyped) ?? UnitTable.Of(kind)[0];
        double value = unit.FromSi(entered.Si);
        string digits = Shortest(value, IsCount(kind) ? CountDecimals(value) : DecimalsFor(value, 6));
        return digits + " " + unit.Symbol;
    }

    /// <summary>Units that this kind of quantity may be typed in, for messages.</summary>
    public static string UnitsOf(QuantityKind kind) => string.Join(", ", UnitTable.Of(kind).Select(unit => unit.Symbol));

    private static string Shortest(double value, int decimals) => Math.Round(value, decimals).ToString("0.###############", CultureInfo.InvariantCulture);

    private static string Tidy(string typed) =>
        Spaces().Replace(typed, " ").Replace('\u2212', '-').Replace('\u2019', '\'').Trim();

    /// <summary>"7k43", "4R7", "2u2F": the letter stands for the decimal sign.</summary>
    private static bool TryInfix(string text, QuantityKind kind, out double si, out Unit? unit)
    {
        si = 0;
        unit = null;
        Match match = Infix().Match(UnitTable.Normalise(text));
        if (!match.Success || (unit = UnitTable.Infix(kind, match.Groups[2].Value[0])) is null)
        {
            return false;
        }

        string rest = match.Groups[4].Value;
        si = Scaled($"{match.Groups[1].Value}.{match.Groups[3].Value}", "", unit);
        return rest.Length == 0 || UnitTable.Find(kind, rest) == UnitTable.Of(kind)[0];
    }

    private static bool TryPlain(string text, QuantityKind kind, bool unitRequired, string? customary, out double si, out Unit? unit, out string why)
    {
        si = 0;
        unit = null;
        Match match = Plain().Match(text);
        if (!match.Success)
        {
            why = $"\"{text}\" is not a number with a unit";
            return false;
        }

        string typedUnit = match.Groups[3].Value.Trim();
        unit = UnitFor(typedUnit, kind, unitRequired, customary, out why);
        if (unit is null)
        {
            return false;
        }

        bool whole = IsCount(kind);
        string? digits = TypedNumber.Plain(match.Groups[1].Value.Trim(), whole, typedUnit.Length > 0 && unit.Power >= 3, out why);
        si = digits is null ? 0 : Scaled(digits, match.Groups[2].Value, unit);
        return digits is not null;
    }

    private static Unit? UnitFor(string typed, QuantityKind kind, bool required, string? customary, out string why)
    {
        why = "";
        if (typed.Length == 0)
        {
            if (required && kind != QuantityKind.Turns)
            {
                why = $"a unit is needed: {UnitsOf(kind)}";
                return null;
            }

            return customary is null ? UnitTable.Of(kind)[0] : UnitTable.Find(kind, customary) ?? throw new ArgumentException($"'{customary}' is no unit of {kind}.", nameof(customary));
        }

        Unit? unit = UnitTable.Find(kind, typed.TrimEnd('.'));
        why = unit is null ? $"\"{typed}\" is not a unit of this quantity; use one of {UnitsOf(kind)}" : "";
        return unit;
    }

    /// <summary>Parses digits with the unit's power of ten folded in, so that the result is the nearest double.</summary>
    private static double Scaled(string digits, string exponent, Unit unit)
    {
        int power = exponent.Length == 0 ? 0 : int.Parse(exponent.AsSpan(1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        double number = double.Parse(string.Create(CultureInfo.InvariantCulture, $"{digits}e{power + unit.Power}"), NumberStyles.Float, CultureInfo.InvariantCulture);
        return number * unit.Scale + unit.Offset;
    }

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Spaces();

    [GeneratedRegex(@"^([+-]?[0-9]{1,9})([A-Za-z])([0-9]{1,9})(\D*)$", RegexOptions.CultureInvariant)]
    private static partial Regex Infix();

    [GeneratedRegex(@"^([+-]?(?:[0-9][0-9.,' ]*|[.,][0-9]+))([eE][+-]?[0-9]{1,3})?(?![0-9.,])(.*)$", RegexOptions.CultureInvariant)]
    private static partial Regex Plain();
}
