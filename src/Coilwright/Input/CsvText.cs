using System.Text;

namespace Coilwright.Input;

/// <summary>Splits a CSV text as RFC 4180 says: commas, quotes doubled inside quotes, line ends inside quotes allowed.</summary>
internal static class CsvText
{
    /// <summary>Rows of cells with the line each begins on; spaces around unquoted cells go, blank lines are left out.</summary>
    public static IEnumerable<(int Line, string[] Cells)> Rows(string text)
    {
        List<string> cells = [];
        StringBuilder cell = new();
        bool quoted = false, wasQuoted = false;
        int line = 1, first = 1;
        void EndCell()
        {
            cells.Add(wasQuoted ? cell.ToString() : cell.ToString().Trim());
            cell.Clear();
            wasQuoted = false;
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
            else if (letter == '"' && cell.ToString().Trim().Length == 0 && !wasQuoted)
            {
                cell.Clear();
                (quoted, wasQuoted) = (true, true);
            }
            else if (letter == ',')
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
            }
        }
    }
}
