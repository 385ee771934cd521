using Coilwright.Analysis.Charts;

namespace Coilwright.Analysis.Tests.Charts;

public sealed class RunLengthTests
{
    // exact figures from a Markov chain outside this program; printed ones of [RunRules]: 91.75 read in a secondary source, the others from
    // memory
    [Theory]
    [InlineData(false, false, 0, 370.3983473)]
    [InlineData(true, false, 0, 225.4384067)]
    [InlineData(false, true, 0, 166.0545171)]
    [InlineData(false, false, 8, 152.7300653)]
    [InlineData(true, true, 0, 132.8928114)]
    [InlineData(true, true, 8, 91.75077313)]
    [InlineData(true, true, 9, 109.0493173)]
    public void False_alarms_of_the_rules_together(bool two, bool four, int run, double expected)
    {
        double length = RuleRunLength.Compute(0, two, four, run);
        string rules = FormattableString.Invariant(
            $"rule 1{(two ? " + 2" : "")}{(four ? " + 3" : "")}{(run > 0 ? $" + run of {run}" : "")}"
        );
        Evidence
            .Outside(
                "Mean run to a false alarm: " + rules,
                "a Markov chain computed outside this program",
                "derived",
                "rounding: of ten printed figures, and of the solve"
            )
            .WithinPart(length, expected, 1e-6)
            .Record();
        if (two && four is false && run == 0 || two && four && run == 8)
        {
            Evidence
                .Outside(
                    "Mean run to a false alarm, printed: " + rules,
                    "C. W. Champ and W. H. Woodall, Technometrics 29 (1987) [RunRules]",
                    run == 8 ? "read-secondary" : "memory",
                    "rounding: half the last printed digit"
                )
                .Within(length, run == 8 ? 91.75 : 225.44, 0.005)
                .Record();
        }
    }

    [Theory]
    [InlineData(0, 370)]
    [InlineData(0.1, 353)]
    [InlineData(0.2, 308)]
    public void One_point_beyond_three_sigma_after_a_shift(double shift, double expected) =>
        Assert.Equal(expected, RuleRunLength.Compute(shift, false, false, 0), 0.5);

    [Fact] // 465 for k = 0.5, h = 5 and 10.4 after a shift of one sigma: from memory
    public void Cumulative_sums_run_as_long_as_printed()
    {
        double good = CusumRunLength.TwoSided(0.5, 5),
            shifted = CusumRunLength.TwoSided(0.5, 5, 1);
        Evidence
            .Outside(
                "Cumulative sum k = 0.5, h = 5: mean run in control",
                "widely printed; from memory",
                "memory",
                "rounding: the last printed digit"
            )
            .Within(good, 465, 0.5)
            .Record();
        Evidence
            .Outside(
                "Cumulative sum k = 0.5, h = 5: mean run after one sigma",
                "widely printed; from memory",
                "memory",
                "rounding: half the last printed digit"
            )
            .Within(shifted, 10.4, 0.05)
            .Record();
    }

    [Fact]
    public void Cumulative_sum_signals_in_simulation_as_often_as_computed()
    {
        Random random = new(7);
        CusumChart chart = new(0, 1);
        double[] lengths =
        [
            .. Enumerable
                .Range(0, 2000)
                .Select(_ => (double)chart.Signals([.. Enumerable.Range(0, 200).Select(_ => 1 + Gauss(random))])[0].Index + 1),
        ];
        double error = Math.Sqrt(lengths.Select(length => Math.Pow(length - lengths.Average(), 2)).Average() / lengths.Length);
        Assert.InRange(lengths.Average(), CusumRunLength.TwoSided(0.5, 5, 1) - 3 * error, CusumRunLength.TwoSided(0.5, 5, 1) + 3 * error);
    }

    // 45 values made to break every rule; places read in the test set of an open implementation, except where it counts steps and not
    // points
    [Fact]
    public void Every_rule_signals_where_an_open_implementation_does()
    {
        double[] values = ChartReference.Numbers(ChartReference.Read("subgroups.json").GetProperty("runs"));
        IndividualsChart chart = IndividualsChart.Fit(values, values.Length)!;
        double sigma = chart.MeanMovingRange / ChartConstants.ForSize(2).D2;
        Evidence
            .Outside(
                "Run rules: points that signal trend, alternation, 15 within, 8 outside",
                "tests of jaspQualityControl, commit 38c84de52092 [JaspQc]",
                "read",
                "exact: trend and alternation counted in points, theirs in steps"
            )
            .Same(Places(RunRules.Trending(values, 7)), "21 22")
            .Same(Places(RunRules.Alternating(values, 14)), "14 15 16")
            .Same(Places(RunRules.Within(values, chart.Centre, sigma, 15)), "29 30 31 32 33 34 35 36")
            .Same(Places(RunRules.Outside(values, chart.Centre, sigma, 8)), "44 45")
            .Record();
    }

    private static string Places(IEnumerable<int> places) => string.Join(' ', places.Select(place => place + 1));

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
