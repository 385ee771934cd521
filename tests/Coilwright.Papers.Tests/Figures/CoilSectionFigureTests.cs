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

    /// <summary>Opened by itself the drawing stands under a policy that lets no inline style through.</summary>
    [Fact]
    public void Nothing_in_it_needs_a_style()
    {
        XElement figure = Draw(2000, 71.1e-6, new CoverInSection(InsideM: 0.006, ThicknessM: 0.0005, "brass"));
        Assert.DoesNotContain(figure.DescendantsAndSelf(), part => part.Attribute("style") is not null || part.Name.LocalName == "style");
        Assert.Contains(figure.Descendants(Svg + "path"), path =>
            path.Attribute("stroke") is not null || path.Parent!.Attribute("stroke") is not null
        );
    }

    [Fact]
    public void The_largest_section_stays_below_600_kilobytes_and_says_that_turns_were_left_out()
    {
        XElement figure = Draw(100_000, 40e-6);
        Assert.InRange(figure.ToString(SaveOptions.DisableFormatting).Length, 1, 600_000);
        Assert.Contains(figure.Descendants(Svg + "text"), t => t.Value.StartsWith("1 of 4 turns drawn", StringComparison.Ordinal));
    }

    [Fact]
    public void Flange_and_cover_are_drawn_to_scale_with_the_room_between()
    {
        XElement figure = Draw(8000, 71.1e-6, new CoverInSection(InsideM: 0.006, ThicknessM: 0.0005, "brass"));
        XElement[] bars = [.. figure.Descendants(Svg + "rect")];
        XElement core = bars.Single(bar => bar.Attribute("class") is null && Number(bar, "width") is > 25.9 and < 26.1);
        double former = Number(core, "x") + Number(core, "width"),
            scale = Number(core, "height") / Window.WindingHeightM;
        XElement cover = bars.Single(bar => bar.Attribute("class")?.Value == "cover");
        Assert.Equal(0.006, (Number(cover, "x") - former) / scale, 0.00001); // a tenth of a pixel
        double flange = bars.Where(bar => Number(bar, "height") is > 13.9 and < 14.1).Max(bar => Number(bar, "x") + Number(bar, "width"));
        Assert.Equal(0.0045, (flange - former) / scale, 0.00001); // a tenth of a pixel
        string[] words = [.. figure.Descendants(Svg + "text").Select(text => text.Value)];
        Assert.Contains("flange", words);
        Assert.Contains("clear", words);
    }

    [Fact]
    public void A_cover_far_out_or_none_is_not_drawn()
    {
        Assert.DoesNotContain(Draw(2000, 71.1e-6, new CoverInSection(0.05, 0.0005, "brass")).Descendants(Svg + "rect"), bar =>
            bar.Attribute("class")?.Value == "cover"
        );
        Assert.DoesNotContain(Draw(2000, 71.1e-6).Descendants(Svg + "rect"), bar => bar.Attribute("class")?.Value == "cover");
    }

    private static double Number(XElement element, string name) =>
        element.Attribute(name) is { } value && double.TryParse(value.Value, CultureInfo.InvariantCulture, out double number) ? number : 0;

    private static XElement Draw(int turns, double overallM, CoverInSection? cover = null) =>
        XElement.Parse(
            CoilSectionFigure.Svg(
                LaySimulation.Run(new(overallM, Window.WindingHeightM, turns, 0.15e-3, 0.1e-3), 1),
                Window,
                0.89 * overallM,
                overallM,
                cover
            )
        );
}
