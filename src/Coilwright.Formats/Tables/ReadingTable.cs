using System.Text.RegularExpressions;
using Coilwright.Formats.Csv;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Formats.Tables;

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

    /// <summary>Most tags that a note names.</summary>
    private const int MostNamed = 5;

    /// <summary>Most coils in one table.</summary>
    public const int MostCoils = 20_000;

    /// <summary>Other headings that are read as one of ours.</summary>
    private static readonly Dictionary<string, string> s_alike = new(StringComparer.Ordinal)
    {
        ["resistance"] = "dcResistance",
        ["dcr"] = "dcResistance",
        ["rdc"] = "dcResistance",
        ["temp"] = "temperature",
    };

    /// <summary>Every row, or every problem with line and column.</summary>
    /// <param name="text">The table.</param>
    /// <param name="readUtc">Time given to rows that state none.</param>
    public static ReadOutcome<IReadOnlyList<ReadingRow>> Read(string text, DateTimeOffset readUtc) => Read(text, readUtc, []);

    /// <summary>As <see cref="Read(string, DateTimeOffset)"/>, with what was assumed or left unread.</summary>
    /// <param name="text">The table.</param>
    /// <param name="readUtc">Time given to rows that state none.</param>
    /// <param name="notes">Takes sentences for the person.</param>
    public static ReadOutcome<IReadOnlyList<ReadingRow>> Read(string text, DateTimeOffset readUtc, ICollection<string> notes)
    {
        List<Problem> problems = [];
        (int Line, string[] Cells)[] lines = [.. CsvCells.Rows(text).Take(MostCoils + 2)];
        if (lines.Length == 0)
        {
            return new ReadOutcome<IReadOnlyList<ReadingRow>>(
                null,
                [new Problem("line 1", "the table is empty; a header is needed", Allowed: "tag,dcResistance [kΩ],temperature [°C],…")]
            );
        }

        if (lines.Length > MostCoils + 1)
        {
            return new ReadOutcome<IReadOnlyList<ReadingRow>>(
                null,
                [
                    new Problem(
                        "",
                        "too many coils for one table; judge them batch by batch",
                        Allowed: CountParser.Range(1, MostCoils) + " coils"
                    ),
                ]
            );
        }

        Column[] columns = Columns(lines[0].Cells, problems, notes);
        TableNumbers numbers = TableNumbers.Of(text);
        List<ReadingRow> rows = [];
        foreach ((int line, string[] cells) in lines.Skip(1))
        {
            if (cells.Length > columns.Length)
            {
                problems.Add(
                    new Problem($"line {line}", "more cells than the header has columns", $"{cells.Length}", $"up to {columns.Length}")
                );
            }

            string[] filled = [.. columns.Select((_, index) => index < cells.Length ? cells[index] : "")];
            rows.Add(new RowReader(columns, filled, line, problems, readUtc) { Numbers = numbers }.Read());
        }

        NoteAssumed(lines, columns, notes);
        foreach (
            IGrouping<string, ReadingRow> twice in rows.Where(row => row.Tag.Length > 0)
                .GroupBy(row => row.Tag, StringComparer.Ordinal)
                .Where(group => group.Count() > 1)
        )
        {
            problems.Add(new Problem("tag", "this tag stands in more than one line", twice.Key));
        }

        return new ReadOutcome<IReadOnlyList<ReadingRow>>(problems.Count == 0 ? rows : null, problems);
    }

    /// <summary>Names the coils of which the frequency of Q was left empty and is assumed.</summary>
    private static void NoteAssumed((int Line, string[] Cells)[] lines, Column[] columns, ICollection<string> notes)
    {
        string CellOf(string[] cells, string name)
        {
            int place = Array.FindIndex(columns, column => column.Name == name);
            return place >= 0 && place < cells.Length ? cells[place].Trim() : "";
        }

        string[] tags =
        [
            .. lines
                .Skip(1)
                .Where(line => CellOf(line.Cells, "q").Length > 0 && CellOf(line.Cells, "qAt").Length == 0)
                .Select(line => CellOf(line.Cells, "tag")),
        ];
        if (tags.Length > 0 && columns.Any(column => column.Name == "qAt"))
        {
            string more = tags.Length > MostNamed ? " and others" : "";
            notes.Add($"Assumed: Q of {string.Join(", ", tags.Take(MostNamed))}{more} was read at 3 kHz, since qAt is empty there.");
        }
    }

    private static Column[] Columns(string[] header, List<Problem> problems, ICollection<string> notes)
    {
        HashSet<string> exact = [.. header.Select(heading => Heading().Match(heading).Groups[1].Value)];
        Column[] columns = [.. header.Select(name => ColumnOf(name, exact, problems, notes))];
        foreach (
            IGrouping<string, Column> twice in columns
                .Where(column => column.Name.Length > 0)
                .GroupBy(column => column.Name)
                .Where(group => group.Count() > 1)
        )
        {
            problems.Add(
                new Problem("line 1", $"two columns are read as {twice.Key}", string.Join(", ", twice.Select(column => column.Heading)))
            );
        }

        if (!columns.Any(column => column.Name == "tag"))
        {
            problems.Add(new Problem("line 1", "there is no column \"tag\"", string.Join(", ", header)));
        }

        if (!columns.Any(column => column.Name is "dcResistance" or "inductance" or "q"))
        {
            problems.Add(new Problem("line 1", "there is no column of readings", string.Join(", ", header), "dcResistance, inductance, q"));
        }

        string[] own =
        [
            .. columns
                .Where(column => column.Name.Length == 0)
                .Select(column => Heading().Match(column.Heading).Groups[1].Value)
                .Where(written => written.Length > 0 && Near(written) is null),
        ];
        if (own.Length > 0)
        {
            notes.Add($"Not read, but carried through as it is: {string.Join(", ", own)}.");
        }

        if (columns.Any(column => column.Name == "q") && !columns.Any(column => column.Name == "qAt"))
        {
            notes.Add("Assumed: Q was read at 3 kHz, since no column qAt says otherwise.");
        }

        return columns;
    }

    private static Column ColumnOf(string heading, HashSet<string> exact, List<Problem> problems, ICollection<string> notes)
    {
        Match match = Heading().Match(heading);
        string written = match.Groups[1].Value,
            unit = match.Groups[2].Value;
        string name = NameOf(written, exact);
        if (name.Length == 0 && written.Length > 0 && Near(written) is { } near && !exact.Contains(near))
        {
            notes.Add($"Not read: the column \"{written}\"; did you mean {near}?");
        }
        else if (name.Length > 0 && name != written)
        {
            notes.Add($"The column \"{written}\" is read as {name}.");
        }

        if (!s_columns.TryGetValue(name, out (QuantityKind Kind, string Unit) known))
        {
            return new Column(name, heading, null, "");
        }

        if (unit.Length > 0 && !QuantityParser.TryParse("1 " + unit, known.Kind, unitRequired: true, out _, out _))
        {
            problems.Add(
                new Problem("line 1, " + name, $"\"{unit}\" is not a unit of this column", Allowed: QuantityParser.UnitsOf(known.Kind))
            );
            unit = "";
        }

        return new Column(name, heading, known.Kind, unit.Length > 0 ? unit : known.Unit);
    }

    /// <summary>
    /// Our name of a heading, whatever its case, spaces and hyphens; empty for a column of the shop's own, as one is beside the exact
    /// heading.
    /// </summary>
    private static string NameOf(string written, HashSet<string> exact)
    {
        string key = Key(written);
        string name = Known.FirstOrDefault(known => Key(known) == key) ?? s_alike.GetValueOrDefault(key, "");
        return name == written || !exact.Contains(name) ? name : "";
    }

    private static IEnumerable<string> Known => s_columns.Keys.Concat(s_words);

    /// <summary>The known heading that differs by one or two letters; null when none does.</summary>
    private static string? Near(string written) =>
        Known
            .Where(name => name.Length > 3 && NearNames.Distance(Key(written), Key(name)) <= 2)
            .MinBy(name => NearNames.Distance(Key(written), Key(name)));

    private static string Key(string name)
    {
        string key = name.Length > 64 ? name[..64] : name;
        return string.Concat(key.Where(char.IsLetterOrDigit)).ToLowerInvariant();
    }

    /// <summary>A column: its known name or empty, its heading, and kind and unit of a quantity.</summary>
    internal sealed record Column(string Name, string Heading, QuantityKind? Kind, string Unit);

    [GeneratedRegex(@"^\s*([^\[\]]*?)\s*(?:\[\s*([^\]]*?)\s*\])?\s*$")]
    private static partial Regex Heading();
}
