using System.Globalization;

namespace Coilwright.Physics.Tests.Wire;

/// <summary>
/// Rows of a reference file: lines with # are remarks, the first other line names the columns, an empty cell is NaN as a number.
/// </summary>
internal static class ReferenceRows
{
    public static IReadOnlyList<Dictionary<string, string>> Read(string name)
    {
        string[] rows =
        [
            .. File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Reference", "wire", name)).Where(l => l.Length > 0 && l[0] != '#'),
        ];
        string[] names = rows[0].Split(',');
        return [.. rows.Skip(1).Select(row => names.Zip(row.Split(',')).ToDictionary(p => p.First, p => p.Second))];
    }

    public static double Number(this Dictionary<string, string> row, string column) =>
        row[column].Length == 0 ? double.NaN : double.Parse(row[column], NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>Asserts nearness and gives the relative difference found.</summary>
    public static double Near(double expected, double actual, double fraction, string what)
    {
        Assert.True(
            Math.Abs(actual - expected) <= fraction * Math.Abs(expected),
            FormattableString.Invariant($"{what}: expected {expected}, got {actual}.")
        );
        return Math.Abs(actual - expected) / Math.Abs(expected);
    }
}
