using System.Text.RegularExpressions;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Input;

/// <summary>One line of a table of readings.</summary>
/// <param name="Tag">The coil's tag.</param>
/// <param name="Readings">What was measured on it; an impossible value is kept and flagged.</param>
/// <param name="Carried">Columns of the shop's own, carried through as they are.</param>
public sealed record ReadingRow(string Tag, IReadOnlyList<ReadingRecord> Readings, IReadOnlyDictionary<string, string> Carried)
{
    /// <summary>Label of the spool it was wound from, or empty.</summary>
    public string Spool { get; init; } = "";
}

/// <summary>Reads the table of readings that `judge` takes: CSV, a unit in brackets after a column's name.</summary>
public static partial class ReadingTable
{
    private static readonly Dictionary<string, (QuantityKind Kind, string Unit)> s_columns = new(StringComparer.Ordinal)
    {
        ["dcResistance"] = (QuantityKind.Resistance, "Ω"),
        ["temperature"] = (QuantityKind.Temperature, "°C"),
        ["inductance"] = (QuantityKind.Inductance, "H"),
        ["inductanceAt"] = (QuantityKind.Frequency, "Hz"),
        ["qAt"] = (QuantityKind.Frequency, "Hz"),
        ["turns"] = (QuantityKind.Turns, "turns"),
    };

    private static readonly string[] s_words = ["tag", "q", "spool", "time"];

    /// <summary>Every row, or every problem with line and column.</summary>
    /// <param name="text">The table.</param>
    /// <param name="readUtc">Time given to rows that state none.</param>
    public static ReadOutcome<IReadOnlyList<ReadingRow>> Read(string text, DateTimeOffset readUtc)
    {
        List<Problem> problems = [];
        (int Line, string[] Cells)[] lines = [.. CsvText.Rows(text)];
        if (lines.Length == 0)
        {
            return new ReadOutcome<IReadOnlyList<ReadingRow>>(null, [new Problem("line 1", "the table is empty; a header is needed", Allowed: "tag,dcResistance [kΩ],temperature [°C],…")]);
        }

        string[] header = lines[0].Cells;
        Column[] columns = [.. header.Select(name => ColumnOf(name, problems))];
        if (!columns.Any(column => column.Name == "tag"))
        {
            problems.Add(new Problem("line 1", "there is no column \"tag\"", string.Join(", ", header)));
        }

        if (!columns.Any(column => column.Name is "dcResistance" or "inductance" or "q"))
        {
            problems.Add(new Problem("line 1", "there is no column of readings", string.Join(", ", header), "dcResistance, inductance, q"));
        }

        List<ReadingRow> rows = [];
        foreach ((int line, string[] cells) in lines.Skip(1))
        {
            if (cells.Length > columns.Length)
            {
                problems.Add(new Problem($"line {line}", "more cells than the header has columns", $"{cells.Length}", $"up to {columns.Length}"));
            }

            string[] filled = [.. columns.Select((_, index) => index < cells.Length ? cells[index] : "")];
            rows.Add(new RowReader(columns, filled, line, problems, readUtc).Read());
        }

        foreach (IGrouping<string, ReadingRow> twice in rows.Where(row => row.Tag.Length > 0).GroupBy(row => row.Tag, StringComparer.Ordinal).Where(group => group.Count() > 1))
        {
            problems.Add(new Problem("tag", "this tag stands in more than one line", twice.Key));
        }

        return new ReadOutcome<IReadOnlyList<ReadingRow>>(problems.Count == 0 ? rows : null, problems);
    }

    private static Column ColumnOf(string heading, List<Problem> problems)
    {
        Match match = Heading().Match(heading);
        string name = match.Groups[1].Value, unit = match.Groups[2].Value;
        if (!s_columns.TryGetValue(name, out (QuantityKind Kind, string Unit) known))
        {
            return new Column(s_words.Contains(name) ? name : "", heading, null, "");
        }

        if (unit.Length > 0 && !QuantityText.TryParse("1 " + unit, known.Kind, unitRequired: true, out _, out _))
        {
            problems.Add(new Problem("line 1, " + name, $"\"{unit}\" is not a unit of this column", Allowed: QuantityText.UnitsOf(known.Kind)));
            unit = "";
        }

        return new Column(name, heading, known.Kind, unit.Length > 0 ? unit : known.Unit);
    }

    /// <summary>A column: its known name or empty, its heading, and kind and unit of a quantity.</summary>
    internal sealed record Column(string Name, string Heading, QuantityKind? Kind, string Unit);

    [GeneratedRegex(@"^\s*([^\[\]]*?)\s*(?:\[\s*([^\]]*?)\s*\])?\s*$")]
    private static partial Regex Heading();
}
