using System.Globalization;
using System.Text;

namespace Coilwright.Output;

/// <summary>A table for people: columns lined up by what is seen, not by how many code units it takes.</summary>
public sealed class Table(params string[] headings)
{
    private readonly List<string[]> _rows = [];

    public void Add(params string[] cells) => _rows.Add(cells);

    /// <summary>Writes the heading and every row, two spaces between columns.</summary>
    public void Write(TextWriter writer, string indent = "  ")
    {
        int[] widths = [.. headings.Select((heading, column) => _rows.Select(row => Width(row[column])).Append(Width(heading)).Max())];
        writer.WriteLine(Line(headings, widths, indent));
        foreach (string[] row in _rows)
        {
            writer.WriteLine(Line(row, widths, indent));
        }
    }

    private static string Line(string[] cells, int[] widths, string indent)
    {
        StringBuilder line = new(indent);
        for (int column = 0; column < cells.Length; column++)
        {
            line.Append(cells[column]).Append(' ', widths[column] - Width(cells[column]) + 2);
        }

        return line.ToString().TrimEnd();
    }

    private static int Width(string text) => new StringInfo(text).LengthInTextElements;
}
