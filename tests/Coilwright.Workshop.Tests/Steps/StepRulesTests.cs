using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Steps;
using CsCheck;

namespace Coilwright.Workshop.Tests.Steps;

public sealed class StepRulesTests
{
    private static readonly TimeZoneInfo s_berlin = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");
    private static readonly DateTimeOffset s_noon = new(2026, 3, 2, 12, 0, 0, TimeSpan.Zero);

    private static readonly StepPlan[] s_plans =
    [
        new("potting", TimeSpan.FromMinutes(10), TimeSpan.FromMinutes(30), TimeSpan.FromMinutes(30), "wax sets and cools", []),
        new("marking", TimeSpan.Zero, null, TimeSpan.FromHours(24), "ink cures", []),
        new("packing", TimeSpan.Zero, null, TimeSpan.Zero, "", []),
    ];

    [Fact]
    public void The_next_step_is_refused_while_a_hold_runs_with_the_reason_and_its_end()
    {
        StepRun[] runs = [new("potting", s_noon, s_noon.AddMinutes(10))];
        Problem refused = Assert.Single(MayBegin("marking", runs, s_noon.AddMinutes(39)));
        Assert.Contains("wax sets and cools, until 2026-03-02 12:40", refused.Message, StringComparison.Ordinal);
        Assert.Empty(MayBegin("marking", runs, s_noon.AddMinutes(40)));
    }

    [Fact]
    public void Steps_left_out_done_twice_or_unknown_are_refused()
    {
        Assert.Contains("potting comes before", Assert.Single(MayBegin("marking", [], s_noon)).Message, StringComparison.Ordinal);
        Assert.Contains("already", MayBegin("potting", [new("potting", s_noon, null)], s_noon)[0].Message, StringComparison.Ordinal);
        Assert.Equal("potting, marking, packing", Assert.Single(MayBegin("polishing", [], s_noon)).Allowed);
    }

    [Fact]
    public void The_board_tells_what_runs_what_may_end_what_is_late_and_what_is_held()
    {
        StepRun[] going = [new("potting", s_noon, null)];
        (int Minutes, StepState State)[] expected = [(5, StepState.Running), (15, StepState.MayEnd), (31, StepState.Late)];
        Assert.All(expected, one => Assert.Equal(one.State, Stand(going, one.Minutes).State));
        StepRun[] potted = [new("potting", s_noon, s_noon.AddMinutes(10))];
        Assert.Equal((StepState.Held, s_noon.AddMinutes(40)), (Stand(potted, 20).State, Stand(potted, 20).ChangesUtc!.Value));
        Assert.Equal("may go to marking", Stand(potted, 41).Words);
        Assert.NotNull(StepRules.MayEnd(s_plans[0], going[0], s_noon.AddMinutes(9), s_berlin));
        Assert.Null(StepRules.MayEnd(s_plans[0], going[0], s_noon.AddMinutes(10), s_berlin));
    }

    [Fact]
    public void A_hold_that_a_person_must_lift_comes_before_the_clock_of_the_step_that_goes_on()
    {
        Hold alarm = new("the bath read 67 °C", s_noon.AddMinutes(2), null);
        StepRun[] going = [new("potting", s_noon, null)];
        StepStatus held = StepRules.Stand(s_plans, going, [alarm], s_noon.AddMinutes(5), s_berlin);
        Assert.Equal((StepState.Held, alarm, s_noon.AddMinutes(10)), (held.State, held.HeldBy, held.ChangesUtc!.Value));
        Assert.True(held.NeedsPerson);
        Assert.StartsWith("the bath read 67 °C, until a person lifts it; potting, earliest out", held.Words, StringComparison.Ordinal);
        StepStatus lifted = StepRules.Stand(
            s_plans,
            going,
            [alarm with { LiftedUtc = s_noon.AddMinutes(4) }],
            s_noon.AddMinutes(5),
            s_berlin
        );
        Assert.Equal((StepState.Running, false), (lifted.State, lifted.NeedsPerson));
        StepRun[] potted = [new("potting", s_noon, s_noon.AddMinutes(10))];
        Assert.False(StepRules.Stand(s_plans, potted, [], s_noon.AddMinutes(20), s_berlin).NeedsPerson); // wax that cools lets go by itself
        Assert.True(StepRules.Stand(s_plans, potted, [alarm], s_noon.AddMinutes(20), s_berlin).NeedsPerson);
    }

