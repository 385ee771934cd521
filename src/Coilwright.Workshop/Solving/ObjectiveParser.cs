using System.Text.RegularExpressions;
using Coilwright.Analysis.Quantities;
using Coilwright.Analysis.Solving;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Quantities;

namespace Coilwright.Workshop.Solving;

/// <summary>
/// Reads wishes as they are typed: "dcResistance=8.2kΩ", "dcResistance=8.2kΩ±2%", "loadedPeak>=3.2 kHz", "output=max", "output>=+1 dB".
/// </summary>
public static partial class ObjectiveParser
{
    /// <summary>Tolerance of an equality that states none.</summary>
    public const double UsualTolerance = 0.01;

    private const string Example = "for example dcResistance=8.2kΩ, dcResistance=8.2kΩ±2%, loadedPeak>=3.2kHz or output=max";

    /// <summary>What a quantity of a search is measured in; a number without unit where there is no kind.</summary>
    private static QuantityKind? KindOf(string name) => Quantity.FindResult(name)?.Kind;

    /// <summary>Reads one want; null when it was not understood, with the problem noted.</summary>
    /// <param name="field">Where it was typed, for messages.</param>
    /// <param name="typed">What was typed.</param>
    /// <param name="known">Quantities that the recipe has, with their values now.</param>
    /// <param name="problems">Gathers what is wrong.</param>
    public static Objective? Read(string field, string typed, IReadOnlyDictionary<string, double> known, ICollection<Problem> problems)
    {
        Match match = Parts().Match(typed);
        if (!match.Success)
        {
            problems.Add(new Problem(field, $"\"{typed}\" is not a want; {Example}"));
            return null;
        }

        string name = Canonical(match.Groups["name"].Value.Trim(), known.Keys);
        if (!known.TryGetValue(name, out double now))
        {
            string missing = name is QuantityKey.Output ? "this recipe has no strings, so no output is known" : Missing(name, known.Keys);
            problems.Add(
                new Problem(field, $"\"{name}\": {missing}", Allowed: string.Join(", ", known.Keys.Order(StringComparer.Ordinal)))
            );
            return null;
        }

        ObjectiveKind kind = match.Groups["how"].Value switch
        {
            ">=" or "≥" or ">" => ObjectiveKind.AtLeast,
            "<=" or "≤" or "<" => ObjectiveKind.AtMost,
            _ => ObjectiveKind.Equal,
        };
        string value = match.Groups["value"].Value.Trim();
        bool isLevel = name.EndsWith("Gain", StringComparison.Ordinal);
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

        double tolerance = isLevel ? 0.2 : UsualTolerance;
        return TryValue(name, value, now, isLevel, ref tolerance, out double si, out string why)
            ? new Objective(name, kind, si, tolerance, isLevel)
            : Refuse(why);

        Objective? Refuse(string because)
        {
            problems.Add(new Problem(field, $"\"{typed}\": {because}", Allowed: AllowedOf(name, isLevel)));
            return null;
        }
    }

    /// <summary>
    /// Reads two or three axes of a trade-off: more is better, less with a minus before the name or where more is a burden by nature.
    /// </summary>
    public static IReadOnlyList<FrontAxis> Axes(
        string field,
        string typed,
        IReadOnlyDictionary<string, double> known,
        ICollection<Problem> problems
    )
    {
        List<FrontAxis> axes = [];
        string[] parts = typed.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        foreach (string part in parts)
        {
            string name = Canonical(part.TrimStart('-', '+').Trim(), known.Keys);
            if (!known.ContainsKey(name))
            {
                problems.Add(
                    new Problem(
                        field,
                        $"\"{name}\": {Missing(name, known.Keys)}",
                        Allowed: string.Join(", ", known.Keys.Order(StringComparer.Ordinal))
                    )
                );
                continue;
            }

            bool burden = Quantity.Find(name) is { IsBurden: true };
            axes.Add(new FrontAxis(name, part.StartsWith('+') || !(part.StartsWith('-') || burden)));
        }

        if (parts.Length is < 2 or > 3 || axes.DistinctBy(axis => axis.Quantity).Count() != axes.Count)
        {
            problems.Add(
                new Problem(field, "a trade-off has two or three different axes", typed, "two or three quantities with commas between them")
            );
        }

        return axes;
    }

    /// <summary>The key of a quantity, of its label, or of a short word for what people ask for most.</summary>
    private static string Canonical(string name, IEnumerable<string> known) =>
        Quantity.FindAlias(name)?.Key ?? KeyLabels.KeyOf(name, known);

    private static string Missing(string name, IEnumerable<string> known)
    {
        string? nearest = NearNames.Nearest(name, known);
        return "no such quantity is known for this recipe" + (nearest is null ? "" : $"; the nearest is {nearest}");
    }

    private static string AllowedOf(string name, bool isLevel)
    {
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

    [GeneratedRegex(@"^(?<name>[^<>=≥≤]+?)\s*(?<how>>=|<=|≥|≤|=|>|<)\s*(?<value>.+)$", RegexOptions.None, 1000)]
    private static partial Regex Parts();

    [GeneratedRegex(@"^([+\-−]?\s*[\d.,]+)\s*dB$", RegexOptions.IgnoreCase, 1000)]
    private static partial Regex Level();
}
