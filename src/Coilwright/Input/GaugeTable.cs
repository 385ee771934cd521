using System.Globalization;
using System.Text.RegularExpressions;
using Coilwright.Analysis.GaugeStudies;
using Coilwright.Workshop.Entry;

namespace Coilwright.Input;

/// <summary>Readings of a gauge study in the unit of their column.</summary>
/// <param name="Readings">Every reading.</param>
/// <param name="References">What each reading should have been, where the table says so; as many as readings, or none.</param>
/// <param name="Unit">Unit of the column, or empty.</param>
public sealed partial record GaugeTable(IReadOnlyList<GaugeReading> Readings, IReadOnlyList<double> References, string Unit)
{
    /// <summary>Reads a table: part,person,value [unit],reference; part, person and reference may be left out.</summary>
    public static ReadOutcome<GaugeTable> Read(string text)
    {
        List<Problem> problems = [];
        (int Line, string[] Cells)[] lines = [.. CsvText.Rows(text)];
        string[] header = lines.Length > 0 ? lines[0].Cells : [];
        Match[] names = [.. header.Select(cell => Heading().Match(cell))];
        int Place(string name) => Array.FindIndex(names, match => match.Groups[1].Value == name);
        int value = Place("value"), part = Place("part"), person = Place("person"), reference = Place("reference");
        if (value < 0)
        {
            return new ReadOutcome<GaugeTable>(null, [new Problem("line 1", "there is no column \"value\"", string.Join(", ", header), "part,person,value [kΩ],reference")]);
        }

        List<GaugeReading> readings = [];
        List<double> references = [];
        foreach ((int line, string[] cells) in lines.Skip(1))
        {
            string Cell(int place) => place >= 0 && place < cells.Length ? cells[place] : "";
            double Number(int place, string name)
            {
                if (!double.TryParse(Cell(place), NumberStyles.Float, CultureInfo.InvariantCulture, out double number) || !double.IsFinite(number))
                {
                    problems.Add(new Problem(string.Create(CultureInfo.InvariantCulture, $"line {line}, {name}"), $"\"{Cell(place)}\" is not a number", Allowed: "a number"));
                }

                return number;
            }

            readings.Add(new GaugeReading(Cell(part), Cell(person), Number(value, "value")));
            if (reference >= 0)
            {
                references.Add(Number(reference, "reference"));
            }
        }

        return new ReadOutcome<GaugeTable>(problems.Count == 0 ? new GaugeTable(readings, references, names[value].Groups[2].Value) : null, problems);
    }

    [GeneratedRegex(@"^\s*([^\[\]]*?)\s*(?:\[\s*([^\]]*?)\s*\])?\s*$")]
    private static partial Regex Heading();
}
