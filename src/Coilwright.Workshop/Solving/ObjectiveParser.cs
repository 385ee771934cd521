using System.Text.RegularExpressions;
using Coilwright.Analysis.Quantities;
using Coilwright.Analysis.Solving;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Quantities;

namespace Coilwright.Workshop.Solving;

/// <summary>
/// Reads wishes as they are typed: "dcResistance=8.2kΩ", "dcResistance=8.2kΩ±2%", "dcResistance=8kΩ..8.4kΩ",
/// "loadedPeak>=3.2 kHz", "output=max", "output>=+1 dB".
/// </summary>
public static partial class ObjectiveParser
{
    private const string Example = "for example dcResistance=8.2kΩ, dcResistance=8.2kΩ±2%, loadedPeak>=3.2kHz or output=max";

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
        Objective? read = ObjectiveValue.Read(name, kind, match.Groups["value"].Value.Trim(), now, out string why);
        if (read is null)
        {
            problems.Add(new Problem(field, $"\"{typed}\": {why}", Allowed: ObjectiveValue.AllowedOf(name)));
        }

        return read;
    }

    /// <summary>The three parts of a want as typed: quantity by its key where it is known, sign, value; null where it is no want.</summary>
    internal static (string Quantity, string How, string Value)? Split(string typed, IEnumerable<string> known)
    {
        Match match = Parts().Match(typed);
        return match.Success
            ? (Canonical(match.Groups["name"].Value.Trim(), known), match.Groups["how"].Value, match.Groups["value"].Value.Trim())
            : null;
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

    [GeneratedRegex(@"^(?<name>[^<>=≥≤]+?)\s*(?<how>>=|<=|≥|≤|=|>|<)\s*(?<value>.+)$", RegexOptions.None, 1000)]
    private static partial Regex Parts();
}
