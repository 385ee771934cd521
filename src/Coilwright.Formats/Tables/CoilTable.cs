using System.Text.RegularExpressions;
using Coilwright.Formats.Csv;
using Coilwright.Workshop.Entry;

namespace Coilwright.Formats.Tables;

/// <summary>Reads the table of coils at hand that `pair` takes: CSV, a unit in brackets after a column's name.</summary>
public sealed partial class CoilTable
{
    /// <summary>Most coils in one table.</summary>
    public const int MostCoils = 20_000;

    /// <summary>What coils can be paired by, with the range of each.</summary>
    public static readonly IReadOnlyDictionary<string, Limits> Quantities = new Dictionary<string, Limits>(StringComparer.Ordinal)
    {
        ["dcResistance"] = new(QuantityKind.Resistance, 0.1, 1e6, "Ω", "3.98 kΩ"),
        ["turns"] = new(QuantityKind.Turns, 1, 100_000, "turns", "5000"),
        ["inductance"] = new(QuantityKind.Inductance, 1e-6, 1000, "H", "2.4 H"),
    };

    private static readonly Limits s_temperature = new(QuantityKind.Temperature, -40, 155, "°C", "21 °C");

    private readonly List<Problem> _problems = [];
    private readonly Dictionary<string, int> _places = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _units = new(StringComparer.Ordinal);
    private string[] _header = [];

    private TableNumbers Numbers { get; init; }

    private CoilTable() { }

    /// <summary>The coils, or every problem with line and column; with the unit that each quantity's column names.</summary>
    /// <param name="text">The table.</param>
    /// <param name="by">The quantities that must have a column.</param>
    public static (ReadOutcome<IReadOnlyList<CoilRow>> Coils, IReadOnlyDictionary<string, string> Units) Read(
        string text,
        IReadOnlyList<string> by
    )
    {
        CoilTable table = new() { Numbers = TableNumbers.Of(text) };
        List<CoilRow> rows = table.ReadRows([.. CsvCells.Rows(text).Take(MostCoils + 2)], by);
        return (new ReadOutcome<IReadOnlyList<CoilRow>>(table._problems.Count == 0 ? rows : null, table._problems), table._units);
    }

    private List<CoilRow> ReadRows((int Line, string[] Cells)[] lines, IReadOnlyList<string> by)
    {
        if (lines.Length == 0)
        {
            _problems.Add(
                new Problem(
                    "line 1",
                    "the table is empty; a header is needed",
                    Allowed: "tag,family,dcResistance [kΩ],turns,inductance [H]"
                )
            );
            return [];
        }

        ReadHeader(lines[0], by);
        if (lines.Length is 1 or > MostCoils + 1)
        {
            _problems.Add(
                new Problem(
                    "",
                    lines.Length == 1 ? "the table has no coils" : "too many coils for one table",
                    $"more than {MostCoils}",
                    $"1 to {MostCoils}"
                )
            );
            return [];
        }

        List<CoilRow> rows = [];
        Dictionary<string, int> seen = new(StringComparer.Ordinal);
        foreach ((int line, string[] cells) in lines.Skip(1))
        {
            if (cells.Length > _header.Length)
            {
                _problems.Add(
                    new Problem($"line {line}", "more cells than the header has columns", $"{cells.Length}", $"up to {_header.Length}")
                );
            }

            CoilRow row = ReadRow(line, cells);
            rows.Add(row);
            if (row.Tag.Length > 0 && !seen.TryAdd(row.Tag, line))
            {
                _problems.Add(
                    new Problem($"line {line}, tag", $"this tag stands in line {seen[row.Tag]} already: a coil goes into one pair", row.Tag)
                );
            }
        }

        return rows;
    }

