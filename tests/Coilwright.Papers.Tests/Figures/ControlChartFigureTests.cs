using System.Xml.Linq;
using Coilwright.Papers.Figures;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Readings;

namespace Coilwright.Papers.Tests.Figures;

public sealed class ControlChartFigureTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Every_signal_has_a_mark_that_names_its_coil_and_rule()
    {
        ControlChart wall = Drifting(80);
        ChartSignal[] signals = [.. wall.Signals.Where(signal => signal.Chart == ControlChart.Individuals)];
        Assert.NotEmpty(signals);
        XElement figure = Draw(wall, ControlChart.Individuals);
        string[] titles =
        [
            .. figure
                .Descendants(Svg + "g")
                .Where(mark => mark.Attribute("class")?.Value == "signal")
                .Select(mark => mark.Element(Svg + "title")!.Value),
        ];
        Assert.Equal(
            signals.Select(signal => $"{signal.Tag}: {signal.Rule}").Order(StringComparer.Ordinal),
            titles.Where(title => !title.Contains("left out", StringComparison.Ordinal)).Order(StringComparer.Ordinal)
        );
        Assert.Single(titles, title =>
            title.StartsWith("C-40", StringComparison.Ordinal) && title.Contains("left out", StringComparison.Ordinal)
        );
        Assert.Equal("img", figure.Attribute("role")!.Value);
    }

    [Fact]
    public void A_long_run_is_thinned_but_its_highest_and_lowest_points_stay()
    {
        ControlChart wall = Drifting(20_000);
        string text = Draw(wall, ControlChart.Individuals).ToString(SaveOptions.DisableFormatting);
        string run = Draw(wall, ControlChart.Average)
            .Descendants(Svg + "path")
            .Single(path => path.Attribute("class")?.Value == "run")
            .Attribute("d")!
            .Value;
        Assert.InRange(run.Count(letter => letter is 'M' or 'L'), 600, 1300);
        Assert.NotEmpty(text);
    }

    private static XElement Draw(ControlChart wall, string chart) =>
        XElement.Parse(ControlChartFigure.Svg(wall, wall.Charts.Single(one => one.Name == chart), (1000, "kΩ")));

    internal static ControlChart Drifting(int coils)
    {
        Random random = new(4);
        Band band = new(6180, 5933, 6427, IsTarget: true);
        ChartedCoil[] points =
        [
            .. Enumerable
                .Range(1, coils)
                .Select(n => new ChartedCoil($"C-{n}", n == 40 ? 7000 : Drawn(late: n > coils - 20, random)) { LeftOut = n == 40 }),
        ];
        return ControlChartBuilder.Build(new ChartSettings(), points, band)!;
    }

    private static double Drawn(bool late, Random random) => (late ? 6260 : 6180) + 50 * (random.NextDouble() + random.NextDouble() - 1);
}
