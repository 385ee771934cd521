using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Curves;

/// <summary>One line of a measured curve; a cell that is no number is told and counts as unknown.</summary>
internal sealed class CurveRow
{
    private readonly Dictionary<CurveColumn, double> _values = [];

    public CurveRow(CurveColumns columns, int line, string[] cells, bool commaIsDecimal, List<Problem> problems)
    {
        foreach (CurveColumn column in columns.Needed)
        {
            (int index, double scale, bool ratio) = columns[column];
            string cell = index < cells.Length ? cells[index] : "";
            double value = Number(cell, commaIsDecimal);
            if (!double.IsFinite(value))
            {
                problems.Add(cell.Length == 0
                    ? new Problem(columns.Place(line, column), column == CurveColumn.Phase ? "the phase is missing" : "the number is missing")
                    : new Problem(columns.Place(line, column), $"\"{cell}\" is not a number"));
            }
            else if ((ratio || column == CurveColumn.Impedance) && value <= 0)
            {
                problems.Add(new Problem(columns.Place(line, column), "this must be above 0", cell));
            }

            else if (Math.Abs(column == CurveColumn.Gain && ratio ? 20 * Math.Log10(value) : value * scale) > Most(column))
            {
                problems.Add(new Problem(columns.Place(line, column), "outside what an instrument reads", cell, Range(column)));
            }

            _values[column] = !double.IsFinite(value) ? double.NaN : ratio ? 20 * Math.Log10(value) : value * scale;
        }

        if (columns.Has(CurveColumn.Real) && columns.Has(CurveColumn.Imaginary) && Math.Abs(Value(CurveColumn.Real)) + Math.Abs(Value(CurveColumn.Imaginary)) <= 0)
        {
            problems.Add(new Problem(columns.Place(line, CurveColumn.Real), "an impedance of 0 Ω was not measured on a pickup"));
        }
    }

    /// <summary>Largest amount of a column: dB, degrees, ohms. Wide, so that only slips of the file are refused.</summary>
    private static double Most(CurveColumn column) => column switch
    {
        CurveColumn.Gain => 240,
        CurveColumn.Phase => 36_000,
        CurveColumn.Frequency => double.PositiveInfinity,
        _ => 1e12,
    };

    private static string Range(CurveColumn column) => column switch
    {
        CurveColumn.Gain => "-240 to 240 dB",
        CurveColumn.Phase => "-36000 to 36000 degrees",
        _ => "up to 1 TΩ",
    };

    public double Value(CurveColumn column) => _values.GetValueOrDefault(column, double.NaN);

    private static double Number(string cell, bool commaIsDecimal)
    {
        string text = (commaIsDecimal ? cell.Replace(',', '.') : cell).Replace('\u2212', '-');
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) ? value : double.NaN;
    }
}
