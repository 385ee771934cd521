using System.Text;

namespace Coilwright.Formats.Exports;

/// <summary>
/// Reads a CSV file record by record, exactly as it stands: cells parted by commas, quoted as RFC 4180 says, line ends inside quotes kept.
/// </summary>
/// <param name="text">The file.</param>
internal sealed class CsvRecords(TextReader text)
{
    private readonly StringBuilder _cell = new();
    private long _line = 1;

    /// <summary>The next record and the line it begins on; null at the end. A broken quote is told, and the record given up.</summary>
    public (long Line, IReadOnlyList<string> Cells, string Complaint)? Next()
    {
        if (text.Peek() < 0)
        {
            return null;
        }

        long line = _line;
        List<string> cells = [];
        while (true)
        {
            string complaint = Cell();
            cells.Add(_cell.ToString());
            if (complaint.Length > 0)
            {
                Skip();
                return (line, cells, complaint);
            }

            switch (text.Read())
            {
                case ',':
                    break;
                case '\r' when text.Peek() == '\n':
                    text.Read();
                    _line++;
                    return (line, cells, "");
                default: // a line feed, or the end of the file
                    _line++;
                    return (line, cells, "");
            }
        }
    }

    /// <summary>Reads one cell, up to what ends it.</summary>
    private string Cell()
    {
        _cell.Clear();
        if (text.Peek() == '"')
        {
            return QuotedCell();
        }

        while (!IsEnd(text.Peek()))
        {
            _cell.Append((char)text.Read());
        }

        return "";
    }

    private string QuotedCell()
    {
        text.Read();
        while (true)
        {
            int letter = text.Read();
            if (letter < 0)
            {
                return "a quote is opened here and never closed";
            }

            if (letter == '"')
            {
                if (text.Peek() != '"')
                {
                    return IsEnd(text.Peek()) ? "" : "something stands between the closing quote of a cell and the next comma";
                }

                text.Read();
            }

            _line += letter == '\n' ? 1 : 0;
            _cell.Append((char)letter);
        }
    }

    private static bool IsEnd(int letter) => letter is < 0 or ',' or '\n' or '\r';

    /// <summary>Goes to the next line.</summary>
    private void Skip()
    {
        while (text.Peek() >= 0 && text.Read() != '\n') { }

        _line++;
    }
}
