using System.Globalization;
using Coilwright.Analysis.Charts;

namespace Coilwright.Analysis.Tests.Charts;

public sealed class ChartConstantsTests
{
    /// <summary>
    /// Printed figures that integration contradicts. Each is named; everything else must agree to half of its last printed digit.
    /// </summary>
    private static readonly string[] s_misprints = ["D4 of 3", "D4 of 18", "d3 of 19", "D4 of 19", "D4 of 22", "d3 of 23"];

    [Fact]
    public void Every_printed_factor_is_met_except_the_known_slips()
    {
        string[] lines = [.. File.ReadAllLines(ChartReference.PathOf("constants.csv")).Where(line => line.Length > 0 && line[0] != '#')];
        List<string> slips = [];
        Evidence exact = Evidence.Outside(
            "Chart constants d2, d3, c4, A2, A3, B4, D4 for 2 to 25 values",
            "numerical integration outside this program: tests/Reference/charts/constants.csv",
            "derived",
            "rounding: of ten decimals, and of the quadrature"
        );
        Evidence table = Evidence.Outside(
            "Chart constants as printed, but for six slips",
            "ASTM table of factors, in two reproductions [ChartFactors]",
            "read-secondary",
            "rounding: half the last printed digit"
        );
        foreach (string[] row in lines.Skip(1).Select(line => line.Split(',')))
        {
            ChartConstants ours = ChartConstants.ForSize(int.Parse(row[0], CultureInfo.InvariantCulture));
            double[] values = [ours.D2, ours.D3, ours.C4, ours.A2, ours.A3, ours.B4, ours.UpperRange];
            string[] names = ["d2", "d3", "c4", "A2", "A3", "B4", "D4"];
            for (int n = 0; n < values.Length; n++)
            {
                string printed = row[1 + 2 * n];
                exact.Within(values[n], double.Parse(row[2 + 2 * n], CultureInfo.InvariantCulture), 2e-8, at: names[n]);
                string name = $"{names[n]} of {row[0]}";
                if (
                    printed == "*"
                    || (
                        printed.Length > 0 && Math.Abs(double.Parse(printed, CultureInfo.InvariantCulture) - values[n]) > HalfDigit(printed)
                    )
                )
                {
                    slips.Add(name);
                }
                else if (printed.Length > 0)
                {
                    table.Within(values[n], double.Parse(printed, CultureInfo.InvariantCulture), HalfDigit(printed), at: name);
                }
            }
        }

        Assert.Equal(s_misprints, slips);
        exact.Record();
        table.Record($"slips of the table: {string.Join(", ", slips)}");
    }

    private static double HalfDigit(string printed) =>
        0.5001 * Math.Pow(10, -(printed.Length - printed.IndexOf('.', StringComparison.Ordinal) - 1));
}
