using System.Collections.Concurrent;
using Coilwright.Analysis.Charts;
using MathNet.Numerics.Distributions;

namespace Coilwright.Workshop.ControlCharts;

/// <summary>What each rule of a wall is called and how often it alarms for nothing.</summary>
internal static class FalseAlarmRates
{
    public const string RangeAbove = "two neighbours further apart than the limit",
        SpreadAbove = "spread above its limit",
        SpreadBelow = "spread below its limit";
    public const string AverageOut = "moving average outside its limits",
        SumOut = "a sum above the decision line";

    private const string Exact = "exact for independent normal values and known limits";
    private static readonly ConcurrentDictionary<(double, double), double> s_sums = new(),
        s_averages = new();

    public static IReadOnlyList<FalseAlarmRate> Of(ChartSettings question, IReadOnlyList<ChartSeries> charts) =>
        [.. charts.SelectMany(chart => Of(question, chart.Name))];

    private static IEnumerable<FalseAlarmRate> Of(ChartSettings question, string chart) =>
        chart switch
        {
            ControlChart.Individuals or ControlChart.Means =>
            [
                .. question.Rules.Rules.Select(rule => new FalseAlarmRate(chart, rule.Rule, rule.FalseAlarmEvery, Exact)),
                new FalseAlarmRate(
                    chart,
                    ControlChart.Together,
                    question.Rules.TogetherEvery,
                    question.Rules.Exact ? Exact : "simulated for independent normal values and known limits, to about 1 %"
                ),
            ],
            ControlChart.MovingRanges =>
            [
                new FalseAlarmRate(chart, RangeAbove, 1 / RangeChance, "one range by itself; neighbouring ranges share a coil"),
            ],
            ControlChart.Average =>
            [
                new FalseAlarmRate(
                    chart,
                    AverageOut,
                    s_averages.GetOrAdd((question.Lambda, 3), key => EwmaRunLength.Compute(key.Item1, key.Item2)),
                    "Markov chain, limits as after many points"
                ),
            ],
            ControlChart.Sums =>
            [
                new FalseAlarmRate(
                    chart,
                    SumOut,
                    s_sums.GetOrAdd((question.Allowance, question.Decision), key => CusumRunLength.TwoSided(key.Item1, key.Item2)),
                    "Markov chain"
                ),
            ],
            _ =>
            [
                new FalseAlarmRate(chart, SpreadAbove, null, "not computed: limits at three sigma of a spread that is not normal"),
                new FalseAlarmRate(chart, SpreadBelow, null, "not computed"),
            ],
        };

    /// <summary>A difference of two normal values beyond D₄·d₂ sigma.</summary>
    private static double RangeChance =>
        2 * Normal.CDF(0, 1, -ChartConstants.ForSize(2).UpperRange * ChartConstants.ForSize(2).D2 / Math.Sqrt(2));
}
