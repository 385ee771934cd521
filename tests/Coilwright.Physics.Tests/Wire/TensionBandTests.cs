using Coilwright.Physics.Wire;

namespace Coilwright.Physics.Tests.Wire;

public sealed class TensionBandTests
{
    // The chart's pounds [Tension]: 0.062, 0.049, 0.038 and 0.023 lb, in whole gram-force.
    [Theory]
    [InlineData("AWG 41", 28)]
    [InlineData("AWG 42", 22)]
    [InlineData("AWG 43", 17)]
    [InlineData("AWG 44", 10)]
    public void The_most_a_gauge_should_see_is_the_charts(string gauge, double gramForce)
    {
        TensionBand band = TensionBand.For(gauge)!;
        Assert.Equal(gramForce, band.MaximumGramForce, 0.5);
        Assert.False(band.IsExtrapolated);
    }

    // Arithmetic from the chart: 43 AWG works between 8.6 and 13.8 gf.
    [Fact]
    public void The_working_band_is_50_to_80_per_cent()
    {
        TensionBand band = TensionBand.For("43")!;
        Assert.Equal(8.6, band.LowGramForce, 0.05);
        Assert.Equal(13.8, band.HighGramForce, 0.05);
    }

    // The law is fitted to the chart's 34–43 AWG rows; the 44 AWG row falls out of it and says so.
    [Fact]
    public void The_law_of_the_diameter_squared_holds_for_the_chart_but_its_last_row()
    {
        for (int awg = 34; awg <= 43; awg++)
        {
            WireSize size = WireCatalogue.Standard.Find(FormattableString.Invariant($"AWG {awg}"))!;
            ReferenceRows.Near(TensionBand.For(size.Gauge)!.MaximumN, TensionBand.For(size.Bare.NominalM).MaximumN, 0.05, size.Gauge);
        }

        Assert.NotEqual("", TensionBand.For("AWG 44")!.Note);
    }

    // From memory, a table for one strand whose maker was not kept: 0.063 mm 0.157 N, 0.030 mm 0.040 N, 0.160 mm 0.91 N: all inside our
    // band up to its top.
    [Theory]
    [InlineData("0.063 mm", 0.157)]
    [InlineData("0.030 mm", 0.040)]
    [InlineData("0.160 mm", 0.91)]
    public void A_second_makers_figure_lies_in_the_band(string gauge, double newton)
    {
        TensionBand band = TensionBand.For(gauge)!;
        Assert.InRange(newton, band.LowN, band.MaximumN);
        Assert.True(band.IsExtrapolated);
    }
}