    private void ReadHeader((int Line, string[] Cells) line, IReadOnlyList<string> by)
    {
        _header = line.Cells;
        for (int place = 0; place < _header.Length; place++)
        {
            Match match = Heading().Match(_header[place]);
            (string name, string unit) = (match.Groups[1].Value, match.Groups[2].Value);
            QuantityKind? kind = name == "temperature" ? QuantityKind.Temperature : Quantities.GetValueOrDefault(name)?.Kind;
            if (kind is null && name is not ("tag" or "family"))
            {
                continue;
            }

            if (!_places.TryAdd(name, place))
            {
                _problems.Add(new Problem($"line {line.Line}, {name}", "this column stands in the header twice"));
            }

            if (kind is { } known && unit.Length > 0 && !QuantityParser.TryParse("1 " + unit, known, unitRequired: true, out _, out _))
            {
                _problems.Add(
                    new Problem(
                        $"line {line.Line}, {name}",
                        $"\"{unit}\" is not a unit of this column",
                        Allowed: QuantityParser.UnitsOf(known)
                    )
                );
            }
            else if (kind is { } quantity)
            {
                string usual = quantity == QuantityKind.Temperature ? "°C" : Quantities[name].Unit;
                _units[name] = unit.Length > 0 ? unit : usual;
            }
        }

        foreach (string needed in by.Prepend("tag").Where(needed => !_places.ContainsKey(needed)))
        {
            string near = _header.FirstOrDefault(heading => heading.StartsWith(needed, StringComparison.OrdinalIgnoreCase)) is { } close
                ? $"\"{close}\" is not read as it"
                : string.Join(", ", _header);
            _problems.Add(new Problem($"line {line.Line}", $"there is no column \"{needed}\"", near));
        }
    }

    private CoilRow ReadRow(int line, string[] cells)
    {
        string Cell(string name) => _places.TryGetValue(name, out int place) && place < cells.Length ? cells[place] : "";
        string tag = Cell("tag"),
            family = Cell("family");
        if (tag.Length == 0 && _places.ContainsKey("tag"))
        {
            _problems.Add(new Problem($"line {line}, tag", "the tag is missing"));
        }

        if (family.Length == 0 && _places.ContainsKey("family"))
        {
            _problems.Add(
                new Problem(
                    $"line {line}, family",
                    "the family is missing",
                    Allowed: "a word such as slug or screw; leave the column out when all coils are alike"
                )
            );
        }

        Dictionary<string, double> values = new(StringComparer.Ordinal);
        foreach ((string name, Limits limits) in Quantities)
        {
            if (Cell(name).Length > 0 && Quantity(line, name, Cell(name), limits) is { } si)
            {
                values[name] = si;
            }
        }

        if (
            Cell("temperature").Length > 0
            && Quantity(line, "temperature", Cell("temperature"), s_temperature) is { } celsius
            && values.TryGetValue("dcResistance", out double ohm)
        )
        {
            values["dcResistance"] = Workshop.Quantities.Quantity.DcResistance.Comparable(ohm, celsius);
        }

        HashSet<int> known = [.. _places.Values];
        return new CoilRow(
            tag,
            family,
            values,
            Enumerable
                .Range(0, Math.Min(cells.Length, _header.Length))
                .Where(place => !known.Contains(place) && cells[place].Length > 0 && _header[place].Length > 0)
                .DistinctBy(place => _header[place])
                .ToDictionary(place => _header[place], place => cells[place])
        );
    }

    private double? Quantity(int line, string name, string typed, Limits limits)
    {
        string field = $"line {line}, {name}";
        if (!Numbers.TryQuantity(typed, limits.Kind, _units.GetValueOrDefault(name) ?? limits.Unit, out Entered entered, out string why))
        {
            _problems.Add(new Problem(field, why, Allowed: $"{limits.Range}, or empty when not measured"));
            return null;
        }

        if (limits.Allows(entered.Si))
        {
            return entered.Si;
        }

        _problems.Add(
            new Problem(field, limits.Outside, QuantityParser.Echo(entered, limits.Kind), $"{limits.Range}, or empty when not measured")
        );
        return null;
    }

    [GeneratedRegex(@"^\s*([^\[\]]*?)\s*(?:\[\s*([^\]]*?)\s*\])?\s*$")]
    private static partial Regex Heading();
}
