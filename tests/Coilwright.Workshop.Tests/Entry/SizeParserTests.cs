using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Workshop.Tests.Entry;

public sealed class SizeParserTests
{
    [Theory]
    [InlineData("6.2 mm ± 0.05 mm", 6.2e-3, 0.05e-3, "6.2 mm ± 0.05 mm")]
    [InlineData("6.2 ± 0.05 mm", 6.2e-3, 0.05e-3, "6.2 mm ± 0.05 mm")]
    [InlineData("6.2 mm ± 0.05", 6.2e-3, 0.05e-3, "6.2 mm ± 0.05 mm")]
    [InlineData("6.2mm+/-0.05mm", 6.2e-3, 0.05e-3, "6.2 mm ± 0.05 mm")]
    [InlineData("6,2 mm ± 0,05 mm", 6.2e-3, 0.05e-3, "6.2 mm ± 0.05 mm")]
    [InlineData("6.2 mm ± 1 %", 6.2e-3, 0.062e-3, "6.2 mm ± 0.062 mm")]
    [InlineData("6.2 mm ± 2 thou", 6.2e-3, 0.0508e-3, "6.2 mm ± 0.0508 mm")]
    [InlineData("0.245 in ± 2 thou", 6.223e-3, 0.0508e-3, "0.245 in ± 0.002 in (6.223 mm ± 0.0508 mm)")]
    [InlineData("6.2 mm ± 0", 6.2e-3, 0, "6.2 mm ± 0 mm")]
    public void A_length_with_its_interval_is_understood_and_echoed(string typed, double valueM, double withinM, string echo)
    {
        ParsedQuantity read = SizeParser.Read(typed, Allowed.CoreWidth, unitRequired: true);
        Assert.Equal("", read.Why);
        Assert.Equal(valueM, read.Entered.Si, 1e-12);
        Assert.Equal(withinM, read.Entered.HalfWidth!.Value, 1e-12);
        Assert.Equal(typed, read.Entered.Typed);
        Assert.Equal(echo, SizeParser.Echo(read.Entered));
        Assert.Equal(withinM, SizeParser.Read(read.Plain, Allowed.CoreWidth, unitRequired: true).Entered.HalfWidth!.Value, 1e-12);
    }

    [Fact]
    public void A_length_without_one_says_so() =>
        Assert.Null(SizeParser.Read("6.2 mm", Allowed.CoreWidth, unitRequired: true).Entered.HalfWidth);

    [Theory]
    [InlineData("6.2 mm ±", "no number behind the ±")]
    [InlineData("6.2 mm ± mm", "is not a number")]
    [InlineData("6.2 mm ± 6.2 mm", "as wide as the length itself")]
    [InlineData("6.2 mm ± 120 %", "as wide as the length itself")]
    [InlineData("6.2 mm ± -0.05 mm", "below zero")]
    [InlineData("6.2 mm ± 5 g", "is not a unit of this quantity")]
    [InlineData("6.2 mm ± 0.1 mm ± 0.2 mm", "more than one ±")]
    public void What_cannot_stand_behind_the_sign_is_named(string typed, string why)
    {
        ParsedQuantity read = SizeParser.Read(typed, Allowed.CoreWidth, unitRequired: true);
        Assert.False(read.Entered.IsKnown);
        Assert.Contains(why, read.Why, StringComparison.Ordinal);
        Assert.True(read.Allowed is null || read.Allowed.Contains("6.2 mm", StringComparison.Ordinal), read.Allowed);
    }

    [Fact]
    public void A_place_about_zero_may_carry_an_interval_and_a_length_may_not_be_lost_in_it()
    {
        Assert.Equal(0.1e-3, SizeParser.Read("0 mm ± 0.1 mm", Allowed.Place, unitRequired: true).Entered.HalfWidth!.Value, 1e-12);
        Assert.False(SizeParser.Read("0 mm ± 9 mm", Allowed.Place, unitRequired: true).Entered.IsKnown);
    }
}
