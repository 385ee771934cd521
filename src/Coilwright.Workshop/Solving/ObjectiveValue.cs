using System.Text.RegularExpressions;
using Coilwright.Analysis.Quantities;
using Coilwright.Analysis.Solving;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Quantities;

namespace Coilwright.Workshop.Solving;

/// <summary>Reads the value of a want: "8.2 kΩ", "8.2 kΩ±2 %", "8 kΩ..8.4 kΩ", "+1 dB", "max".</summary>
internal static partial class ObjectiveValue
{
    /// <summary>Tolerance of an equality that states none: a part of the value, dB for a level.</summary>
    private const double UsualTolerance = 0.01,
        UsualLevelTolerance = 0.2;

    /// <summary>True for a quantity in dB.</summary>
    public static bool IsLevel(string name) => name.EndsWith("Gain", StringComparison.Ordinal);

    /// <summary>Reads the value of a want; null when it was not understood, with the reason.</summary>
    /// <param name="name">Key of the quantity.</param>
    /// <param name="kind">At least, at most, or equal, which may turn out as most or least.</param>
    /// <param name="value">As typed.</param>
    /// <param name="now">Value of the recipe asked about.</param>
    /// <param name="why">Why not, in workshop words; empty when it was understood.</param>
    public static Objective? Read(string name, ObjectiveKind kind, string value, double now, out string why)
    {
        bool isLevel = IsLevel(name);
        (string lower, string? upper) = Ends(value);
        why = "";
        if (kind == ObjectiveKind.Equal && value.ToLowerInvariant() is "max" or "most" or "min" or "least")
        {
            return new Objective(
                name,
                value.ToLowerInvariant() is "max" or "most" ? ObjectiveKind.Most : ObjectiveKind.Least,
                0,
                0,
                isLevel
            );
        }

        double tolerance = isLevel ? UsualLevelTolerance : UsualTolerance;
        if (upper is null)
        {
            return TryValue(name, value, now, isLevel, ref tolerance, out double si, out why)
                ? new Objective(name, kind, si, tolerance, isLevel)
                : null;
        }

        if (
            !TryValue(name, lower, now, isLevel, ref tolerance, out double low, out why)
            || !TryValue(name, upper, now, isLevel, ref tolerance, out double high, out why)
        )
        {
            return null;
        }

        why = kind == ObjectiveKind.Equal && low < high ? "" : "a range goes from its lower end to its upper end";
        return why.Length == 0 ? Between(name, low, high, isLevel) : null;
    }

    /// <summary>A want between two ends: their middle, and half their distance as the tolerance.</summary>
    private static Objective Between(string name, double low, double high, bool isLevel) =>
        new(name, ObjectiveKind.Equal, (low + high) / 2, isLevel ? (high - low) / 2 : (high - low) / (high + low), isLevel);

    private static (string Lower, string? Upper) Ends(string value)
    {
        int at = value.IndexOf("..", StringComparison.Ordinal);
        return at < 0 ? (value, null) : (value[..at].Trim(), value[(at + 2)..].Trim());
    }

    /// <summary>What a quantity of a search is measured in; a number without unit where there is no kind.</summary>
    private static QuantityKind? KindOf(string name) => Quantity.FindResult(name)?.Kind;

    public static string AllowedOf(string name)
    {
        bool isLevel = IsLevel(name);
        if (isLevel)
        {
            return "a level, for example 6 dB; or max, min";
        }

        if (KindOf(name) is { } kind)
        {
            return $"a quantity in {QuantityParser.UnitsOf(kind)}; or max, min";
        }

        return name == QuantityKey.Output ? "a change against the recipe, for example +1 dB; or max, min" : "a number above 0; or max, min";
    }

    private static bool TryValue(string name, string value, double now, bool isLevel, ref double tolerance, out double si, out string why)
    {
        (string middle, string? about) = Split(value);
        si = 0;
        if (isLevel || Level().IsMatch(middle))
        {
            if (!TryLevel(middle, out double db))
            {
                why = $"\"{middle}\" is not a level in dB";
                return false;
            }

            // A change in dB of anything but a level is meant against the recipe as it stands.
            si = isLevel ? db : now * Math.Pow(10, db / 20);
            double aboutDb = 0;
            bool read = about is null || TryLevel(about, out aboutDb);
            double usual = isLevel ? tolerance : 0.012,
                told = isLevel ? Math.Abs(aboutDb) : Math.Pow(10, Math.Abs(aboutDb) / 20) - 1;
            tolerance = about is null ? usual : told;
            why = read ? "" : $"\"{about}\" is not a tolerance in dB";
            return read;
        }

        if (name == QuantityKey.Output || !TrySi(name, middle, out si, out why))
        {
            why =
                name == QuantityKey.Output ? "an output is wanted as a change against the recipe, for example +1 dB" : WhyNot(name, middle);
            return false;
        }

        if (!(si > 0) || !double.IsFinite(si))
        {
            why = "the value must be above 0";
            return false;
        }

        why =
            about is null || TryTolerance(name, about, si, ref tolerance)
                ? ""
                : $"\"{about}\" is not a tolerance; write for example ±2% of it, above 0 and at most 100 %";
        return why.Length == 0;
    }

    private static string WhyNot(string name, string text) => TrySi(name, text, out _, out string why) ? "" : why;

    private static bool TryTolerance(string name, string about, double si, ref double tolerance)
    {
        if (QuantityParser.TryParse(about, QuantityKind.Fraction, unitRequired: true, out Entered part, out _))
        {
            tolerance = part.Si;
        }
        else if (TrySi(name, about, out double width, out _))
        {
            tolerance = width / si;
        }
        else
        {
            return false;
        }

        return tolerance is > 0 and <= 1;
    }

    private static bool TrySi(string name, string text, out double si, out string why)
    {
        if (KindOf(name) is { } kind)
        {
            bool read = QuantityParser.TryParse(text, kind, unitRequired: true, out Entered entered, out why);
            si = entered.Si;
            return read;
        }

        why = $"\"{text}\" is not a number";
        string plain = text.EndsWith("m²", StringComparison.Ordinal) ? text[..^2] : text;
        return CountParser.TryNumber(plain, out si);
    }

    private static bool TryLevel(string text, out double db)
    {
        Match match = Level().Match(text);
        db = 0;
        return match.Success && CountParser.TryNumber(match.Groups[1].Value, out db) && Math.Abs(db) <= 120;
    }

    private static (string Middle, string? About) Split(string value)
    {
        string text = value.Replace("+/-", "±", StringComparison.Ordinal).Replace("+-", "±", StringComparison.Ordinal);
        int at = text.IndexOf('±', StringComparison.Ordinal);
        return at < 0 ? (text.Trim(), null) : (text[..at].Trim(), text[(at + 1)..].Trim());
    }

    [GeneratedRegex(@"^([+\-−]?\s*[\d.,]+)\s*dB$", RegexOptions.IgnoreCase, 1000)]
    private static partial Regex Level();
}
