using System.Text;

namespace Coilwright.Input;

/// <summary>
/// Splits a CSV text as RFC 4180 says: quotes doubled inside quotes, line ends inside quotes allowed. Cells are parted by commas, or by
/// semicolons where the first line has those.
/// </summary>
internal static class CsvCells
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

    /// <summary>
    /// Rows of cells with the line each begins on; spaces around unquoted cells go, blank lines are left out. Every letter is looked at
    /// once.
    /// </summary>
    public static IEnumerable<(int Line, string[] Cells)> Rows(string text)
    {
        char separator = SeparatorOf(text);
        List<string> cells = [];
        StringBuilder cell = new();
        bool quoted = false,
            wasQuoted = false,
            blank = true;
        int line = 1,
            first = 1;
        void EndCell()
        {
            cells.Add(wasQuoted ? cell.ToString() : cell.ToString().Trim());
            cell.Clear();
            (wasQuoted, blank) = (false, true);
        }

        for (int at = 0; at <= text.Length; at++)
        {
            char letter = at < text.Length ? text[at] : '\n';
            if (quoted && at < text.Length)
            {
                bool twice = letter == '"' && at + 1 < text.Length && text[at + 1] == '"';
                quoted = letter != '"' || twice;
                line += letter == '\n' ? 1 : 0;
                at += twice ? 1 : 0;
                _ = quoted ? cell.Append(letter) : cell;
            }
            else if (letter == '"' && blank && !wasQuoted)
            {
                cell.Clear();
                (quoted, wasQuoted) = (true, true);
            }
            else if (letter == separator)
            {
                EndCell();
            }
            else if (letter == '\n')
            {
                EndCell();
                if (cells.Exists(one => one.Length > 0))
                {
                    yield return (first, [.. cells]);
                }

                cells.Clear();
                first = ++line;
            }
            else if (letter != '\r')
            {
                cell.Append(letter);
                blank &= char.IsWhiteSpace(letter);
            }
        }
    }
}
