using System.Globalization;
using System.Xml.Linq;
using Coilwright.Papers.Figures;
using Coilwright.Physics.Circuit;

namespace Coilwright.Papers.Tests.Figures;

public sealed class ResponseFigureTests
{
    private static readonly LumpedPickup s_pickup = new(6200, 2.5, 120e-12);
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Peaks_are_written_out_where_the_curve_has_them()
    {
        XElement svg = XElement.Parse(Figure());
        double[] ends =
        [
            .. svg.Elements(s_svg + "path")
                .Where(path => (string?)path.Attribute("class") == "leader")
                .Select(path => double.Parse(((string)path.Attribute("d")!).Split('L')[1].Split(' ')[0], CultureInfo.InvariantCulture)),
        ];
        Assert.Contains(ends, x => Math.Abs(x - (64 + 636 * Math.Log10(3757 / 20.0) / 3)) < 2);
        Assert.Contains(svg.Elements(s_svg + "text"), text => text.Value == "cable & controls: peak 3.76 kHz, +3.9 dB");
        Assert.Contains("silent, volume at 0", svg.Element(s_svg + "desc")!.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Curves_differ_without_colour_and_every_text_is_12_px_or_more()
    {
        XElement svg = XElement.Parse(Figure());
        string?[] dashes =
        [
            .. svg.Elements(s_svg + "path")
                .Where(path => path.Attribute("clip-path") is not null)
                .Select(path => path.Attribute("stroke-dasharray")?.Value),
        ];
        Assert.Equal(3, dashes.Length);
        Assert.Equal(3, dashes.Distinct().Count());
        Assert.All(svg.Descendants().Attributes("font-size"), size =>
            Assert.True(double.Parse(size.Value, CultureInfo.InvariantCulture) >= 12)
        );
    }

    [Fact]
    public void It_names_itself_and_both_axes_with_their_units()
    {
        XElement svg = XElement.Parse(Figure());
        Assert.Equal("img", svg.Attribute("role")!.Value);
        Assert.Equal("response-title response-desc", svg.Attribute("aria-labelledby")!.Value);
        string[] texts = [.. svg.Descendants(s_svg + "text").Select(text => text.Value)];
        Assert.Contains("Frequency, Hz", texts);
        Assert.Contains("Gain relative to 20 Hz, dB", texts);
        Assert.Contains("20 k", texts);
    }

    [Fact]
    public void Two_peaks_at_one_place_do_not_print_over_each_other()
    {
        Response curve = PickupResponse.Compute(s_pickup, LoadCircuit.None, PickupResponse.LogFrequencies(20, 20_000, 400));
        XElement svg = XElement.Parse(ResponseFigure.Svg([("a", curve), ("b", curve)]));
        double[] heights =
        [
            .. svg.Elements(s_svg + "text")
                .Where(text => text.Value.Contains("peak 9.", StringComparison.Ordinal))
                .Select(text => double.Parse(text.Attribute("y")!.Value, CultureInfo.InvariantCulture)),
        ];
        Assert.Equal(2, heights.Length);
        Assert.True(Math.Abs(heights[0] - heights[1]) >= 16);
    }

    [Fact]
    public void Silence_alone_still_makes_a_figure_without_a_number_that_is_none()
    {
        Response silent = PickupResponse.Compute(
            s_pickup,
            new LoadCircuit { Volume = new(500e3, 0) },
            PickupResponse.LogFrequencies(20, 20_000, 100)
        );
        string svg = ResponseFigure.Svg([("silent", silent)]);
        Assert.DoesNotContain("NaN", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("∞", svg, StringComparison.Ordinal);
    }

    private static string Figure()
    {
        double[] band = PickupResponse.LogFrequencies(20, 20_000, 400);
        LoadCircuit cable = new() { CableCapacitanceF = 470e-12 };
        LoadCircuit controls = cable with { Volume = new(250e3, 1), Tone = new(250e3, 22e-9, 1), InputResistanceOhm = 1e6 };
        LoadCircuit[] loads = [LoadCircuit.None, cable, controls, cable with { Volume = new(500e3, 0) }];
        string[] labels = ["bare", "470 pF of cable", "cable & controls", "volume down"];
        string svg = ResponseFigure.Svg(
            [.. loads.Select((load, i) => (labels[i], PickupResponse.Compute(s_pickup, load, band)))],
            [.. loads.Select(load => PickupResponse.FindPeak(s_pickup, load))],
            "Response on three loads"
        );
        if (Environment.GetEnvironmentVariable("COILWRIGHT_FIGURES") is { } folder)
        {
            File.WriteAllText(Path.Combine(folder, "response.svg"), svg);
        }

        return svg;
    }
}
