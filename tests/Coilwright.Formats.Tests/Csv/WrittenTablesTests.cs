using System.Globalization;
using Coilwright.Formats.Judgements;
using Coilwright.Formats.Responses;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Readings;

namespace Coilwright.Formats.Tests.Csv;

/// <summary>Tables that the pages give out are opened in spreadsheets.</summary>
public sealed class WrittenTablesTests
{
    [Fact]
    public void Drawn_coils_stand_with_all_their_charts_and_no_name_is_run()
    {
        DateTimeOffset begun = new(2026, 12, 1, 8, 0, 0, TimeSpan.Zero);
        ChartedCoil[] points =
        [
            .. Enumerable
                .Range(0, 30)
                .Select(at => new ChartedCoil($"C-{at:000}", 6180 + at % 7, "H-12", at == 4 ? "=1+1" : "Ada, Ben", begun.AddMinutes(at))),
        ];
        ControlChart wall = ControlChartBuilder.Build(new ChartSettings(), points, new Band(6180, 5933, 6427, IsTarget: true))!;

        string[] lines = ControlChartCsv.Write(wall).Split('\n');

        Assert.StartsWith("batch,tag,dcResistance [Ω],person,time,left out,temperature known,", lines[0], StringComparison.Ordinal);
        Assert.EndsWith(",signals", lines[0], StringComparison.Ordinal);
        Assert.Equal((32, ""), (lines.Length, lines[^1]));
        Assert.StartsWith(
            "H-12,C-003,6183,\"Ada, Ben\",2026-12-01T08:03:00.0000000+00:00,,yes,6183,1,",
            lines[4],
            StringComparison.Ordinal
        );
        Assert.StartsWith("H-12,C-004,6184,'=1+1,", lines[5], StringComparison.Ordinal);
        int width = lines[0].Count(letter => letter == ',');
        Assert.Equal(width, lines[5].Count(letter => letter == ','));
        foreach (ChartSeries chart in wall.Charts.Where(chart => chart.Second is null))
        {
            int column = Array.IndexOf(lines[0].Split(','), chart.Name);
            int last = chart.Places[^1];
            string[] cells = lines[last + 1].Replace("Ada, Ben", "Ada", StringComparison.Ordinal).Split(',');
            Assert.Equal(chart.Values[^1].ToString("G9", CultureInfo.InvariantCulture), cells[column]);
        }
    }

    [Fact]
    public void A_curve_s_name_with_a_comma_stays_one_heading_and_a_gap_stays_empty()
    {
        string table = ResponseCsv.Write([20, 1000], [("Pier, loaded", [-0.03, null])]);

        Assert.Equal("frequency [Hz],\"gain Pier, loaded [dB]\"\n20,-0.0300\n1000,\n", table);
    }
}
