using System.Text.Json;
using Coilwright.Analysis.Charts;

namespace Coilwright.Analysis.Tests.Charts;

/// <summary>Published figures: tests/Reference/charts/individuals.json, which names their sources.</summary>
public sealed class IndividualsChartTests
{
    private static readonly JsonElement s_reference = JsonDocument
        .Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Reference", "charts", "individuals.json")))
        .RootElement;

    [Fact]
    public void Limits_match_the_published_flow_rates()
    {
        JsonElement published = s_reference.GetProperty("individuals");
        IndividualsChart chart = IndividualsChart.Fit(Values("individuals"))!;
        Evidence check = Evidence
            .Outside(
                "Individuals chart: mean, mean moving range, limits",
                "NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2, flow rates, in a reproduction [HandbookGauge]",
                "read-secondary",
                "rounding: half the last printed digit"
            )
            .Within(chart.Centre, published.GetProperty("mean").GetDouble(), 0.005);
        foreach (
            (string name, double value) in (ReadOnlySpan<(string, double)>)
                [("meanMovingRange", chart.MeanMovingRange), ("upper", chart.UpperLimit), ("lower", chart.LowerLimit)]
        )
        {
            check.Within(value, published.GetProperty(name).GetDouble(), 0.00005, at: name);
        }

        check.Record();
    }

    [Fact]
    public void Sigma_matches_the_published_viscosities()
    {
        JsonElement published = s_reference.GetProperty("viscosity");
        IndividualsChart chart = IndividualsChart.Fit(Values("viscosity"))!;
        Evidence
            .Outside(
                "Individuals chart: mean and sigma of 20 viscosities",
                "documentation of the R package qcc [QccData]",
                "read",
                "rounding: half the last printed digit"
            )
            .Within(chart.Centre, published.GetProperty("mean").GetDouble(), 0.0005)
            .Within(chart.Sigma, published.GetProperty("sigma").GetDouble(), 0.5e-7)
            .Record();
    }

    [Theory]
    [InlineData("beyondThree", 3, 1, 1)]
    [InlineData("twoOfThree", 2, 2, 3)]
    [InlineData("fourOfFive", 1, 4, 5)]
    [InlineData("sevenOnOneSide", 0, 7, 7)]
    public void Each_rule_signals_at_the_published_points(string rule, double sigmas, int needed, int window)
    {
        double[] values = Values("runs");
        IndividualsChart chart = IndividualsChart.Fit(values, usedFirst: values.Length)!;
        double sigma = chart.MeanMovingRange / 1.1283791671;
        int[] published = [.. s_reference.GetProperty("runs").GetProperty(rule).EnumerateArray().Select(place => place.GetInt32())];
        Evidence
            .Outside($"Run rule {rule}: points that signal", "tests of jaspQualityControl, commit 38c84de52092 [JaspQc]", "read", "exact")
            .Same(
                string.Join(' ', RunRules.Several(values, chart.Centre, sigmas * sigma, needed, window).Select(place => place + 1)),
                string.Join(' ', published)
            )
            .Record();
    }

    [Fact] // 91.75: Champ and Woodall, Technometrics 29 (1987), all four rules; read in a secondary source
    public void False_alarms_come_as_seldom_as_published()
    {
        Random random = new(20260302);
        const int Runs = 3000;
        double[] lengths = [.. Enumerable.Range(0, Runs).Select(_ => (double)RunToFirstSignal(random))];
        double mean = lengths.Average(),
            error = Math.Sqrt(lengths.Select(length => (length - mean) * (length - mean)).Average() / Runs);
        Assert.True(error < 2, "the check would be too blunt");
        Evidence
            .Outside(
                "Mean run to a false alarm of the four Western Electric rules in simulation",
                "C. W. Champ and W. H. Woodall, Technometrics 29 (1987) [RunRules]",
                "read-secondary",
                "chance: three standard errors of 3,000 runs"
            )
            .Within(mean, 91.75, Math.Round(3 * error, 1))
            .Record();
    }

    [Fact] // 60 coils: 50 about 6.18 kΩ, ten about 6.29, spread 0.03
    public void Story_5_a_drift_is_seen_at_the_third_or_fourth_coil()
    {
        Random random = new(5);
        int seen = 0;
        const int Runs = 400;
        for (int run = 0; run < Runs; run++)
        {
            double[] ohms = [.. Enumerable.Range(0, 60).Select(coil => (coil < 50 ? 6180 : 6290) + 30 * Gauss(random))];
            seen += IndividualsChart.Fit(ohms)!.Signals(ohms).Any(signal => signal.Index is >= 50 and <= 53) ? 1 : 0;
        }

        Assert.True(seen >= 0.97 * Runs, $"seen by the fourth coil in {seen} of {Runs} runs");
    }

    [Fact]
    public void Scaling_and_shifting_the_values_moves_no_signal() =>
        Gen.Select(Gen.Double[-3, 3].Array[25, 60], Gen.Double[0.1, 100], Gen.Double[-1000, 1000])
            .ForAll(
                (values, scale, shift) =>
                {
                    double[] moved = [.. values.Select(value => value * scale + shift)];
                    return IndividualsChart.Fit(values)!.Signals(values).SequenceEqual(IndividualsChart.Fit(moved)!.Signals(moved));
                }
            );

    [Fact]
    public void Equal_values_signal_nothing_and_one_value_has_no_limits()
    {
        double[] equal = [.. Enumerable.Repeat(6.1, 30)];
        Assert.Empty(IndividualsChart.Fit(equal)!.Signals(equal));
        Assert.Null(IndividualsChart.Fit([6.18]));
    }

    private static double[] Values(string set) =>
        [.. s_reference.GetProperty(set).GetProperty("values").EnumerateArray().Select(value => value.GetDouble())];

    private static int RunToFirstSignal(Random random)
    {
        List<double> values = [];
        while (true)
        {
            values.Add(Gauss(random));
            double[] tail = [.. values.TakeLast(8)]; // no rule looks further back
            if (RunRules.WesternElectric(tail, 0, 1).Any(signal => signal.Index == tail.Length - 1))
            {
                return values.Count;
            }
        }
    }

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
