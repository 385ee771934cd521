using System.Text.Json;
using Coilwright.Analysis.Charts;

namespace Coilwright.Analysis.Tests.Charts;

public sealed class SubgroupChartTests
{
    private static readonly JsonElement s_sets = ChartReference.Read("subgroups.json");
    private static readonly double[][] s_pistons = [.. s_sets.GetProperty("pistons").GetProperty("values").EnumerateArray().Select(ChartReference.Numbers)];

    [Fact] // results printed in the qcc documentation
    public void Piston_rings_give_the_published_limits()
    {
        SubgroupChart range = SubgroupChart.Fit(s_pistons, SubgroupSpread.Range)! with { TableD2 = true }, deviation = SubgroupChart.Fit(s_pistons, SubgroupSpread.StandardDeviation)!;
        Assert.Equal(74.00118, range.Centre, 0.000005);
        Assert.Equal(73.98805, range.LowerMean, 0.000005);
        Assert.Equal(74.0143, range.UpperMean, 0.00005);
        Assert.Equal(0.02276, range.MeanSpread, 0.000005);
        Assert.Equal(0.009785039, range.Sigma, 0.5e-9);
        Assert.Equal(0.04812533, range.UpperSpread, 1.1e-7); // printed from d3 = 0.864086, where integration gives 0.864082
        Assert.Equal(0, range.LowerSpread);
        Assert.Equal(0.009240037, deviation.MeanSpread, 0.5e-9);
        Assert.Equal(0.009829977, deviation.Sigma, 0.5e-9);
        Assert.Equal(0.01930242, deviation.UpperSpread, 0.5e-8);
        EvidenceLog.Record("X̄–R and X̄–S limits, 25 samples of 5", "piston rings, qcc documentation (data Montgomery)", "read", "half the last printed digit (9 decimals for sigma); upper limit of the range 1e-7, whose printed d3 is off in the fifth digit", "all ten figures met");
    }

    [Theory] // first, second and last limits of the averages, with the start-up term
    [InlineData(1, 73.99855, 74.0038)]
    [InlineData(2, 73.99781, 74.00454)]
    [InlineData(25, 73.9968, 74.00555)]
    public void Moving_average_limits_of_the_piston_rings(int sample, double low, double high)
    {
        SubgroupChart chart = SubgroupChart.Fit(s_pistons, SubgroupSpread.Range)!;
        EwmaChart average = new(chart.Centre, chart.Sigma / Math.Sqrt(5), Lambda: 0.2, Width: 3);
        Assert.Equal(low, chart.Centre - average.HalfWidth(sample), sample == 25 ? 0.00005 : 0.000005);
        Assert.Equal(high, chart.Centre + average.HalfWidth(sample), 0.00005);
        EvidenceLog.Record($"EWMA limits at sample {sample}", "piston rings, qcc documentation", "read", "half the last printed digit", "met");
    }

    [Fact] // target 50, lambda 0.3, sigma 2.0539
    public void Moving_average_of_the_handbook()
    {
        double[] printed = [50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99];
        EwmaChart chart = new(50, 2.0539, Lambda: 0.3, Width: 3);
        double[] points = [.. chart.Points(ChartReference.Numbers(s_sets.GetProperty("ewmaInput").GetProperty("values")))];
        Assert.Equal(printed.Length, points.Length);
        Assert.All(printed.Zip(points), pair => Assert.Equal(pair.First, pair.Second, 0.006));
        Assert.Equal(52.5884, 50 + chart.HalfWidth(), 0.0001);
        Assert.Equal(47.4115, 50 - chart.HalfWidth(), 0.0001);
        EvidenceLog.Record("EWMA of 20 values and its limits", "NIST/SEMATECH e-Handbook 6.3.2.4, in a reproduction", "read-secondary", "0.006 (the handbook rounds as it goes), limits 0.0001", "met");
    }

    [Fact]
    public void Viscosity_with_and_without_its_fourth_batch()
    {
        double[] all = ChartReference.Numbers(s_sets.GetProperty("viscosity").GetProperty("values"));
        IndividualsChart first = IndividualsChart.Fit(all)!;
        Assert.Equal(0.5076521, first.Sigma, 0.5e-7);
        Assert.Equal(32.56504, first.LowerLimit, 0.000005);
        Assert.Equal(35.61096, first.UpperLimit, 0.000005);
        IndividualsChart without = IndividualsChart.Fit([.. all.Where((_, n) => n != 3)])!;
        Assert.Equal(33.98947, without.Centre, 0.000005);
        Assert.Equal(0.4117415, without.Sigma, 0.5e-7);
        Assert.Equal(32.75425, without.LowerLimit, 0.000005);
        EvidenceLog.Record("Individuals chart after one batch is taken out", "viscosity, qcc documentation", "read", "half the last printed digit of the mean", FormattableString.Invariant($"{without.Centre:0.00000}"));
    }
}