    [Theory] // the two changes of 2026 in central Europe: 29 March and 25 October at 01:00 UTC
    // 21:00 by the wall, summer time begins in the night: 24 h later the wall says 22:00
    [InlineData("2026-03-28T20:00:00Z", "2026-03-29 22:00")]
    [InlineData("2026-10-24T20:00:00Z", "2026-10-25 21:00")] // 22:00 by the wall, summer time ends
    public void A_day_of_cure_is_24_hours_through_a_change_of_the_wall_clock(string markedUtc, string wallEnd)
    {
        DateTimeOffset marked = DateTimeOffset.Parse(markedUtc, System.Globalization.CultureInfo.InvariantCulture);
        StepRun[] runs = [new("potting", marked.AddDays(-1), marked.AddDays(-1).AddMinutes(10)), new("marking", marked, marked)];
        SetClock clock = new() { Utc = marked.AddHours(24).AddSeconds(-1) };
        Assert.Contains(
            wallEnd,
            Assert.Single(MayBegin("packing", runs, ShopTime.NowUtc(clock, marked), s_berlin)).Message,
            StringComparison.Ordinal
        );
        clock.Utc = marked.AddHours(24);
        Assert.Empty(MayBegin("packing", runs, ShopTime.NowUtc(clock, marked), s_berlin));
    }

    [Fact]
    public void The_hour_that_comes_twice_says_which_it_is()
    {
        DateTimeOffset first = new(2026, 10, 25, 0, 30, 0, TimeSpan.Zero),
            second = first.AddHours(1);
        Assert.Equal("2026-10-25 02:30 (+02:00)", ShopTime.Words(first, s_berlin));
        Assert.Equal("2026-10-25 02:30 (+01:00)", ShopTime.Words(second, s_berlin));
    }

    [Fact]
    public void A_clock_that_was_set_back_neither_ends_a_hold_nor_makes_records_younger()
    {
        SetClock clock = new() { Utc = s_noon.AddHours(-5) };
        Assert.Equal(s_noon, ShopTime.NowUtc(clock, s_noon));
        Assert.Contains("300 min behind", ShopTime.Doubt(clock, s_noon), StringComparison.Ordinal);
        Assert.Null(ShopTime.Doubt(clock, s_noon.AddHours(-6)));
    }

    [Fact]
    public void What_may_begin_may_begin_at_every_later_moment() =>
        Gen.Select(Gen.Int[0, 3000], Gen.Int[0, 3000], Gen.Int[0, 60])
            .ForAll(
                (now, later, took) =>
                {
                    StepRun[] runs = [new("potting", s_noon, s_noon.AddMinutes(took))];
                    bool Free(int minutes) => MayBegin("marking", runs, s_noon.AddMinutes(minutes)).Count == 0;
                    return !Free(now) || Free(now + later);
                }
            );

    [Fact]
    public void The_usual_steps_of_a_waxed_recipe_carry_their_cautions()
    {
        Recipe recipe = RecipeReader.Read(File.ReadAllText(RepositoryPath.Of("demo", "recipes", "harbour-bridge.json"))).Value!;
        IReadOnlyList<StepPlan> steps = UsualSteps.Of(recipe);
        Assert.Equal(["assembly", "magnets", "potting", "marking", "final test", "packing"], steps.Select(step => step.Name));
        Assert.Contains(Cautions.HotWax, steps.Single(step => step.Name == "potting").Cautions);
        Assert.Equal(TimeSpan.FromHours(24), steps.Single(step => step.Name == "marking").HoldAfter); // common practice
    }

    private static IReadOnlyList<Problem> MayBegin(string step, StepRun[] runs, DateTimeOffset now, TimeZoneInfo? zone = null) =>
        StepRules.MayBegin(step, s_plans, runs, [], now, zone ?? TimeZoneInfo.Utc);

    private static StepStatus Stand(StepRun[] runs, int minutes) =>
        StepRules.Stand(s_plans, runs, [], s_noon.AddMinutes(minutes), s_berlin);

    private sealed class SetClock : TimeProvider
    {
        public DateTimeOffset Utc { get; set; }

        public override DateTimeOffset GetUtcNow() => Utc;
    }
}
