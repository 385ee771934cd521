using System.Globalization;
using CsvHelper;

namespace Coilwright.Formats.Csv;

/// <summary>
/// A table as CSV: cells parted by commas, quoted where they must be, lines ended by a line feed. A cell that a spreadsheet would run as a
/// formula gets an apostrophe in front, unless it is a number.
/// </summary>
/// <param name="header">Names of the columns, with their units.</param>
public sealed class CsvTable(params IReadOnlyList<string> header)
{
    /// <summary>With these a spreadsheet's formula begins, and with white space that it takes away.</summary>
    private const string Runs = "=+-@\t\r";

    private static readonly CsvWriterOptions s_form = new() { NewLine = "\n" };

    private readonly List<IReadOnlyList<string>> _rows = [header];

    /// <summary>One more row, as long as the header.</summary>
    public void Add(params IReadOnlyList<string> cells) => _rows.Add(cells);

    /// <summary>The table as a text; its last line ends too.</summary>
    public override string ToString()
    {
        using StringWriter text = new(CultureInfo.InvariantCulture);
        using (CsvWriter csv = CsvWriter.Create(text, s_form, leaveOpen: true))
        {
            foreach (IReadOnlyList<string> row in _rows)
            {
                csv.WriteRecord([.. row.Select(Guarded)]);
            }
        }

        return text.ToString();
    }

    private static string Guarded(string cell) =>
        cell.Length > 0 && Runs.Contains(cell[0], StringComparison.Ordinal) && !IsNumber(cell) ? "'" + cell : cell;

    private static bool IsNumber(string cell) => double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out _);
}
