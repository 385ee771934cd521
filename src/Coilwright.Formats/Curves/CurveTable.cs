using System.Numerics;
using Coilwright.Analysis.Curves;
using Coilwright.Workshop.Entry;

namespace Coilwright.Formats.Curves;

/// <summary>A measured curve as read from a table, with how it was understood.</summary>
/// <param name="Curve">The curve.</param>
/// <param name="Delimiter">What parted the cells, in words.</param>
/// <param name="Decimal">Decimal mark, in words.</param>
/// <param name="Columns">Each column as it was understood.</param>
public sealed record CurveTable(MeasuredCurve Curve, string Delimiter, string Decimal, IReadOnlyList<string> Columns)
{
    /// <summary>Fewest points a curve needs: more figures than the simplest pickup has parts.</summary>
    public const int FewestPoints = 4;

    private const int MostPoints = 200_000;
    private const int MostProblems = 200;

    /// <summary>
    /// Reads a table of frequency with gain, or with complex impedance: the curve, or every problem with its line and column. Nothing is
    /// imported unless everything is.
    /// </summary>
    public static ReadOutcome<CurveTable> Read(string text)
    {
        CurveLines lines = CurveLines.Of(text);
        List<Problem> problems = [.. lines.Problems];
        CurveColumns columns = CurveColumns.Of(lines, problems);
        List<CurveRow> rows = problems.Count == 0 ? ReadRows(lines, columns, problems) : [];
        if (problems.Count == 0 && rows.Count < FewestPoints)
        {
            problems.Add(new Problem("", "a curve needs more points", $"{rows.Count} of them", $"at least {FewestPoints}"));
        }

        if (problems.Count > MostProblems)
        {
            int more = problems.Count - MostProblems;
            problems.RemoveRange(MostProblems, more);
            problems.Add(new Problem("", $"and {more} more problems like these"));
        }

        return problems.Count == 0
            ? new ReadOutcome<CurveTable>(new CurveTable(CurveOf(rows, columns), lines.DelimiterWord, lines.DecimalWord, columns.Echo), [])
            : new ReadOutcome<CurveTable>(null, problems);
    }

    private static List<CurveRow> ReadRows(CurveLines lines, CurveColumns columns, List<Problem> problems)
    {
        List<CurveRow> rows = [];
        double last = 0;
        int lastLine = 0;
        if (lines.Rows.Count > MostPoints)
        {
            problems.Add(new Problem("", "the table is too long", $"{lines.Rows.Count} lines", $"at most {MostPoints}"));
            return rows;
        }

        foreach ((int line, string[] cells) in lines.Rows)
        {
            if (cells.Length > columns.Count)
            {
                problems.Add(
                    new Problem($"line {line}", "more cells than the header has columns", $"{cells.Length}", $"up to {columns.Count}")
                );
                continue;
            }

            CurveRow row = new(columns, line, cells, lines.CommaIsDecimal, problems);
            double hz = row.Value(CurveColumn.Frequency);
            if (!double.IsNaN(hz))
            {
                CheckOrder(hz, last, line, lastLine, columns, problems);
                (last, lastLine) = (hz, line);
            }

            rows.Add(row);
        }

        return rows;
    }

    private static void CheckOrder(double hz, double last, int line, int lastLine, CurveColumns columns, List<Problem> problems)
    {
        string place = columns.Place(line, CurveColumn.Frequency);
        if (hz is <= 0 or > 1e9)
        {
            problems.Add(new Problem(place, "this is no frequency", FormattableString.Invariant($"{hz} Hz"), "above 0, up to 1 GHz"));
        }
        else if (lastLine > 0 && hz <= last)
        {
            problems.Add(
                hz < last
                    ? new Problem(
                        place,
                        $"the frequencies must rise; this one lies below that of line {lastLine}",
                        FormattableString.Invariant($"{hz} Hz after {last} Hz")
                    )
                    : new Problem(place, $"this frequency stands in line {lastLine} too", FormattableString.Invariant($"{hz} Hz"))
            );
        }
    }

    private static MeasuredCurve CurveOf(List<CurveRow> rows, CurveColumns columns)
    {
        double[] Column(CurveColumn column) => [.. rows.Select(row => row.Value(column))];
        MeasuredCurve curve = new(Column(CurveColumn.Frequency));
        if (columns.Has(CurveColumn.Real))
        {
            return curve with
            {
                ImpedanceOhm = [.. rows.Select(row => new Complex(row.Value(CurveColumn.Real), row.Value(CurveColumn.Imaginary)))],
            };
        }

        if (columns.Has(CurveColumn.Impedance))
        {
            return curve with
            {
                ImpedanceOhm =
                [
                    .. rows.Select(row =>
                        Complex.FromPolarCoordinates(row.Value(CurveColumn.Impedance), row.Value(CurveColumn.Phase) * Math.PI / 180)
                    ),
                ],
            };
        }

        return curve with
        {
            GainDb = Column(CurveColumn.Gain),
            PhaseDegrees = columns.Has(CurveColumn.Phase) ? Column(CurveColumn.Phase) : null,
        };
    }
}
