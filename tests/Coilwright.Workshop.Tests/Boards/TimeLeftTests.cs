using Coilwright.Workshop.Boards;

namespace Coilwright.Workshop.Tests.Boards;

/// <summary>Times left, in the words of the page's own clock.</summary>
public sealed class TimeLeftTests
{
    [Theory]
    [InlineData(0, "0 s")]
    [InlineData(59.2, "1 min 0 s")]
    [InlineData(80, "1 min 20 s")]
    [InlineData(120, "2 min")]
    [InlineData(7199, "119 min")]
    [InlineData(7800, "2 h 10 min")]
    [InlineData(172_800, "2 days")]
    [InlineData(-300, "5 min ago")]
    [InlineData(-59.9, "59 s ago")]
    public void It_is_told_in_the_largest_units_that_matter(double seconds, string words) =>
        Assert.Equal(words, TimeLeft.Words(TimeSpan.FromSeconds(seconds)));
}
