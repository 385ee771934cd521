using System.Globalization;
using System.Xml.Linq;
using Coilwright.Papers.Figures;
using Coilwright.Physics.Circuit;

namespace Coilwright.Papers.Tests.Figures;

/// <summary>Curves with their names at their peaks on a scale of twelve decibels.</summary>
public sealed class CompareFigureTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";
    private static readonly double[] s_hz = PickupResponse.LogFrequencies(20, 20_000, 200);

    [Fact]
    public void Every_curve_has_its_name_on_a_line_of_its_own_and_the_scale_holds_twelve_decibels()
    {
        XElement svg = XElement.Parse(CompareFigure.Svg(s_hz, [Trace("one", 2.5), Trace("two", 2.4), Trace("three", 4)]));
        XElement[] names = [.. svg.Descendants(s_svg + "text").Where(text => text.Value.Contains(" kHz, ", StringComparison.Ordinal))];
        Assert.Equal(["one", "three", "two"], names.Select(text => text.Value.Split(',')[0]).Order(StringComparer.Ordinal));
        double[] lines = [.. names.Select(text => double.Parse(text.Attribute("y")!.Value, CultureInfo.InvariantCulture)).Order()];
        Assert.All(lines.Zip(lines.Skip(1)), pair => Assert.True(pair.Second - pair.First >= 16));
        string[] texts = [.. svg.Descendants(s_svg + "text").Select(text => text.Value)];
        Assert.Contains("−12", texts);
        Assert.Contains("12", texts);
        Assert.DoesNotContain("18", texts);
    }

    [Fact]
    public void A_higher_peak_makes_the_scale_longer_and_silence_draws_nothing()
    {
        double?[] silent = new double?[s_hz.Length];
        XElement svg = XElement.Parse(
            CompareFigure.Svg(s_hz, [new ComparedTrace("bare", [.. s_hz.Select(_ => (double?)20)], null), new("silent", silent, null)])
        );
        string[] texts = [.. svg.Descendants(s_svg + "text").Select(text => text.Value)];
        Assert.Contains("24", texts);
        Assert.Contains("bare", texts);
        Assert.DoesNotContain("silent", texts);
    }

    private static ComparedTrace Trace(string name, double henry)
    {
        LumpedPickup pickup = new(6200, henry, 120e-12);
        LoadCircuit load = new()
        {
            CableCapacitanceF = 470e-12,
            Volume = new(250e3, 1),
            Tone = new(250e3, 22e-9, 1),
            InputResistanceOhm = 1e6,
        };
        Response response = PickupResponse.Compute(pickup, load, s_hz);
        return new ComparedTrace(name, [.. response.Points.Select(point => (double?)point.GainDb)], new ResonancePeak(3000, 5, 2));
    }
}
