using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Steps;
using CsCheck;

namespace Coilwright.Workshop.Tests.Steps;

public sealed class InkMixTests
{
    private static readonly TimeZoneInfo s_zone = TimeZoneInfo.Utc;
    private static readonly DateTimeOffset s_mixed = new(2026, 3, 2, 9, 10, 0, TimeSpan.Zero);

    private static InkMix Mix(bool doubles = true, double roomC = 28) =>
        new("M-31", "base 1187, hardener 902", s_mixed, new CureRule(doubles), TimeSpan.FromHours(8), TimeSpan.FromDays(6), roomC);

    [Fact] // 8 h / 2^0.8 = 4 h 35.7 min; rate doubles per 10 °C: common practice, no source [CureRate]
    public void Ink_mixed_at_28_degrees_is_discarded_at_13_46() =>
        Assert.Equal("2026-03-02 13:46", ShopTime.Words(Mix().DiscardUtc, s_zone));

    [Fact] // 6 d / 2^0.8 = 3.446 d
    public void A_print_at_28_degrees_is_packed_on_the_fourth_day()
    {
        CureClock cure = Mix().Cure(s_mixed);
        Assert.Equal(3.4, (cure.EndUtc - s_mixed).TotalDays, 0.05);
        Assert.Equal(4, cure.DayItIsDone);
    }

    [Fact]
    public void A_print_at_14_00_is_refused_with_the_reason()
    {
        Assert.Null(Mix().MayPrint(s_mixed.AddHours(4), s_zone));
        Problem refused = Mix().MayPrint(new DateTimeOffset(2026, 3, 2, 14, 0, 0, TimeSpan.Zero), s_zone)!;
        Assert.Contains("13:46", refused.Message, StringComparison.Ordinal);
        Assert.Contains("28 °C", refused.Message, StringComparison.Ordinal);
        Assert.Contains("doubles per 10 °C", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_rule_can_be_switched_off() => Assert.Equal(s_mixed.AddHours(8), Mix(doubles: false).DiscardUtc);

    [Fact]
    public void A_mix_without_lots_prints_nothing() =>
        Assert.Equal("lots", (Mix() with { Lots = " " }).MayPrint(s_mixed.AddHours(1), s_zone)!.Field);

    [Fact]
    public void Ten_degrees_more_halve_the_time_and_the_sheets_own_temperature_keeps_it() =>
        Gen.Double[-10, 60]
            .ForAll(celsius =>
            {
                CureRule rule = new();
                TimeSpan sheet = TimeSpan.FromHours(8);
                return Math.Abs(rule.At(sheet, celsius) / rule.At(sheet, celsius + 10) - 2) < 1e-6 && rule.At(sheet, 20) == sheet;
            });

    [Fact] // a different road: the room cut into entries of the same temperature, and hardening summed minute by minute
    public void A_room_that_warms_and_cools_is_summed() =>
        Gen.Double[10, 35]
            .Array[1, 6]
            .ForAll(temperatures =>
            {
                TemperatureAt[] room = [.. temperatures.Select((celsius, hour) => new TemperatureAt(s_mixed.AddHours(hour), celsius))];
                DateTimeOffset end = new CureClock(new CureRule(), s_mixed, TimeSpan.FromHours(8), room).EndUtc;
                double hardened = 0;
                int seconds = 0;
                for (; hardened < 8 * 3600; seconds++)
                {
                    hardened += Math.Pow(2, (temperatures[Math.Min(seconds / 3600, temperatures.Length - 1)] - 20) / 10);
                }

                return Math.Abs((end - s_mixed).TotalSeconds - seconds) <= 1.001;
            });
}
