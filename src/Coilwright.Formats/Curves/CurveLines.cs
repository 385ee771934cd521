using System.Text;
using Coilwright.Workshop.Entry;

namespace Coilwright.Formats.Curves;

/// <summary>A table split into header and rows, once delimiter and decimal mark are recognised.</summary>
internal sealed class CurveLines
{
    private static readonly (char Sign, string Word)[] s_delimiters = [('\t', "tab"), (';', "semicolon"), (',', "comma")];
    private readonly char _delimiter;

    private CurveLines(string text)
    {
        List<(int Number, string Text)> lines = [];
        string[] all = text.TrimStart('\uFEFF').Split('\n');
        (int Number, string Text)? lastRemark = null;
        for (int i = 0; i < all.Length; i++)
        {
            string line = all[i].TrimEnd('\r');
            if (line.TrimStart() is ['#' or '*', ..] remark)
            {
                lastRemark = lines.Count == 0 ? (i + 1, remark.TrimStart('#', '*', ' ')) : lastRemark;
            }
            else if (line.Trim().Length > 0)
            {
                lines.Add((i + 1, line));
            }
        }

        // Some instruments write their header as a remark.
        if (lines.Count > 0 && lastRemark is { } header && !lines[0].Text.Any(char.IsLetter) && header.Text.Any(char.IsLetter))
        {
            lines.Insert(0, header);
        }

        if (lines.Count == 0)
        {
            Problems.Add(
                new Problem(
                    "line 1",
                    "the table is empty; a header is needed",
                    Allowed: "frequency [Hz],gain [dB] or frequency [Hz],real [Ω],imaginary [Ω]"
                )
            );
            return;
        }

        (_delimiter, DelimiterWord) = s_delimiters
            .OrderByDescending(one => Split(lines[0].Text, one.Sign).Length)
            .ThenBy(one => one.Sign == ',')
            .First();
        (HeaderLine, Header) = (lines[0].Number, Split(lines[0].Text, _delimiter));
        Rows = [.. lines.Skip(1).Select(line => (line.Number, Split(line.Text, _delimiter)))];
        FindDecimal();
    }

    public List<Problem> Problems { get; } = [];

    public string DelimiterWord { get; } = "";

    public bool CommaIsDecimal { get; private set; }

    public string DecimalWord => CommaIsDecimal ? "comma" : "point";

    public int HeaderLine { get; }

    public string[] Header { get; } = [];

    public IReadOnlyList<(int Line, string[] Cells)> Rows { get; } = [];

    public static CurveLines Of(string text) => new(text);

    private void FindDecimal()
    {
        if (_delimiter == ',')
        {
            return;
        }

        (int Line, string Cell)[] numbers =
        [
            .. Rows.SelectMany(row =>
                row.Cells.Where(cell =>
                        cell.Any(char.IsAsciiDigit) && !cell.Any(letter => char.IsLetter(letter) && letter is not 'e' and not 'E')
                    )
                    .Select(cell => (row.Line, cell))
            ),
        ];
        (int Line, string Cell) comma = numbers.FirstOrDefault(one => one.Cell.Contains(',', StringComparison.Ordinal)),
            point = numbers.FirstOrDefault(one => one.Cell.Contains('.', StringComparison.Ordinal));
        CommaIsDecimal = comma.Cell is not null && point.Cell is null;
        if (comma.Cell is not null && point.Cell is not null)
        {
            Problems.Add(
                new Problem(
                    $"line {comma.Line}",
                    $"\"{comma.Cell}\" has a comma, line {point.Line} has a point in \"{point.Cell}\"; one decimal mark is needed, "
                        + $"and none between thousands"
                )
            );
        }
    }

    /// <summary>Cells of a line; a delimiter inside quotes does not part them.</summary>
    private static string[] Split(string line, char delimiter)
    {
        List<string> cells = [];
        StringBuilder cell = new();
        bool quoted = false;
        foreach (char letter in line)
        {
            if (letter == '"')
            {
                quoted = !quoted;
            }
            else if (letter == delimiter && !quoted)
            {
                cells.Add(cell.ToString().Trim());
                cell.Clear();
            }
            else
            {
                cell.Append(letter);
            }
        }

        cells.Add(cell.ToString().Trim());
        return [.. cells];
    }
}
