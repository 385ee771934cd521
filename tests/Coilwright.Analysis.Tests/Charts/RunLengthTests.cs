using Coilwright.Analysis.Charts;

namespace Coilwright.Analysis.Tests.Charts;

public sealed class RunLengthTests
{
    [Theory] // Champ and Woodall, Technometrics 29 (1987); the last read in a secondary source, the others from memory; exact figures from an outside Markov chain
    [InlineData(false, false, 0, 370.3983473)]
    [InlineData(true, false, 0, 225.4384067)]
    [InlineData(false, true, 0, 166.0545171)]
    [InlineData(false, false, 8, 152.7300653)]
    [InlineData(true, true, 0, 132.8928114)]
    [InlineData(true, true, 8, 91.75077313)]
    [InlineData(true, true, 9, 109.0493173)]
    public void False_alarms_of_the_rules_together(bool two, bool four, int run, double expected)
    {
        double length = RuleRunLength.Of(0, two, four, run);
        Assert.Equal(expected, length, 1e-6 * expected);
        EvidenceLog.Record(FormattableString.Invariant($"Mean run to a false alarm: rule 1{(two ? " + 2" : "")}{(four ? " + 3" : "")}{(run > 0 ? $" + run of {run}" : "")}"), "Champ and Woodall 1987; outside Markov chain", run == 8 && two ? "read-secondary" : "derived", "1e-6", FormattableString.Invariant($"{length:0.00}"));
    }

    [Theory]
    [InlineData(0, 370)]
    [InlineData(0.1, 353)]
    [InlineData(0.2, 308)]
    public void One_point_beyond_three_sigma_after_a_shift(double shift, double expected) => Assert.Equal(expected, RuleRunLength.Of(shift, false, false, 0), 0.5);

    [Fact] // 465 for k = 0.5, h = 5 and 10.4 after a shift of one sigma: widely printed, from memory
    public void Cumulative_sums_run_as_long_as_printed()
    {
        double good = CusumRunLength.TwoSided(0.5, 5), shifted = CusumRunLength.TwoSided(0.5, 5, 1);
        Assert.Equal(465, good, 1.0);
        Assert.Equal(10.4, shifted, 0.05);
        EvidenceLog.Record("Cumulative sum k = 0.5, h = 5: mean run in control and after one sigma", "widely printed 465 and 10.4", "memory", "1 and 0.05", FormattableString.Invariant($"{good:0.0} and {shifted:0.00}"));
    }

    [Fact]
    public void Cumulative_sum_signals_in_simulation_as_often_as_computed()
    {
        Random random = new(7);
        CusumChart chart = new(0, 1);
        double[] lengths = [.. Enumerable.Range(0, 2000).Select(_ => (double)chart.Signals([.. Enumerable.Range(0, 200).Select(_ => 1 + Gauss(random))])[0].Index + 1)];
        double error = Math.Sqrt(lengths.Select(length => Math.Pow(length - lengths.Average(), 2)).Average() / lengths.Length);
        Assert.InRange(lengths.Average(), CusumRunLength.TwoSided(0.5, 5, 1) - 3 * error, CusumRunLength.TwoSided(0.5, 5, 1) + 3 * error);
    }

    [Fact] // 45 values made to break every rule; places read in the test set of an open implementation, except where it counts steps and not points
    public void Every_rule_signals_where_an_open_implementation_does()
    {
        double[] values = ChartReference.Numbers(ChartReference.Read("subgroups.json").GetProperty("runs"));
        IndividualsChart chart = IndividualsChart.Fit(values, values.Length)!;
        double sigma = chart.MeanMovingRange / ChartConstants.Of(2).D2;
        Assert.Equal([21, 22], RunRules.Trending(values, 7).Select(place => place + 1));
        Assert.Equal([14, 15, 16], RunRules.Alternating(values, 14).Select(place => place + 1));
        Assert.Equal([29, 30, 31, 32, 33, 34, 35, 36], RunRules.Within(values, chart.Centre, sigma, 15).Select(place => place + 1));
        Assert.Equal([44, 45], RunRules.Outside(values, chart.Centre, sigma, 8).Select(place => place + 1));
        EvidenceLog.Record("Run rules: trend, alternation, 15 within, 8 outside", "open test set (jaspQualityControl)", "read", "same points; trend and alternation counted in points, theirs in steps", "met");
    }

    private static double Gauss(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
