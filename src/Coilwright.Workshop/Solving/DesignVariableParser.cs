using Coilwright.Physics;
using Coilwright.Physics.Materials;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Workshop.Solving;

/// <summary>
/// Reads what may be varied: "turns", "turns,gauge", "turns=5000..9000", "gauge=AWG 42/AWG 43", "windingHeight=9mm..12mm".
/// </summary>
public static class DesignVariableParser
{
    private static readonly Dictionary<string, Choice> s_names = new(StringComparer.OrdinalIgnoreCase)
    {
        ["turns"] = Choice.Turns,
        ["gauge"] = Choice.Gauge,
        ["build"] = Choice.Build,
        ["film"] = Choice.Build,
        ["magnet"] = Choice.Magnet,
        ["connection"] = Choice.Connection,
        ["windingHeight"] = Choice.WindingHeight,
        ["height"] = Choice.WindingHeight,
        ["coreWidth"] = Choice.CoreWidth,
        ["coreLength"] = Choice.CoreLength,
    };

    private static readonly string[] s_connections = ["series", "parallel"];
    private static readonly string[] s_magnets =
    [
        .. MaterialCatalogue.All.Where(material => material.WorkingPolarisationT is not null).Select(material => material.Key),
    ];

    public static string Known => "turns, gauge, build, magnet, connection, winding height, core width, core length";

    /// <summary>Everything to vary; what was not understood is noted.</summary>
    public static IReadOnlyList<Varied> Read(string field, string typed, ICollection<Problem> problems)
    {
        List<Varied> varied = [];
        foreach (string part in typed.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            string name = part.Split('=', 2)[0].Trim(),
                rest = part.Contains('=', StringComparison.Ordinal) ? part.Split('=', 2)[1].Trim() : "";
            if (!s_names.TryGetValue(name.Replace(" ", "", StringComparison.Ordinal), out Choice what))
            {
                string? nearest = NearNames.Nearest(name, s_names.Keys);
                problems.Add(
                    new Problem(
                        field,
                        $"\"{name}\" cannot be varied" + (nearest is null ? "" : $"; the nearest is {nearest}"),
                        Allowed: Known
                    )
                );
            }
            else if (varied.Any(known => known.What == what))
            {
                problems.Add(new Problem(field, $"\"{name}\" is given twice"));
            }
            else if (One(field, part, what, rest, problems) is { } one)
            {
                varied.Add(one);
            }
        }

        if (varied.Count == 0 && problems.Count == 0)
        {
            problems.Add(new Problem(field, "say what may be varied", Allowed: Known));
        }

        return varied;
    }

    /// <summary>A part of the text: what it names, null where nothing of that name may change, and what stands behind the sign.</summary>
    internal static (Choice? What, string Given) Split(string part)
    {
        string[] sides = part.Split('=', 2, StringSplitOptions.TrimEntries);
        bool known = s_names.TryGetValue(sides[0].Replace(" ", "", StringComparison.Ordinal), out Choice what);
        return (known ? what : null, sides.Length == 2 ? sides[1] : "");
    }

    private static Varied? One(string field, string part, Choice what, string rest, ICollection<Problem> problems)
    {
        if (rest.Length == 0)
        {
            return new Varied(what);
        }

        if (what is Choice.Gauge or Choice.Build or Choice.Magnet or Choice.Connection)
        {
            string[] listed = rest.Split(['/', '|'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
            string[] unknown = [.. listed.Where(name => !IsKnown(what, name))];
            foreach (string name in unknown)
            {
                problems.Add(new Problem(field, $"\"{part}\": \"{name}\" is not known", Allowed: AllowedOf(what)));
            }

            return unknown.Length == 0 && listed.Length > 0
                ? new Varied(what, Listed: [.. listed.Select(name => Canonical(what, name))])
                : null;
        }

        (QuantityKind kind, double low, double high) =
            what == Choice.Turns ? (QuantityKind.Turns, 10, 100_000) : (QuantityKind.Length, 0.5e-3, 0.3);
        string[] ends = rest.Split("..", StringSplitOptions.TrimEntries);
        string allowed = $"{part.Split('=', 2)[0].Trim()}={QuantityParser.Format(low, kind)}..{QuantityParser.Format(high, kind)}";
        if (
            ends.Length != 2
            || !TryEnd(ends[0], kind, out double from)
            || !TryEnd(ends[1], kind, out double to)
            || !(from >= low && to <= high && from <= to)
        )
        {
            problems.Add(new Problem(field, $"\"{part}\" is not a range from a lower to an upper end", Allowed: allowed));
            return null;
        }

        return new Varied(what, from, to);
    }

    private static bool TryEnd(string text, QuantityKind kind, out double si)
    {
        bool read = QuantityParser.TryParse(text, kind, unitRequired: kind != QuantityKind.Turns, out Entered entered, out _);
        si = entered.Si;
        return read;
    }

    private static IReadOnlyCollection<string> WordsOf(Choice what) =>
        what switch
        {
            Choice.Build => Catalogue.Builds,
            Choice.Magnet => s_magnets,
            _ => s_connections,
        };

    private static bool IsKnown(Choice what, string name) =>
        what == Choice.Gauge ? WireCatalogue.Standard.Find(name) is not null : WordsOf(what).Contains(KeyLabels.KeyOf(name, WordsOf(what)));

    private static string Canonical(Choice what, string name) =>
        what == Choice.Gauge ? WireCatalogue.Standard.Find(name)!.Gauge : KeyLabels.KeyOf(name, WordsOf(what));

    private static string AllowedOf(Choice what) =>
        what switch
        {
            Choice.Gauge => "AWG 34 to AWG 50 in halves, or 0.030 mm to 0.160 mm of the metric series",
            _ => string.Join(", ", WordsOf(what)),
        };
}
