using System.Globalization;
using System.Text.RegularExpressions;
using Coilwright.Analysis.GaugeStudies;
using Coilwright.Formats.Csv;
using Coilwright.Workshop.Entry;

namespace Coilwright.Formats.Tables;

/// <summary>Readings of a gauge study in the unit of their column.</summary>
/// <param name="Readings">Every reading.</param>
/// <param name="References">What each reading should have been, where the table says so; as many as readings, or none.</param>
/// <param name="Unit">Unit of the column, or empty.</param>
public sealed partial record GaugeTable(IReadOnlyList<GaugeReading> Readings, IReadOnlyList<double> References, string Unit)
{
    /// <summary>Most readings of one study.</summary>
    public const int MostRows = 20_000;

    /// <summary>Far beyond what any gauge shows, in whatever unit: larger is a slip of the keyboard.</summary>
    public const double LargestValue = 1e12;

    /// <summary>The range in words.</summary>
    public const string AllowedValues = "a number from -1,000,000,000,000 to 1,000,000,000,000";

    /// <summary>Reads a table: part,person,value [unit],reference; part, person and reference may be left out.</summary>
    public static ReadOutcome<GaugeTable> Read(string text)
    {
        List<Problem> problems = [];
        TableNumbers numbers = TableNumbers.Of(text);
        (int Line, string[] Cells)[] lines = [.. CsvCells.Rows(text).Take(MostRows + 2)];
        string[] header = lines.Length > 0 ? lines[0].Cells : [];
        Match[] names = [.. header.Select(cell => Heading().Match(cell))];
        int Place(string name) => Array.FindIndex(names, match => match.Groups[1].Value == name);
        int value = Place("value"),
            part = Place("part"),
            person = Place("person"),
            reference = Place("reference");
        if (value < 0)
        {
            return new ReadOutcome<GaugeTable>(
                null,
                [new Problem("line 1", "there is no column \"value\"", string.Join(", ", header), "part,person,value [kΩ],reference")]
            );
        }

        if (lines.Length > MostRows + 1)
        {
            return new ReadOutcome<GaugeTable>(
                null,
                [new Problem("", "this table is too long for a gauge study", null, CountParser.Range(2, MostRows) + " readings")]
            );
        }

        List<GaugeReading> readings = [];
        List<double> references = [];
        foreach ((int line, string[] cells) in lines.Skip(1))
        {
            string Cell(int place) => place >= 0 && place < cells.Length ? cells[place] : "";
            double Number(int place, string name)
            {
                if (!numbers.TryNumber(Cell(place), out double number, out string why) || Math.Abs(number) > LargestValue)
                {
                    problems.Add(
                        new Problem(
                            string.Create(CultureInfo.InvariantCulture, $"line {line}, {name}"),
                            why.Length > 0 ? why : "no gauge shows this",
                            Cell(place),
                            AllowedValues
                        )
                    );
                }

                return number;
            }

            readings.Add(new GaugeReading(Cell(part), Cell(person), Number(value, "value")));
            if (reference >= 0)
            {
                references.Add(Number(reference, "reference"));
            }
        }

        return new ReadOutcome<GaugeTable>(
            problems.Count == 0 ? new GaugeTable(readings, references, names[value].Groups[2].Value) : null,
            problems
        );
    }

    [GeneratedRegex(@"^\s*([^\[\]]*?)\s*(?:\[\s*([^\]]*?)\s*\])?\s*$")]
    private static partial Regex Heading();
}
