using Coilwright.Analysis.Charts;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.ControlCharts;

/// <summary>Makes the charts of a run of coils. Pure: the same coils give the same wall.</summary>
public static class ControlChartBuilder
{
    /// <summary>The wall; null for fewer than two coils that count.</summary>
    /// <param name="question">How they are charted.</param>
    /// <param name="points">The coils in order of entry.</param>
    /// <param name="band">The recipe's limits, or null.</param>
    /// <param name="baseValues">Values that frozen limits are taken from; null takes the first of <paramref name="points"/>.</param>
    public static ControlChart? Build(
        ChartSettings question,
        IReadOnlyList<ChartedCoil> points,
        Band? band,
        IReadOnlyList<double>? baseValues = null
    )
    {
        int[] places = [.. Enumerable.Range(0, points.Count).Where(n => !points[n].LeftOut)];
        double[] values = [.. places.Select(place => points[place].Value)];
        double[] from = !question.Frozen ? values : [.. (baseValues ?? values).Take(question.LimitsFrom)];
        if (values.Length < 2 || IndividualsChart.Fit(from, from.Length) is not { } limits)
        {
            return null;
        }

        List<ChartSeries> charts = [];
        List<ChartSignal> signals = [];
        void Add(ChartSeries chart, IEnumerable<RunSignal> found)
        {
            charts.Add(chart);
            signals.AddRange(
                found.Select(signal => new ChartSignal(
                    chart.Name,
                    chart.Places[signal.Index],
                    points[chart.Places[signal.Index]].Tag,
                    signal.Rule
                ))
            );
        }

        SubgroupChart? groups = question.Subgroup < 2 ? null : AddSubgroups(question, values, places, baseValues, Add);
        if (groups is null)
        {
            AddSingles(question, limits, values, places, Add);
        }

        AddSlow(question, limits, values, places, Add);
        ChartCapability capability = new(question, values, band, limits.Sigma, groups);
        return new ControlChart
        {
            Question = question,
            Points = points,
            Band = band,
            LimitsFrom = from.Length,
            Centre = limits.Centre,
            Sigma = limits.Sigma,
            Charts = charts,
            Signals = [.. signals.OrderBy(signal => signal.Index)],
            Alarms = FalseAlarmRates.Of(question, charts),
            Capability = capability.Indices,
            Notes =
            [
                .. question.Subgroup >= 2 && groups is null
                    ? ["fewer than two whole subgroups: single coils are charted"]
                    : Array.Empty<string>(),
                .. capability.Notes,
            ],
        };
    }

    private static void AddSingles(
        ChartSettings question,
        IndividualsChart limits,
        double[] values,
        int[] places,
        Action<ChartSeries, IEnumerable<RunSignal>> add
    )
    {
        add(
            new ChartSeries(
                ControlChart.Individuals,
                values,
                null,
                limits.Centre,
                Same(limits.LowerLimit, values.Length),
                Same(limits.UpperLimit, values.Length),
                places
            ),
            question.Rules.Signals(values, limits.Centre, limits.Sigma)
        );
        double[] ranges = [.. values.Zip(values.Skip(1), (a, b) => Math.Abs(b - a))];
        double most = ChartConstants.ForSize(2).UpperRange * limits.MeanMovingRange;
        add(
            new ChartSeries(
                ControlChart.MovingRanges,
                ranges,
                null,
                limits.MeanMovingRange,
                Same(0, ranges.Length),
                Same(most, ranges.Length),
                [.. places.Skip(1)]
            ),
            Above(ranges, most, FalseAlarmRates.RangeAbove)
        );
    }

    private static void AddSlow(
        ChartSettings question,
        IndividualsChart limits,
        double[] values,
        int[] places,
        Action<ChartSeries, IEnumerable<RunSignal>> add
    )
    {
        EwmaChart average = new(limits.Centre, limits.Sigma, question.Lambda);
        double[] half = [.. Enumerable.Range(1, values.Length).Select(point => average.HalfWidth(point))];
        add(
            new ChartSeries(
                ControlChart.Average,
                average.Points(values),
                null,
                limits.Centre,
                [.. half.Select(width => limits.Centre - width)],
                [.. half.Select(width => limits.Centre + width)],
                places
            ),
            average.Signals(values).Select(signal => signal with { Rule = FalseAlarmRates.AverageOut })
        );
        CusumChart sums = new(limits.Centre, limits.Sigma, question.Allowance, question.Decision);
        IReadOnlyList<(double Upper, double Lower)> both = sums.Sums(values);
        add(
            new ChartSeries(
                ControlChart.Sums,
                [.. both.Select(sum => sum.Upper)],
                [.. both.Select(sum => -sum.Lower)],
                0,
                Same(-question.Decision, values.Length),
                Same(question.Decision, values.Length),
                places,
                InSigma: true
            ),
            sums.Signals(values).Select(signal => signal with { Rule = FalseAlarmRates.SumOut })
        );
    }

    private static SubgroupChart? AddSubgroups(
        ChartSettings question,
        double[] values,
        int[] places,
        IReadOnlyList<double>? baseValues,
        Action<ChartSeries, IEnumerable<RunSignal>> add
    )
    {
        int size = question.Subgroup;
        double[][] groups = Whole(values, size),
            from = question.Frozen ? [.. Whole(baseValues ?? values, size).Take(Math.Max(2, question.LimitsFrom / size))] : groups;
        if (groups.Length < 2 || from.Length < 2 || SubgroupChart.Fit(from, question.Spread) is not { } chart)
        {
            return null;
        }

        double[] means = [.. groups.Select(group => group.Average())],
            spreads = [.. groups.Select(group => SubgroupChart.SpreadOf(group, question.Spread))];
        int[] ends = [.. Enumerable.Range(1, groups.Length).Select(group => places[group * size - 1])];
        add(
            new ChartSeries(
                ControlChart.Means,
                means,
                null,
                chart.Centre,
                Same(chart.LowerMean, means.Length),
                Same(chart.UpperMean, means.Length),
                ends
            ),
            question.Rules.Signals(means, chart.Centre, chart.Sigma / Math.Sqrt(size))
        );
        RunSignal[] wide =
        [
            .. Above(spreads, chart.UpperSpread, FalseAlarmRates.SpreadAbove),
            .. Enumerable
                .Range(0, spreads.Length)
                .Where(n => spreads[n] < chart.LowerSpread)
                .Select(n => new RunSignal(n, FalseAlarmRates.SpreadBelow)),
        ];
        add(
            new ChartSeries(
                ControlChart.Spreads,
                spreads,
                null,
                chart.MeanSpread,
                Same(chart.LowerSpread, spreads.Length),
                Same(chart.UpperSpread, spreads.Length),
                ends
            ),
            wide
        );
        return chart;
    }

    private static double[][] Whole(IReadOnlyList<double> values, int size) => [.. values.Chunk(size).Where(group => group.Length == size)];

    private static IEnumerable<RunSignal> Above(double[] values, double most, string rule) =>
        most <= 0 ? [] : Enumerable.Range(0, values.Length).Where(n => values[n] > most * (1 + 1e-12)).Select(n => new RunSignal(n, rule));

    private static IReadOnlyList<double> Same(double value, int count) => [.. Enumerable.Repeat(value, count)];
}
