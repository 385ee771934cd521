using System.Globalization;
using System.Xml.Linq;
using Coilwright.Papers.Figures;
using Coilwright.Physics.Winding;

namespace Coilwright.Papers.Tests.Figures;

public sealed class CoilSectionFigureTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly Bobbin Window = new()
    {
        CoreLengthM = 0.06,
        CoreWidthM = 0.006,
        EndRadiusM = 0.003,
        WindingHeightM = 0.011,
        MaxBuildM = 0.0045,
    };

    [Fact]
    public void Every_turn_is_drawn_once_and_the_title_says_what_is_seen()
    {
        XElement figure = Draw(8000, 71.1e-6);
        Assert.Equal(8000, figure.Descendants(Svg + "path").Sum(p => p.Attribute("d")!.Value.Count(c => c == 'M')));
        Assert.Equal("img", figure.Attribute("role")!.Value);
        Assert.Equal(figure.Element(Svg + "title")!.Attribute("id")!.Value, figure.Attribute("aria-labelledby")!.Value);
        Assert.Contains("8,000 turns in 11.00 mm", figure.Element(Svg + "title")!.Value, StringComparison.Ordinal);
        Assert.InRange(double.Parse(figure.Attribute("font-size")!.Value, CultureInfo.InvariantCulture), 12, 40);
    }

    [Fact]
    public void The_largest_section_stays_below_600_kilobytes_and_says_that_turns_were_left_out()
    {
        XElement figure = Draw(100_000, 40e-6);
        Assert.InRange(figure.ToString(SaveOptions.DisableFormatting).Length, 1, 600_000);
        Assert.Contains(figure.Descendants(Svg + "text"), t => t.Value.StartsWith("1 of 4 turns drawn", StringComparison.Ordinal));
    }

    private static XElement Draw(int turns, double overallM) => XElement.Parse(CoilSectionFigure.Svg(
        LaySimulation.Run(new(overallM, Window.WindingHeightM, turns, 0.15e-3, 0.1e-3), 1), Window, 0.89 * overallM, overallM));
}
