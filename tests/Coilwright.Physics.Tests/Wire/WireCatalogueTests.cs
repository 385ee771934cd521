using Coilwright.Physics.Wire;

namespace Coilwright.Physics.Tests.Wire;

public sealed class WireCatalogueTests
{
    [Theory]
    [InlineData("AWG 42", "AWG 42")]
    [InlineData("awg42", "AWG 42")]
    [InlineData("42", "AWG 42")]
    [InlineData("#42", "AWG 42")]
    [InlineData("42.5 AWG", "AWG 42.5")]
    [InlineData("42,5", "AWG 42.5")]
    [InlineData("0.063 mm", "0.063 mm")]
    [InlineData("0.063", "0.063 mm")]
    [InlineData("0,063mm", "0.063 mm")]
    [InlineData("2.5 thou", "AWG 42")]
    [InlineData("2,5 mil", "AWG 42")]
    [InlineData(".0025\"", "AWG 42")]
    [InlineData("0.0022 in", "AWG 43")]
    [InlineData("63 µm", "0.063 mm")]
    [InlineData("63um", "0.063 mm")]
    [InlineData("0.0635 mm", "AWG 42")]
    public void A_size_is_found_as_people_write_it(string typed, string gauge) =>
        Assert.Equal(gauge, WireCatalogue.Standard.Find(typed)!.Gauge);

    [Theory]
    [InlineData("AWG 33")]
    [InlineData("AWG 51")]
    [InlineData("AWG 0.063")]
    [InlineData("42 mm")]
    [InlineData("0.064 mm")]
    [InlineData("64 µm")]
    [InlineData("25 thou")]
    [InlineData("2.5 feet")]
    [InlineData("")]
    [InlineData("-42")]
    [InlineData("forty-two")]
    public void What_is_no_size_is_not_found(string typed) => Assert.Null(WireCatalogue.Standard.Find(typed));

    // A pickup maker's public statement (read): bare 2.4/2.5/2.6, overall 2.6/2.8/3.0 thou for 42 AWG.
    [Fact]
    public void Forty_two_gauge_carries_the_limits_that_are_printed_for_it()
    {
        WireModel wire = WireCatalogue.Standard.ModelFor("AWG 42", "single", "plain-enamel");
        Assert.Equal(60.96e-6, wire.BareDiameterM.Low, 1e-10);
        Assert.Equal(63.50e-6, wire.BareDiameterM.Value, 1e-10);
        Assert.Equal(66.04e-6, wire.BareDiameterM.High, 1e-10);
        Assert.Equal(66.04e-6, wire.OverallDiameterM.Low, 1e-10);
        Assert.Equal(71.12e-6, wire.OverallDiameterM.Value, 1e-10);
        Assert.Equal(76.20e-6, wire.OverallDiameterM.High, 1e-10);
        Assert.Equal(Basis.Assumed, wire.BareDiameterM.Basis);
    }

    [Theory]
    [InlineData("AWG 42", "grade-1", "polyurethane", "single, heavy, triple, quad")]
    [InlineData("AWG 42.5", "quad", "polyurethane", "single, heavy, triple")]
    [InlineData("0.063 mm", "single", "polyurethane", "grade-1, grade-2, grade-3")]
    [InlineData("0.064 mm", "grade-1", "polyurethane", "0.063 mm")]
    [InlineData("AWG 52", "single", "polyurethane", "AWG 50")]
    [InlineData("AWG 42", "single", "polyurethan", "polyurethane")]
    public void What_is_not_made_is_refused_with_what_is(string gauge, string build, string insulation, string offered)
    {
        Assert.False(WireCatalogue.Standard.TryModelFor(gauge, build, insulation, out WireModel? model, out string? why));
        Assert.Null(model);
        Assert.Contains(offered, why, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_size_makes_a_model_in_every_build_it_lists()
    {
        foreach (WireSize size in WireCatalogue.Standard.Sizes)
        {
            Assert.All(size.Builds.Keys, build =>
                Assert.Equal(size.Gauge, WireCatalogue.Standard.ModelFor(size.Gauge, build, "polyester").Gauge)
            );
        }
    }
}
