using System.Globalization;
using System.Xml.Linq;
using Coilwright.Papers.Figures;
using Coilwright.Physics;

namespace Coilwright.Papers.Tests.Figures;

public sealed class PickupTopFigureTests
{
    [Fact]
    public void Drawn_to_scale_in_millimetres()
    {
        XElement svg = XElement.Parse(PickupTopFigure.Svg(Example.Model, [4e-3]));
        XElement[] outlines =
        [
            .. svg.Descendants().Where(element => element.Name.LocalName == "rect" && element.Attribute("rx") is not null),
        ];

        Assert.Equal(72, Number(outlines[0], "width"), 6); // winding: 64 + 2 × 4
        Assert.Equal(14.2, Number(outlines[0], "height"), 6);
        Assert.Equal(7.1, Number(outlines[0], "rx"), 6);
        Assert.Equal(64, Number(outlines[1], "width"), 6); // former
        XElement[] poles = [.. svg.Descendants().Where(element => element.Name.LocalName == "circle")];
        Assert.Equal(6, poles.Length);
        Assert.All(poles, pole => Assert.Equal(2.375, Number(pole, "r"), 6));
        Assert.Equal(10.4, Number(poles[1], "cx") - Number(poles[0], "cx"), 6);
    }

    [Fact]
    public void Strings_stand_over_their_poles_when_spacings_agree()
    {
        XElement svg = XElement.Parse(PickupTopFigure.Svg(Example.Model));
        double[] strings =
        [
            .. svg.Descendants()
                .Where(element => (string?)element.Attribute("class") == "string")
                .Select(element => double.Parse(((string)element.Attribute("d")!)[1..].Split(' ')[0], CultureInfo.InvariantCulture)),
        ];

        Assert.Equal([-26, -15.6, -5.2, 5.2, 15.6, 26], strings);
    }

    [Fact]
    public void Says_what_it_shows_to_people_who_cannot_see_it()
    {
        XElement svg = XElement.Parse(PickupTopFigure.Svg(Example.Model, [4e-3]));

        Assert.Equal("img", (string?)svg.Attribute("role"));
        Assert.Contains(
            "former 64 by 6.2 mm, winding 4 mm thick, 6 poles; 6 strings 10.4 mm apart",
            svg.Elements().Single(element => element.Name.LocalName == "desc").Value,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Cover_and_second_coil_widen_the_drawing_and_poles_show_their_polarity()
    {
        CoilModel first = Example.Model.Coils[0];
        PickupModel twin = Example.Model with
        {
            Coils =
            [
                first with
                {
                    Position = new Vector3M(0, -9e-3, 0),
                },
                first with
                {
                    Position = new Vector3M(0, 9e-3, 0),
                    Poles = [first.Poles[0] with { PolarisationT = Estimate.Exact(-0.3) }],
                },
            ],
            Sheets =
            [
                new SheetModel
                {
                    Shape = SheetShape.Cover,
                    Material = "nickel-silver",
                    ThicknessM = 5e-4,
                    LengthM = 75e-3,
                    WidthM = 40e-3,
                    TopM = 8e-3,
                    BottomM = -6e-3,
                    CornerM = 3e-3,
                    RelativePermeability = Estimate.Exact(1),
                    ConductivitySPerM = Estimate.Exact(3.4e6),
                },
            ],
        };
        XElement svg = XElement.Parse(PickupTopFigure.Svg(twin, [4e-3, 4e-3]));
        string[] texts = [.. svg.Descendants().Where(element => element.Name.LocalName == "text").Select(element => element.Value)];

        Assert.Equal(6, texts.Count(text => text == "N"));
        Assert.Equal(6, texts.Count(text => text == "S"));
        Assert.Contains("75.0 mm", texts);
        Assert.Contains("40.0 mm", texts);
    }

    private static double Number(XElement element, string name) =>
        double.Parse((string)element.Attribute(name)!, CultureInfo.InvariantCulture);
}
