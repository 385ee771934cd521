using Coilwright.Analysis.Pairing;
using Coilwright.Formats.Tables;
using Coilwright.Workshop.Entry;

namespace Coilwright.Input;

/// <summary>By what coils are paired, as typed after --by and --offset.</summary>
/// <param name="By">The quantities, in the order typed, with their weights.</param>
public sealed record PairingOptions(IReadOnlyList<(string Quantity, double Weight)> By)
{
    private const string Known =
        "dcResistance, turns, inductance; several with commas, each with a weight if wanted: dcResistance=2,inductance=1; "
        + "with semicolons between them a weight may have a comma";

    /// <summary>Reads "turns", or "dcResistance=2,inductance".</summary>
    /// <exception cref="WrongInputException">Some of it was not understood; carries every problem.</exception>
    public static PairingOptions ReadBy(string typed)
    {
        OptionReader problems = new();
        List<(string, double)> by = [];
        char between = typed.Contains(';', StringComparison.Ordinal) ? ';' : ',';
        foreach (string part in typed.Split(between, StringSplitOptions.TrimEntries))
        {
            string[] sides = part.Split('=', 2, StringSplitOptions.TrimEntries);
            double weight = 1;
            if (!CoilTable.Quantities.ContainsKey(sides[0]))
            {
                problems.Add("--by", $"\"{sides[0]}\" is nothing to pair by", allowed: Known);
            }
            else if (by.Exists(one => one.Item1 == sides[0]))
            {
                problems.Add("--by", $"\"{sides[0]}\" is named twice");
            }
            else if (sides.Length == 2 && !(CountParser.TryNumber(sides[1], out weight) && weight is >= 0.001 and <= 1000))
            {
                problems.Add("--by", $"\"{sides[1]}\" is no weight", allowed: "0.001 to 1000");
            }

            by.Add((sides[0], weight));
        }

        problems.RefuseIfWrong();
        return new PairingOptions(by);
    }

    /// <summary>The wishes, with the offset that was typed: "150", "+150 turns", "screw=+150", "1 %".</summary>
    /// <param name="offset">What was typed after --offset, or null.</param>
    /// <param name="families">The families of the table, in the order they come.</param>
    /// <param name="units">The unit of each quantity's column, taken for a bare number.</param>
    /// <exception cref="WrongInputException">The offset was not understood.</exception>
    public IReadOnlyList<PairingPreference> Wishes(
        string? offset,
        IReadOnlyList<string> families,
        IReadOnlyDictionary<string, string> units
    )
    {
        PairingPreference[] wishes = [.. By.Select(one => new PairingPreference(one.Weight))];
        if (offset is null)
        {
            return wishes;
        }

        (string? family, string typed) = Split(offset, families);
        bool turned = family is not null && families.Count == 2 && family == families[0];
        if (QuantityParser.TryParse(typed, QuantityKind.Fraction, unitRequired: true, out Entered part, out _) && Math.Abs(part.Si) <= 0.5)
        {
            double fraction = turned ? -part.Si / (1 + part.Si) : part.Si;
            return [.. wishes.Select(wish => wish with { OffsetFraction = fraction })];
        }

        for (int at = 0; at < By.Count; at++)
        {
            Limits limits = CoilTable.Quantities[By[at].Quantity];
            if (
                QuantityParser.TryParse(
                    typed,
                    limits.Kind,
                    unitRequired: By.Count > 1,
                    out Entered entered,
                    out _,
                    units.GetValueOrDefault(By[at].Quantity)
                )
                && Math.Abs(entered.Si) <= limits.Max
            )
            {
                wishes[at] = wishes[at] with { Offset = turned ? -entered.Si : entered.Si };
                return wishes;
            }
        }

        string kinds = string.Join(" or ", By.Select(one => $"a number of {units.GetValueOrDefault(one.Quantity)}"));
        throw WrongInputException.About(
            "--offset",
            $"\"{offset}\" is no offset of what the coils are paired by",
            $"{kinds}, or up to 50 %, for the second family; or with a family's name: {families[^1]}=+150"
        );
    }

    private static (string? Family, string Typed) Split(string offset, IReadOnlyList<string> families)
    {
        foreach (string family in families.Where(family => family.Length > 0).OrderByDescending(family => family.Length))
        {
            if (
                offset.TrimStart().StartsWith(family, StringComparison.OrdinalIgnoreCase)
                && offset.TrimStart()[family.Length..].TrimStart() is [('=' or ':' or '+' or '-' or '−' or (>= '0' and <= '9')), ..] rest
            )
            {
                return (family, rest.TrimStart('=', ':', ' '));
            }
        }

        return (null, offset);
    }
}
