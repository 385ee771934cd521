using System.Globalization;
using Coilwright.Formats.Csv;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Notes;

namespace Coilwright.Formats.Notes;

/// <summary>Somebody's old notes of coils: a CSV table with any headings, parted by commas or semicolons.</summary>
public sealed partial class NoteTable
{
    /// <summary>Most coils of one table.</summary>
    public const int MostCoils = 10_000;

    /// <summary>Said for a column that is to be left aside.</summary>
    public const string LeftAside = "-";

    private const int MostExamples = 3;

    private static readonly string[] s_days = ["yyyy-MM-dd", "yyyy/MM/dd", "d.M.yyyy"];
    private static readonly string[] s_hours = ["", " HH:mm", " H:mm", "'T'HH:mm", " HH:mm:ss", "'T'HH:mm:ss"];

    private readonly List<Problem> _problems = [];
    private readonly (int Line, string[] Cells)[] _lines;
    private readonly TableNumbers _numbers;

    /// <summary>Reads the headings of a table and understands them.</summary>
    /// <param name="text">The table.</param>
    /// <param name="said">
    /// What a person said of columns, by heading: a role's key, with a unit in brackets, or <see cref="LeftAside"/>.</param>
    public NoteTable(string text, IReadOnlyList<(string Header, string Meaning)> said)
    {
        _lines = [.. CsvCells.Rows(text).Take(MostCoils + 2)];
        _numbers = TableNumbers.Of(text);
        if (_lines.Length == 0)
        {
            _problems.Add(new Problem("line 1", "the table is empty; a line of headings is needed"));
            return;
        }

        if (_lines.Length > MostCoils + 1)
        {
            _problems.Add(new Problem("", "too many coils for one batch", null, CountParser.Range(1, MostCoils) + " coils"));
        }

        Columns = Understand(_lines[0].Cells, said);
        Require();
    }

    /// <summary>Every column, and what it is read as.</summary>
    public IReadOnlyList<NoteColumn> Columns { get; } = [];

    /// <summary>What is wrong with the headings, or with what was said of them.</summary>
    public IReadOnlyList<Problem> Problems => _problems;

    /// <summary>Lines below the headings.</summary>
    public int Lines => Math.Max(0, _lines.Length - 1);

    /// <summary>True where semicolons part the columns and a comma is the decimal sign.</summary>
    public bool CommaIsDecimal => _numbers.CommaIsDecimal;

    /// <summary>The coils, each cell as a person would type it.</summary>
    /// <param name="zone">Where times of the notes were.</param>
    /// <param name="nowUtc">No note is later.</param>
    /// <param name="problems">Takes what is wrong, with line and heading.</param>
    public IReadOnlyList<CoilNote> Read(TimeZoneInfo zone, DateTimeOffset nowUtc, ICollection<Problem> problems)
    {
        List<CoilNote> notes = [];
        foreach ((int line, string[] cells) in _lines.Skip(1))
        {
            if (cells.Length > Columns.Count)
            {
                problems.Add(
                    new Problem(
                        string.Create(CultureInfo.InvariantCulture, $"line {line}"),
                        "more cells than there are headings",
                        string.Create(CultureInfo.InvariantCulture, $"{cells.Length}"),
                        string.Create(CultureInfo.InvariantCulture, $"up to {Columns.Count}")
                    )
                );
            }

            notes.Add(Note(line, cells, zone, nowUtc, problems));
        }

        return notes;
    }

    private CoilNote Note(int line, string[] cells, TimeZoneInfo zone, DateTimeOffset nowUtc, ICollection<Problem> problems)
    {
        Dictionary<string, NoteCell> read = new(StringComparer.Ordinal);
        DateTimeOffset? time = null;
        for (int at = 0; at < Columns.Count; at++)
        {
            NoteColumn column = Columns[at];
            string cell = at < cells.Length ? cells[at] : "";
            if (column.Role is not { } role || (role == NoteRole.Time && cell.Length == 0))
            {
                continue;
            }

            string field = string.Create(CultureInfo.InvariantCulture, $"line {line}, {column.Header}");
            if (role == NoteRole.Time)
            {
                time = Time(cell, zone, nowUtc, field, problems);
            }
            else
            {
                read[role.Key] = new NoteCell(column.Header, cell, Typed(column, role, cell, field, problems));
            }
        }

        return new CoilNote(line, read, time);
    }

    private string Typed(NoteColumn column, NoteRole role, string cell, string field, ICollection<Problem> problems)
    {
        if (role.Kind is null or QuantityKind.Turns || cell.Length == 0 || QuantityParser.IsOpen(cell))
        {
            return cell; // in a count a point and a comma part thousands, in any table
        }

        if (_numbers.Plain(cell, isCount: false, out string why) is not { } plain)
        {
            problems.Add(new Problem(field, why, cell));
            return "";
        }

        bool isBare = plain.Trim().All(letter => char.IsAsciiDigit(letter) || letter is '.' or '+' or '-' or ' ');
        return isBare && column.Unit.Length > 0 ? $"{plain} {column.Unit}" : plain;
    }

    private static DateTimeOffset? Time(string cell, TimeZoneInfo zone, DateTimeOffset nowUtc, string field, ICollection<Problem> problems)
    {
        string[] forms = [.. s_days.SelectMany(day => s_hours.Select(hour => day + hour))];
        if (!DateTime.TryParseExact(cell, forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTime local))
        {
            problems.Add(
                new Problem(
                    field,
                    "this time cannot be read, or can mean two days",
                    cell,
                    "for example 2024-03-05, 2024-03-05 14:30 or 5.3.2024"
                )
            );
            return null;
        }

        DateTimeOffset utc = new DateTimeOffset(local, zone.GetUtcOffset(local)).ToUniversalTime();
        if (utc > nowUtc)
        {
            problems.Add(new Problem(field, "this time is still to come", cell, "up to now"));
        }

        return utc;
    }
}
