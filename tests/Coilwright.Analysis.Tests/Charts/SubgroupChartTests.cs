using System.Text.Json;
using Coilwright.Analysis.Charts;

namespace Coilwright.Analysis.Tests.Charts;

public sealed class SubgroupChartTests
{
    private static readonly JsonElement s_sets = ChartReference.Read("subgroups.json");
    private static readonly double[][] s_pistons =
    [
        .. s_sets.GetProperty("pistons").GetProperty("values").EnumerateArray().Select(ChartReference.Numbers),
    ];

    [Fact] // results printed in the qcc documentation
    public void Piston_rings_give_the_published_limits()
    {
        SubgroupChart range = SubgroupChart.Fit(s_pistons, SubgroupSpread.Range)! with { TableD2 = true },
            deviation = SubgroupChart.Fit(s_pistons, SubgroupSpread.StandardDeviation)!;
        Evidence
            .Outside(
                "X̄–R and X̄–S limits, 25 samples of 5",
                "piston rings, documentation of the R package qcc [QccData]",
                "read",
                "rounding: half the last printed digit; the range's upper limit is printed from d3 = 0.864086, where "
                    + "integration gives 0.864082"
            )
            .Within(range.Centre, 74.00118, 0.000005)
            .Within(range.LowerMean, 73.98805, 0.000005)
            .Within(range.UpperMean, 74.0143, 0.00005)
            .Within(range.MeanSpread, 0.02276, 0.000005)
            .Within(range.Sigma, 0.009785039, 0.5e-9)
            .Within(range.UpperSpread, 0.04812533, 1.1e-7)
            .Within(range.LowerSpread, 0, 0)
            .Within(deviation.MeanSpread, 0.009240037, 0.5e-9)
            .Within(deviation.Sigma, 0.009829977, 0.5e-9)
            .Within(deviation.UpperSpread, 0.01930242, 0.5e-8)
            .Record();
    }

    [Theory] // first, second and last limits of the averages, with the start-up term
    [InlineData(1, 73.99855, 74.0038)]
    [InlineData(2, 73.99781, 74.00454)]
    [InlineData(25, 73.9968, 74.00555)]
    public void Moving_average_limits_of_the_piston_rings(int sample, double low, double high)
    {
        SubgroupChart chart = SubgroupChart.Fit(s_pistons, SubgroupSpread.Range)!;
        EwmaChart average = new(chart.Centre, chart.Sigma / Math.Sqrt(5), Lambda: 0.2, Width: 3);
        Evidence
            .Outside(
                $"EWMA limits at sample {sample}",
                "piston rings, documentation of the R package qcc [QccData]",
                "read",
                "rounding: half the last printed digit"
            )
            .Within(chart.Centre - average.HalfWidth(sample), low, sample == 25 ? 0.00005 : 0.000005, "mm")
            .Within(chart.Centre + average.HalfWidth(sample), high, 0.00005, "mm")
            .Record();
    }

    [Fact] // target 50, lambda 0.3, sigma 2.0539
    public void Moving_average_of_the_handbook()
    {
        double[] printed =
        [
            50.6,
            49.52,
            50.56,
            50.18,
            50.16,
            49.21,
            49.75,
            49.85,
            50.26,
            50.33,
            50.11,
            49.36,
            49.52,
            50.05,
            49.38,
            49.92,
            50.73,
            51.23,
            51.94,
            51.99,
        ];
        EwmaChart chart = new(50, 2.0539, Lambda: 0.3, Width: 3);
        double[] points = [.. chart.Points(ChartReference.Numbers(s_sets.GetProperty("ewmaInput").GetProperty("values")))];
        Assert.Equal(printed.Length, points.Length);
        Evidence check = Evidence.Outside(
            "EWMA of 20 values and its limits",
            "NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4, in a reproduction [HandbookGauge]",
            "read-secondary",
            "rounding: the handbook rounds as it goes"
        );
        Assert.All(printed.Zip(points), pair => check.Within(pair.Second, pair.First, 0.006));
        check.Within(50 + chart.HalfWidth(), 52.5884, 0.0001).Within(50 - chart.HalfWidth(), 47.4115, 0.0001).Record();
    }

    [Fact]
    public void Viscosity_with_and_without_its_fourth_batch()
    {
        double[] all = ChartReference.Numbers(s_sets.GetProperty("viscosity").GetProperty("values"));
        IndividualsChart first = IndividualsChart.Fit(all)!;
        IndividualsChart without = IndividualsChart.Fit([.. all.Where((_, n) => n != 3)])!;
        Evidence
            .Outside(
                "Individuals chart before and after one batch is taken out",
                "viscosity, documentation of the R package qcc [QccData]",
                "read",
                "rounding: half the last printed digit"
            )
            .Within(first.Sigma, 0.5076521, 0.5e-7)
            .Within(first.LowerLimit, 32.56504, 0.000005)
            .Within(first.UpperLimit, 35.61096, 0.000005)
            .Within(without.Centre, 33.98947, 0.000005)
            .Within(without.Sigma, 0.4117415, 0.5e-7)
            .Within(without.LowerLimit, 32.75425, 0.000005)
            .Record();
    }
}
