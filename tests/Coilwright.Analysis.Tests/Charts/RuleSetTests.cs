using Coilwright.Analysis.Charts;
using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Tests.Charts;

public sealed class RuleSetTests
{
    [Fact] // run of r of one side of a known centre: 2^r − 1 values on average, twice the chance for either side; 370.4 is 1/0.0027
    public void Each_rule_by_itself_alarms_as_seldom_as_arithmetic_says()
    {
        Assert.Equal(255, RuleSet.WesternElectric.Rules[3].FalseAlarmEvery, 1e-6);
        Assert.Equal(511, RuleSet.Nelson.Rules[1].FalseAlarmEvery, 1e-6);
        Assert.Equal(370.398, RuleSet.WesternElectric.Rules[0].FalseAlarmEvery, 0.001);
        Assert.Equal(510, RuleSet.WaitForRun(0.5, 8), 1e-9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    public void Each_rule_of_Nelson_alarms_in_simulation_as_seldom_as_computed(int rule)
    {
        RuleAlarm alarm = RuleSet.Nelson.Rules[rule];
        Random random = new(100 + rule);
        int runs = alarm.FalseAlarmEvery > 5000 ? 800 : 3000;
        double[] lengths = [.. Enumerable.Range(0, runs).Select(_ => (double)FirstPlace(random, alarm.Rule))];
        double mean = lengths.Average(),
            error = Math.Sqrt(lengths.Select(length => Math.Pow(length - mean, 2)).Average() / runs);
        Assert.True(error < 0.04 * alarm.FalseAlarmEvery, "the check would be too blunt");
        Evidence
            .Own(
                $"Mean run to a false alarm of the rule \"{alarm.Rule}\" by itself",
                "simulation, our own generator and seed",
                FormattableString.Invariant($"chance: 3.5 standard errors of {runs:#,##0} runs")
            )
            .WithinPart(mean, alarm.FalseAlarmEvery, Math.Round(3.5 * error / alarm.FalseAlarmEvery, 3))
            .Record(FormattableString.Invariant($"computed {alarm.FalseAlarmEvery:0.0}, simulated {mean:0.0} ± {error:0.0}"));
    }

    [Fact]
    public void The_eight_rules_together_alarm_oftener_than_any_of_them() =>
        Assert.InRange(RuleSet.Nelson.TogetherEvery, 10, RuleSet.Nelson.Rules.Min(rule => rule.FalseAlarmEvery));

    [Theory] // Lucas and Saccucci, Technometrics 32 (1990), from memory: designs for a run of 500 and the run after one sigma
    [InlineData(0.2, 2.962, 0, 500, 2)]
    [InlineData(0.1, 2.814, 0, 500, 2)]
    [InlineData(0.2, 2.962, 1, 10.5, 0.1)]
    [InlineData(0.1, 2.814, 1, 10.3, 0.1)]
    public void Moving_averages_run_as_long_as_printed(double lambda, double width, double shift, double expected, double within)
    {
        double length = EwmaRunLength.Compute(lambda, width, shift);
        Evidence
            .Outside(
                FormattableString.Invariant($"Moving average λ = {lambda}, L = {width}: mean run at a shift of {shift} sigma"),
                "J. M. Lucas and M. S. Saccucci 1990 [Ewma]",
                "memory",
                shift > 0 ? "rounding: the last printed digit" : "rounding: the design's L has four figures"
            )
            .Within(length, expected, within)
            .Record();
    }

    private static int FirstPlace(Random random, string rule)
    {
        List<double> values = [];
        while (true)
        {
            values.AddRange(Enumerable.Range(0, 300).Select(_ => Normal.InvCDF(0, 1, 1 - random.NextDouble())));
            IEnumerable<int> places = rule switch
            {
                RunRules.BeyondThree => RunRules.Several(values, 0, 3, 1, 1),
                RunRules.NineOnOneSide => RunRules.Several(values, 0, 0, 9, 9),
                RunRules.SixTrending => RunRules.Trending(values, 6),
                RunRules.FourteenAlternating => RunRules.Alternating(values, 14),
                RunRules.TwoOfThree => RunRules.Several(values, 0, 2, 2, 3),
                RunRules.FourOfFive => RunRules.Several(values, 0, 1, 4, 5),
                RunRules.FifteenWithin => RunRules.Within(values, 0, 1, 15),
                _ => RunRules.Outside(values, 0, 1, 8),
            };
            foreach (int place in places)
            {
                return place + 1;
            }
        }
    }
}
