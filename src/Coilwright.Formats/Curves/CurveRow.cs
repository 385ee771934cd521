using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Formats.Curves;

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
                string missing = column == CurveColumn.Phase ? "the phase is missing" : "the number is missing";
                problems.Add(new Problem(columns.Place(line, column), cell.Length == 0 ? missing : $"\"{cell}\" is not a number"));
            }
            else if ((ratio || column == CurveColumn.Impedance) && value <= 0)
            {
                problems.Add(new Problem(columns.Place(line, column), "this must be above 0", cell));
            }
            else if (Beyond(column, ratio, value * scale) is { } allowed)
            {
                problems.Add(new Problem(columns.Place(line, column), "no instrument measures this on a pickup", cell, allowed));
                value = double.NaN;
            }

            double si = ratio ? 20 * Math.Log10(value) : value * scale;
            _values[column] = double.IsFinite(value) ? si : double.NaN;
        }

        if (
            columns.Has(CurveColumn.Real)
            && columns.Has(CurveColumn.Imaginary)
            && Math.Abs(Value(CurveColumn.Real)) + Math.Abs(Value(CurveColumn.Imaginary)) <= 0
        )
        {
            problems.Add(new Problem(columns.Place(line, CurveColumn.Real), "an impedance of 0 Ω was not measured on a pickup"));
        }
    }

    public double Value(CurveColumn column) => _values.GetValueOrDefault(column, double.NaN);

    /// <summary>The range of a column when a value lies outside of it; far wider than any instrument's.</summary>
    private static string? Beyond(CurveColumn column, bool ratio, double value) =>
        column switch
        {
            CurveColumn.Frequency => value <= 1e9 ? null : "up to 1 GHz",
            CurveColumn.Phase => Math.Abs(value) <= 1e6 ? null : "-1,000,000 to 1,000,000 degrees",
            CurveColumn.Gain when ratio => value is >= 1e-12 and <= 1e12 ? null : "1e-12 to 1e12",
            CurveColumn.Gain => Math.Abs(value) <= 240 ? null : "-240 to 240 dB",
            _ => Math.Abs(value) <= 1e12 ? null : "up to 1,000 GΩ",
        };

    private static double Number(string cell, bool commaIsDecimal)
    {
        string text = (commaIsDecimal ? cell.Replace(',', '.') : cell).Replace('\u2212', '-');
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) ? value : double.NaN;
    }
}
