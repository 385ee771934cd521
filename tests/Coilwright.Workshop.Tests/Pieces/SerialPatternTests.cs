using Coilwright.Workshop.Pieces;

namespace Coilwright.Workshop.Tests.Pieces;

public sealed class SerialPatternTests
{
    [Theory]
    [InlineData("{yy}{ww}-{n:000}", "2026-03-02", 7, "2610-007")]
    [InlineData("{yyyy}-{ww}/{n}", "2005-01-01", 12, "2004-53/12")] // ISO 8601 gives this day to week 53 of 2004
    [InlineData("{recipe}{yy}{ddd}-{n:00}", "2026-12-31", 123, "HB26365-123")]
    public void Serials_follow_the_shops_pattern(string pattern, string day, int number, string expected)
    {
        Assert.Empty(new SerialPattern(pattern).Check());
        Assert.Equal(
            expected,
            new SerialPattern(pattern).Make(number, DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture), "HB")
        );
    }

    [Theory]
    [InlineData("{yy}-7")]
    [InlineData("{n}{n}")]
    [InlineData("{n}{maker}")]
    [InlineData("{n}{")]
    [InlineData("Ø{n}")]
    public void A_pattern_that_gives_no_serial_of_its_own_is_refused(string pattern) => Assert.NotEmpty(new SerialPattern(pattern).Check());
}
