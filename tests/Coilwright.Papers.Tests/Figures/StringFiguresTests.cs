using System.Globalization;
using System.Xml.Linq;
using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Figures;

namespace Coilwright.Papers.Tests.Figures;

public sealed class StringFiguresTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";
    private static readonly double[] s_xM = [-0.0052, 0.0052];

    private static readonly StringForecast[] s_strings =
    [
        new(
            1,
            Example.Figure("linkage", "Wb", 1e-4, 0.3),
            Example.Figure("sensitivity", "V·s/m", 0.04, 0.3),
            Example.Figure("fieldAtStrings", "T", 0.030, 0.2)
        ),
        new(
            2,
            Example.Figure("linkage", "Wb", 1e-4, 0.3),
            Example.Figure("sensitivity", "V·s/m", 0.02, 0.3),
            Example.Figure("fieldAtStrings", "T", -0.010, 0.2)
        ),
    ];

    private static readonly PickupPictures s_pictures = new()
    {
        Fields = [new FieldLine(0, 0.0115, [(-0.01, 0.01), (0, 0.03), (0.01, -0.01)])],
        Across = [(-0.01, 0.01), (0, 0.03), (0.01, 0.01)],
        Along = [(-0.02, 0), (0, 250), (0.02, 0)],
        Branch = [(20, 2.5, 6000), (1000, 2.5, 6200), (20_000, 2.2, 40_000)],
    };

    public static TheoryData<string> Figures() => [.. All().Keys];

    [Theory]
    [MemberData(nameof(Figures))]
    public void Each_names_itself_its_axes_and_units_and_writes_no_text_below_12_px(string name)
    {
        XElement svg = XElement.Parse(All()[name]);
        Assert.Equal("img", svg.Attribute("role")!.Value);
        Assert.NotEmpty(svg.Element(s_svg + "desc")!.Value);
        string[] texts = [.. svg.Descendants(s_svg + "text").Select(text => text.Value)];
        Assert.Contains(texts, text => text.EndsWith(", mm", StringComparison.Ordinal) || text.EndsWith(", Hz", StringComparison.Ordinal));
        Assert.Contains(texts, text =>
            text.EndsWith(", mT", StringComparison.Ordinal)
            || text.EndsWith("per m/s", StringComparison.Ordinal)
            || text.EndsWith("per mm", StringComparison.Ordinal)
            || text.EndsWith(", H", StringComparison.Ordinal)
            || text.EndsWith("kΩ", StringComparison.Ordinal)
        );
        Assert.All(svg.DescendantsAndSelf().Attributes("font-size"), size =>
            Assert.True(double.Parse(size.Value, CultureInfo.InvariantCulture) >= 12)
        );
        Assert.DoesNotContain("NaN", All()[name], StringComparison.Ordinal);
    }

    [Fact] // 72 to 700 px are −10 to 10 mm; −20 to 40 mT are 230 to 0 px
    public void Strings_stand_at_their_place_and_their_field()
    {
        XElement[] marks = [.. XElement.Parse(All()["field"]).Descendants(s_svg + "circle")];
        Assert.Equal(2, marks.Length);
        Assert.Equal(72 + 628 * (-5.2 + 10) / 20, Number(marks[0], "cx"), 0.1);
        Assert.Equal(230 * (1 - (30 + 20) / 60.0), Number(marks[0], "cy"), 0.1);
        Assert.Equal(230 * (1 - (-10 + 20) / 60.0), Number(marks[1], "cy"), 0.1);
    }

    [Fact]
    public void Bars_are_as_high_as_the_output_and_whiskers_as_long_as_the_interval()
    {
        XElement svg = XElement.Parse(All()["output"]);
        double[] heights =
        [
            .. svg.Descendants(s_svg + "rect")
                .Where(rect => (string?)rect.Attribute("class") == "bar")
                .Select(rect => Number(rect, "height")),
        ];
        Assert.Equal(2, heights[0] / heights[1], 0.01);
        double[] ends =
        [
            .. ((string)svg.Descendants(s_svg + "path").First(path => (string?)path.Attribute("class") == "span").Attribute("d")!)
                .Split('M', 'V', ' ', 'h')
                .Where(part => part.Length > 0)
                .Take(3)
                .Select(part => double.Parse(part, CultureInfo.InvariantCulture)),
        ];
        Assert.Equal(0.6 * heights[0], ends[1] - ends[2], 0.3);
    }

    [Theory]
    [InlineData(0, 47, 0, 50)]
    [InlineData(-3, 12, -5, 15)]
    [InlineData(0, 0, 0, 1)]
    [InlineData(-0.02, 0.031, -0.02, 0.04)]
    public void Axes_end_at_round_numbers_beyond_what_they_hold(double low, double high, double from, double to)
    {
        PlotAxis axis = PlotAxis.Round([low, high], "");
        Assert.Equal(from, axis.Low, 1e-12);
        Assert.Equal(to, axis.High, 1e-12);
        Assert.InRange(axis.Ticks.Count, 3, 9);
    }

    /// <summary>Each figure by its name.</summary>
    internal static IReadOnlyDictionary<string, string> Drawn() => All();

    private static Dictionary<string, string> All()
    {
        SpectrumForecast[] spectrum =
        [
            new(1000, Example.Figure("inductance", "H", 2.5, 0.05), Example.Figure("resistance", "Ω", 6200, 0.08)),
        ];
        return new()
        {
            ["field"] = StringFigures.Field(s_pictures, s_strings, s_xM),
            ["output"] = StringFigures.Output(s_pictures, s_strings, s_xM),
            ["aperture"] = StringFigures.Aperture(s_pictures),
            ["inductance"] = StringFigures.Inductance(s_pictures, spectrum),
            ["resistance"] = StringFigures.Resistance(s_pictures, spectrum),
        };
    }

    private static double Number(XElement element, string attribute) =>
        double.Parse(element.Attribute(attribute)!.Value, CultureInfo.InvariantCulture);
}
