using Coilwright.Workshop.Rules;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Tests.Steps;

public sealed class PottingBasketTests
{
    private static readonly DateTimeOffset s_in = new(2026, 3, 2, 14, 5, 0, TimeSpan.Zero);

    // 65 °C is the shop's own limit, invented for the example; published bath temperatures run from 54 to 82 °C and disagree
    private static readonly PottingBasket s_basket = new(
        "B-7",
        "wax",
        "W-0426",
        [.. Enumerable.Range(1, 24).Select(number => $"P-{number:000}")],
        s_in,
        TimeSpan.FromMinutes(10),
        65,
        "vulcanised fibre"
    );

    [Fact]
    public void A_basket_in_at_14_05_for_ten_minutes_comes_out_at_14_15()
    {
        Assert.Empty(s_basket.Check(60));
        Assert.Contains("14:15", s_basket.MayComeOut(s_in.AddMinutes(9.9), TimeZoneInfo.Utc)!.Allowed, StringComparison.Ordinal);
        Assert.Null(s_basket.MayComeOut(s_in.AddMinutes(10), TimeZoneInfo.Utc));
    }

    [Fact]
    public void A_bath_over_the_limit_alarms_and_holds_every_piece_for_inspection()
    {
        Assert.Null(s_basket.Alarm(65, s_in));
        Hold hold = s_basket.Alarm(67, s_in.AddMinutes(4))!;
        Assert.Contains("67.0 °C", hold.Reason, StringComparison.Ordinal);
        Assert.Contains("65.0 °C", hold.Reason, StringComparison.Ordinal);
        Assert.True(hold.Runs(s_in.AddYears(1))); // ends by nothing but a person
        Assert.False((hold with { LiftedUtc = s_in.AddHours(1), LiftedWhy = "looked at each: no warp" }).Runs(s_in.AddHours(2)));
    }

    [Theory]
    [InlineData("abs", "that ABS bears")]
    [InlineData("vulcanised-fibre", "that vulcanised fibre bears")]
    public void An_alarm_names_the_plastic_as_people_do(string limitOf, string words) =>
        Assert.Contains(words, (s_basket with { LimitOf = limitOf }).Alarm(67, s_in)!.Reason, StringComparison.Ordinal);

    [Theory]
    [InlineData("Vulcanised fibre")]
    [InlineData("vulcanised-fibre")]
    public void The_limit_of_a_plastic_is_found_by_its_key_and_by_its_words(string asked)
    {
        ShopRules rules = new() { BathLimitsC = new Dictionary<string, double> { ["vulcanised-fibre"] = 70 } };
        Assert.Equal((70, null), (rules.BathLimitC(asked), rules.BathLimitC("pear wood")));
    }

    [Fact]
    public void What_is_missing_or_wrong_is_named_at_once() =>
        Assert.Equal(
            ["lot", "pieces", "temperature"],
            (s_basket with { Lot = "", Pieces = ["P-1", "p-1"] }).Check(70).Select(problem => problem.Field)
        );
}
