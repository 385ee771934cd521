using CsvHelper;

namespace Coilwright.Formats.Csv;

/// <summary>
/// Splits a CSV text as RFC 4180 says: quotes doubled inside quotes, line ends inside quotes allowed. Cells are parted by commas, or by
/// semicolons where the first line has those.
/// </summary>
public static class CsvCells
{
    /// <summary>
    /// The separator of a table: a semicolon where its first line has semicolons outside quotes and no comma there, as programs write it
    /// whose decimal sign is a comma.
    /// </summary>
    public static char SeparatorOf(string text)
    {
        bool quoted = false,
            semicolons = false;
        foreach (char letter in text.AsSpan().TrimStart())
        {
            if (letter is '\n' or ',' && !quoted)
            {
                return letter == '\n' && semicolons ? ';' : ',';
            }

            quoted ^= letter == '"';
            semicolons |= letter == ';' && !quoted;
        }

        return semicolons ? ';' : ',';
    }

    /// <summary>Rows of cells with the line each begins on; white space around cells goes, blank lines are left out.</summary>
    public static IEnumerable<(int Line, string[] Cells)> Rows(string text)
    {
        CsvReaderOptions form = new()
        {
            Separator = SeparatorOf(text),
            HasHeader = false,
            TrimWhitespace = true,
            TrackLineNumbers = true,
        };
        using CsvReader reader = CsvReader.FromText(text, form);
        while (reader.Read())
        {
            string[] cells = [.. Enumerable.Range(0, reader.FieldCount).Select(at => reader.GetString(at).Trim())];
            if (Array.Exists(cells, one => one.Length > 0))
            {
                yield return ((int)reader.LineNumber, cells);
            }
        }
    }
}
