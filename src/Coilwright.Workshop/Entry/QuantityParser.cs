using System.Collections.Frozen;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Coilwright.Workshop.Entry;

/// <summary>
/// Reads quantities the way people in a workshop type them, and writes them back so that they can see what was understood.
/// </summary>
/// <remarks>
/// Understood are "7.43 k", "7k43", "7,43 kΩ", "7.43 kohm", "7430", "2u2", "2.5 thou", "1e3". A comma or a point is the decimal sign.
/// A single comma before exactly three digits ("1,234") can mean two things: where the limits allow one of them alone it is that one,
/// else it is refused with both readings, because a wrong number is worse than a question. A point there is decimal unless the limits allow
/// thousands alone. Both are decimal after a leading zero ("0,063 mm") and with k, M or G ("7,432 kΩ"), and group thousands in turns and
/// turns per minute ("8,000", "8.000").
/// The letter F means Fahrenheit in a temperature and farad in a capacitance.
/// </remarks>
public static partial class QuantityParser
{
    private const int LongestTyped = 60;

    private static readonly FrozenSet<string> s_open = new[]
    {
        "open",
        "ol",
        "o.l",
        "o.l.",
        "0l",
        "0.l",
        "inf",
        "infinite",
        "infinity",
        "∞",
        "overload",
        "over",
        "over range",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    /// <summary>True when the text says that a meter found no connection: "open", "OL", "inf", "∞".</summary>
    public static bool IsOpen(string typed) => s_open.Contains(Tidy(typed));

    /// <summary>Reads a quantity. Nothing is checked against what is sensible: an impossible reading is still a reading.</summary>
    /// <param name="typed">What the person typed.</param>
    /// <param name="kind">What it measures.</param>
    /// <param name="unitRequired">True to refuse a bare number.</param>
    /// <param name="entered">The value in SI, with what was typed.</param>
    /// <param name="why">Why it was not understood, in workshop words; empty when it was.</param>
    /// <param name="customaryUnit">Unit of a bare number; null takes the kind's SI unit (% for a fraction, Ω for a resistance).</param>
    public static bool TryParse(
        string typed,
        QuantityKind kind,
        bool unitRequired,
        out Entered entered,
        out string why,
        string? customaryUnit = null
    ) => Out(Read(typed, kind, null, unitRequired, customaryUnit), out entered, out why);

    /// <summary>
    /// As <see cref="TryParse(string, QuantityKind, bool, out Entered, out string, string?)"/>, with the limits deciding between two
    /// readings where they can. The value may still lie outside.
    /// </summary>
    /// <param name="typed">What the person typed.</param>
    /// <param name="limits">Kind and range of the field.</param>
    /// <param name="unitRequired">True to refuse a bare number.</param>
    /// <param name="entered">The value in SI, with what was typed.</param>
    /// <param name="why">Why it was not understood, in workshop words; empty when it was.</param>
    /// <param name="customaryUnit">Unit of a bare number; null takes the kind's SI unit.</param>
    public static bool TryParse(
        string typed,
        Limits limits,
        bool unitRequired,
        out Entered entered,
        out string why,
        string? customaryUnit = null
    ) => Out(Read(typed, limits, unitRequired, customaryUnit), out entered, out why);

    /// <summary>Reads a quantity, and says every reading when there is more than one.</summary>
    /// <param name="typed">What the person typed.</param>
    /// <param name="limits">Kind and range of the field; the range decides between two readings where it can.</param>
    /// <param name="unitRequired">True to refuse a bare number.</param>
    /// <param name="customaryUnit">Unit of a bare number; null takes the kind's SI unit.</param>
    public static ParsedQuantity Read(string typed, Limits limits, bool unitRequired, string? customaryUnit = null) =>
        Read(typed, limits.Kind, limits, unitRequired, customaryUnit);

    /// <summary>How it was understood, for example "7.43 kΩ"; digits as typed are kept up to six.</summary>
    public static string Echo(Entered entered, QuantityKind kind)
    {
        Unit unit = (kind == QuantityKind.Turns ? null : UnitTable.Find(kind, entered.UnitTyped)) ?? UnitTable.Of(kind)[0];
        double value = unit.FromSi(entered.Si);
        if (Math.Abs(value) >= 1e12)
        {
            return value.ToString("0.###E+0", CultureInfo.InvariantCulture) + " " + unit.Symbol;
        }

        string digits = IsCount(kind)
            ? Math.Round(value, CountDecimals(value)).ToString("#,##0.##", CultureInfo.InvariantCulture)
            : Shortest(value, DecimalsFor(value, 6));
        return digits + " " + unit.Symbol;
    }

    /// <summary>Units that this kind of quantity may be typed in, for messages.</summary>
    public static string UnitsOf(QuantityKind kind) => string.Join(", ", UnitTable.Of(kind).Select(unit => unit.Symbol));

    private static string Shortest(double value, int decimals) =>
        Math.Round(value, decimals).ToString("0.###############", CultureInfo.InvariantCulture);

    private static string Tidy(string typed) => Spaces().Replace(typed, " ").Replace('\u2212', '-').Replace('\u2019', '\'').Trim();

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

    private static bool Out(ParsedQuantity read, out Entered entered, out string why)
    {
        (entered, why) = (read.Entered, read.Why);
        return entered.IsKnown;
    }

    private static ParsedQuantity Read(string typed, QuantityKind kind, Limits? limits, bool unitRequired, string? customary)
    {
        string text = Tidy(typed);
        if (text.Length is 0 or > LongestTyped)
        {
            return new ParsedQuantity(Entered.Unknown, text.Length == 0 ? "nothing was entered" : "this is too long to be a quantity");
        }

        if (TryInfix(text, kind, out double si, out Unit? unit))
        {
            return Finite(new Entered(si, typed, unit!.Symbol), text, text);
        }

        Match match = Plain().Match(text);
        if (!match.Success)
        {
            return new ParsedQuantity(Entered.Unknown, $"\"{text}\" is not a number with a unit");
        }

        string typedUnit = match.Groups[3].Value.Trim();
        if (UnitFor(typedUnit, kind, unitRequired, customary, out string why) is not { } known)
        {
            return new ParsedQuantity(Entered.Unknown, why);
        }

        SeparatorMeaning ofKind = IsCount(kind) ? SeparatorMeaning.Count : SeparatorMeaning.Quantity;
        SeparatorMeaning manner = typedUnit.Length > 0 && known.Power >= 3 ? SeparatorMeaning.Decimal : ofKind;
        return NumberParser.Read(match.Groups[1].Value.Trim(), manner, out why) is { } digits
            ? Choose(digits, new AcceptedUnit(match.Groups[2].Value, typedUnit, known), typed, kind, limits)
            : new ParsedQuantity(Entered.Unknown, why);
    }

    /// <summary>
    /// Of two readings the one that the limits allow alone; the usual one where neither is open; else both, for the person to say which.
    /// </summary>
    private static ParsedQuantity Choose(ParsedDigits digits, AcceptedUnit behind, string typed, QuantityKind kind, Limits? limits)
    {
        Entered usual = behind.With(digits.Plain, typed);
        if (digits.Grouped is not { } grouped)
        {
            return Finite(usual, Tidy(typed), behind.Write(digits.Plain));
        }

        Entered thousands = behind.With(grouped, typed);
        bool canBeUsual = limits?.Allows(usual.Si) ?? true,
            canBeThousands = limits?.Allows(thousands.Si) ?? digits.IsOpen;
        if (canBeThousands && !canBeUsual)
        {
            return Finite(thousands, Tidy(typed), behind.Write(grouped)) with
            {
                Note = $"taken as {Echo(thousands, kind)}: {Echo(usual, kind)} is not possible here",
            };
        }

        if (!digits.IsOpen || canBeUsual != canBeThousands)
        {
            return Finite(usual, Tidy(typed), behind.Write(digits.Plain));
        }

        string[] readings = [behind.WriteWithUnit(digits.Plain), behind.WriteWithUnit(grouped)];
        return new ParsedQuantity(Entered.Unknown, $"\"{Tidy(typed)}\" can mean {readings[0]} or {readings[1]}; write it one of these ways")
        {
            Readings = readings,
        };
    }

    private static ParsedQuantity Finite(Entered entered, string text, string plain) =>
        double.IsFinite(entered.Si)
            ? new ParsedQuantity(entered, "") { Plain = plain }
            : new ParsedQuantity(Entered.Unknown, $"\"{text}\" is too large a number");

    /// <summary>What stands behind the digits.</summary>
    private sealed record AcceptedUnit(string Exponent, string Typed, Unit Unit)
    {
        public Entered With(string digits, string typed) => new(Scaled(digits, Exponent, Unit), typed, Unit.Symbol);

        public string Write(string digits) => $"{digits}{Exponent}{(Typed.Length > 0 ? " " + Typed : "")}";

        /// <summary>With the unit that a bare number is taken in, for a person who must choose.</summary>
        public string WriteWithUnit(string digits) => $"{digits}{Exponent} {(Typed.Length > 0 ? Typed : Unit.Symbol)}";
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

            return customary is null
                ? UnitTable.Of(kind)[0]
                : UnitTable.Find(kind, customary) ?? throw new ArgumentException($"'{customary}' is no unit of {kind}.", nameof(customary));
        }

        Unit? unit = UnitTable.Find(kind, typed.TrimEnd('.'));
        why = unit is null ? $"\"{typed}\" is not a unit of this quantity; use one of {UnitsOf(kind)}" : "";
        return unit;
    }

    /// <summary>Parses digits with the unit's power of ten folded in, so that the result is the nearest double.</summary>
    private static double Scaled(string digits, string exponent, Unit unit)
    {
        int power = exponent.Length == 0 ? 0 : int.Parse(exponent.AsSpan(1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        double number = double.Parse(
            string.Create(CultureInfo.InvariantCulture, $"{digits}e{power + unit.Power}"),
            NumberStyles.Float,
            CultureInfo.InvariantCulture
        );
        return number * unit.Scale + unit.Offset;
    }

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Spaces();

    [GeneratedRegex(@"^([+-]?[0-9]{1,9})([A-Za-z])([0-9]{1,9})(\D*)$", RegexOptions.CultureInvariant)]
    private static partial Regex Infix();

    [GeneratedRegex(@"^([+-]?(?:[0-9][0-9.,' ]*|[.,][0-9]+))([eE][+-]?[0-9]{1,3})?(?![0-9.,])(.*)$", RegexOptions.CultureInvariant)]
    private static partial Regex Plain();
}
