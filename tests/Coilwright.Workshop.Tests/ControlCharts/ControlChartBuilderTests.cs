using Coilwright.Analysis.Charts;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Tests.ControlCharts;

public sealed class ControlChartBuilderTests
{
    private static readonly Band s_band = new(6180, 5933, 6427, IsTarget: true);

    [Fact]
    public void Frozen_limits_stay_when_later_coils_come_and_running_ones_move()
    {
        ChartedCoil[] first = Run(60, seed: 1),
            longer = [.. first, .. Run(60, seed: 2, middle: 6300)];
        ControlChart frozen = ControlChartBuilder.Build(new ChartSettings(), first, s_band)!,
            later = ControlChartBuilder.Build(new ChartSettings(), longer, s_band)!;
        Assert.Equal((frozen.Centre, frozen.Sigma, 20), (later.Centre, later.Sigma, later.LimitsFrom));
        ControlChart running = ControlChartBuilder.Build(new ChartSettings { Frozen = false }, longer, s_band)!;
        Assert.Equal(120, running.LimitsFrom);
        Assert.True(running.Centre > later.Centre + 30);
    }

    [Fact]
    public void Single_coils_signal_where_the_judged_run_does()
    {
        ChartedCoil[] points = [.. Run(50, seed: 5), .. Run(10, seed: 6, middle: 6290)];
        double[] ohms = [.. points.Select(point => point.Value)];
        ControlChart wall = ControlChartBuilder.Build(new ChartSettings(), points, s_band)!;
        IReadOnlyList<RunSignal> expected = IndividualsChart.Fit(ohms)!.Signals(ohms);
        Assert.NotEmpty(expected);
        Assert.Equal(
            expected.Select(signal => (points[signal.Index].Tag, signal.Rule)),
            wall.Signals.Where(signal => signal.Chart == ControlChart.Individuals).Select(signal => (signal.Tag, signal.Rule))
        );
        foreach (string slow in new[] { ControlChart.Average, ControlChart.Sums })
        {
            Assert.InRange(wall.Signals.First(signal => signal.Chart == slow).Index, 50, 54);
        }
    }

    [Fact]
    public void Coils_outside_the_recipes_limits_move_nothing()
    {
        ChartedCoil[] clean = Run(40, seed: 3),
            spoilt = [.. clean[..10], new ChartedCoil("X", 9000) { LeftOut = true }, .. clean[10..]];
        ControlChart without = ControlChartBuilder.Build(new ChartSettings(), clean, s_band)!,
            with = ControlChartBuilder.Build(new ChartSettings(), spoilt, s_band)!;
        Assert.Equal((without.Centre, without.Sigma, 1), (with.Centre, with.Sigma, with.LeftOut));
        Assert.Equal(without.Signals.Select(signal => signal.Tag), with.Signals.Select(signal => signal.Tag));
        Assert.All(with.Signals, signal => Assert.Equal(signal.Tag, with.Points[signal.Index].Tag));
    }

    [Theory]
    [InlineData(SubgroupSpread.Range)]
    [InlineData(SubgroupSpread.StandardDeviation)]
    public void Subgroups_are_charted_by_means_and_spread(SubgroupSpread spread)
    {
        ChartedCoil[] points = [.. Run(100, seed: 7), .. Run(20, seed: 8, middle: 6260)];
        ControlChart wall = ControlChartBuilder.Build(
            new ChartSettings
            {
                Subgroup = 5,
                Spread = spread,
                LimitsFrom = 100,
            },
            points,
            s_band
        )!;
        Assert.Equal(
            [ControlChart.Means, ControlChart.Spreads, ControlChart.Average, ControlChart.Sums],
            wall.Charts.Select(chart => chart.Name)
        );
        Assert.Equal(24, wall.Charts[0].Values.Count);
        double[][] groups = [.. points.Select(point => point.Value).Chunk(5)];
        SubgroupChart expected = SubgroupChart.Fit(groups[..20], spread)!;
        Assert.Equal(
            (expected.Centre, expected.UpperMean, expected.UpperSpread),
            (wall.Charts[0].Centre, wall.Charts[0].High[0], wall.Charts[1].High[0])
        );
        Assert.Contains(wall.Signals, signal => signal.Chart == ControlChart.Means && signal.Index >= 100);
    }

    [Fact]
    public void Capability_is_one_sided_or_not_normal_where_that_is_asked()
    {
        ChartedCoil[] points = Run(2000, seed: 9);
        ControlChart both = ControlChartBuilder.Build(new ChartSettings(), points, s_band)!,
            upper = ControlChartBuilder.Build(new ChartSettings { Sides = SpecificationSides.UpperOnly }, points, s_band)!;
        Assert.Equal(["Cp", "Cpk", "Pp", "Ppk"], both.Capability.Select(index => index.Name));
        Assert.Equal(["Cpk", "Ppk"], upper.Capability.Select(index => index.Name));
        ChartCapabilityIndex[] shapes =
        [
            .. new[] { DistributionModel.LogNormal, DistributionModel.Empirical }.Select(shape =>
                ControlChartBuilder
                    .Build(new ChartSettings { Shape = shape }, points, s_band)!
                    .Capability.Single(index => index.Name == "Ppk")
            ),
        ];
        Assert.All(shapes, index => Assert.InRange(index.Index.Value, index.Index.Low, index.Index.High));
        // so narrow a log-normal is nearly normal
        Assert.Equal(both.Capability[3].Index.Value, shapes[0].Index.Value, 0.05 * both.Capability[3].Index.Value);
        Assert.Contains(
            ControlChartBuilder.Build(new ChartSettings { Shape = DistributionModel.Empirical }, points[..500], s_band)!.Notes,
            note => note.Contains("needs 1,000 coils", StringComparison.Ordinal)
        );
        Assert.Contains(ControlChartBuilder.Build(new ChartSettings(), points, null)!.Notes, note =>
            note.Contains("sets no limits", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void An_unbroken_run_of_signals_is_told_once()
    {
        ControlChart wall = ControlChartBuilder.Build(
            new ChartSettings(),
            [.. Run(40, seed: 12), .. Run(20, seed: 13, middle: 6330)],
            s_band
        )!;
        IReadOnlyList<SignalRun> spells = wall.SignalRuns();
        Assert.True(spells.Count < wall.Signals.Count);
        Assert.Equal(wall.Signals.Count, spells.Sum(spell => spell.Count));
        Assert.All(spells, spell => Assert.NotEqual("", spell.Letter));
    }

    /// <summary>Ohms about a middle with a spread of 30 Ω.</summary>
    private static ChartedCoil[] Run(int coils, int seed, double middle = 6180)
    {
        Random random = new(seed);
        return
        [
            .. Enumerable
                .Range(1, coils)
                .Select(n => new ChartedCoil(
                    $"C-{seed}-{n:000}",
                    middle + 30 * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble())
                )),
        ];
    }
}
