using Coilwright.Papers.Figures;

namespace Coilwright.Papers.Tests.Figures;

public sealed class BarCodeTests
{
    [Fact]
    public void Every_pattern_is_eleven_modules_wide_has_even_bars_and_stands_once()
    {
        string[] patterns = [.. BarCode.Patterns.SkipLast(1)];

        Assert.Equal(106, patterns.Distinct().Count());
        Assert.All(patterns, pattern => Assert.Equal(11, pattern.Sum(width => width - '0')));
        Assert.All(patterns, pattern => Assert.Equal(0, (pattern[0] + pattern[2] + pattern[4] - 3 * '0') % 2)); // the standard's self-check
        Assert.Equal(13, BarCode.Patterns[^1].Sum(width => width - '0'));
    }

    // Check characters worked out by hand: (104 + 33·1) mod 103 = 34; (104 + 33·1 + 34·2 + 35·3) mod 103 = 1.
    [Theory]
    [InlineData("A", 34)]
    [InlineData("ABC", 1)]
    public void The_check_character_is_the_weighted_sum(string text, int check)
    {
        string widths = BarCode.Widths(text);

        Assert.Equal(BarCode.Patterns[check], widths.Substring(6 * (1 + text.Length), 6));
    }

    [Fact]
    public void The_drawing_is_as_wide_as_the_code_with_ten_modules_of_quiet_on_either_side() =>
        Assert.Contains($"viewBox=\"0 0 {11 * (2 + 3) + 13 + 20} 40\"", BarCode.Svg("ABC"), StringComparison.Ordinal);
}
