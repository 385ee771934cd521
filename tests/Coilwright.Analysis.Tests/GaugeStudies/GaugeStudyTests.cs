using System.Text.Json;
using Coilwright.Analysis.GaugeStudies;
using Coilwright.Analysis.Tests.Charts;

namespace Coilwright.Analysis.Tests.GaugeStudies;

public sealed class GaugeStudyTests
{
    private static readonly JsonElement s_gauges = ChartReference.Read("gauges.json");
    private static readonly CrossedReadings s_study = CrossedReadings.TryArrange(s_gauges.GetProperty("study").GetProperty("readings").EnumerateArray().Select(row => new GaugeReading(row[0].GetString()!, row[1].GetString()!, row[2].GetDouble())))!;

    [Fact] // the manual rounds on the way; exact arithmetic with its printed K1, K2, K3 gives these, ours are not rounded to four digits
    public void Average_and_range_as_the_manual_has_it()
    {
        AverageAndRange found = AverageAndRange.Of(s_study);
        double[] expected = [0.2018567, 0.229667, 0.3057663, 1.1045956, 1.1461345], ours = [found.Variation.Repeatability, found.Variation.Reproducibility, found.Variation.Gauge, found.Variation.PartToPart, found.Variation.Total];
        Assert.All(expected.Zip(ours), pair => Assert.Equal(pair.First, pair.Second, 2e-4 * pair.First));
        Assert.Equal(0.341666667, found.MeanRange, 1e-8);
        Assert.Equal(0.444666667, found.PersonRange, 1e-8);
        Assert.Equal(26.68, 100 * found.Variation.GaugeShare, 0.01);
        Assert.Equal(5, found.Variation.DistinctCategories);
        EvidenceLog.Record("Gauge study by average and range, 10 parts × 3 persons × 3 trials", "AIAG Measurement Systems Analysis, 4th edition, in a quotation", "read-secondary", "2e-4 (the manual's factors have four digits)", "EV, AV, GRR, PV, TV met; 5 categories");
    }

    [Fact]
    public void Analysis_of_variance_of_the_same_study()
    {
        GaugeAnova found = GaugeAnova.Of(s_study);
        Assert.All(new[] { (88.36193444444447, found.Part.Squares), (3.167262222222221, found.Person.Squares), (0.35898222222218124, found.Interaction.Squares), (2.75893333333336, found.Error.Squares) }, pair => Assert.Equal(pair.Item1, pair.Item2, 1e-9));
        Assert.Equal(0.434, found.Interaction.Over(found.Error)!.Value, 0.0005);
        Assert.Equal(0.974, found.Interaction.Chance(found.Error)!.Value, 0.0005);
        Assert.True(found.IsPooled);
        double[] expected = [0.09143, 0.03997, 0.05146, 1.08645, 1.17788];
        double[] variances = [Square(found.Variation.Gauge), Square(found.Variation.Repeatability), Square(found.Variation.Reproducibility), Square(found.Variation.PartToPart), Square(found.Variation.Total)];
        Assert.All(expected.Zip(variances), pair => Assert.Equal(pair.First, pair.Second, 0.000005));
        Assert.Equal(27.86, 100 * found.Variation.GaugeShare, 0.005);
        Assert.Equal(4, found.Variation.DistinctCategories);
        EvidenceLog.Record("Gauge study by analysis of variance, the same readings", "widely printed result; outside computation", "memory", "half the last printed digit", "sums of squares, F, p, variances, 4 categories met");
    }

    [Fact] // read: open test set; reference −4, tolerance 15
    public void Type_one_study()
    {
        TypeOneStudy study = TypeOneStudy.Of(ChartReference.Numbers(s_gauges.GetProperty("typeOne").GetProperty("values")), -4)!;
        Assert.Equal([-3.946, 0.420014577006512, 0.054], [study.Mean, study.Deviation, study.Bias], (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal([1.19, 1.15, 1.34, 1.27], [study.Cg(15), study.Cgk(15), study.Cg(15, 0.15, 4), study.Cgk(15, 0.15, 4)], (a, b) => Math.Abs(a - b) < 0.005);
        Assert.Equal([0.909105737620188, 0.367744349288335, 0.17336682204762], [study.BiasT, study.BiasChance, study.Bias + study.BiasHalfWidth], (a, b) => Math.Abs(a - b) < 1e-8);
        EvidenceLog.Record("Type 1 gauge study: Cg, Cgk, bias, its t, p and interval", "open test set (jaspQualityControl)", "read", "half the last printed digit", "met");
    }

    [Fact]
    public void Check_standard_of_the_handbook()
    {
        JsonElement[] days = [.. s_gauges.GetProperty("checkStandard").GetProperty("values").EnumerateArray()];
        TypeOneStudy between = TypeOneStudy.Of([.. days.Select(day => day[0].GetDouble())], 97)!;
        double within = Math.Sqrt(days.Average(day => Square(day[1].GetDouble())));
        Assert.Equal(97.0698, between.Mean, 0.00005);
        Assert.Equal(0.0268, between.Deviation, 0.00005);
        Assert.Equal(0.06139, within, 0.000005);
        EvidenceLog.Record("Check standard: mean, day-to-day and short-term deviation", "NIST e-Handbook 2.6.2", "read", "half the last printed digit", "met");
    }

    [Fact]
    public void Certified_sets_of_statistics()
    {
        JsonElement sets = ChartReference.Read("certified.json"), silicon = sets.GetProperty("SiRstvt"), norris = sets.GetProperty("Norris");
        OneWayAnova anova = OneWayAnova.Of([.. silicon.GetProperty("groups").EnumerateArray().Select(ChartReference.Numbers)])!;
        double digits = Digits((silicon, "between", anova.Between.Squares), (silicon, "within", anova.Within.Squares), (silicon, "f", anova.Between.Over(anova.Within)!.Value), (silicon, "rSquared", anova.RSquared), (silicon, "deviation", anova.Deviation));
        Assert.True(digits > 8, FormattableString.Invariant($"{digits:0.0} digits"));
        StraightLine line = StraightLine.Fit([.. norris.GetProperty("points").EnumerateArray().Select(point => (point[0].GetDouble(), point[1].GetDouble()))])!;
        double lineDigits = Digits((norris, "b0", line.Intercept), (norris, "b1", line.Slope), (norris, "s0", line.InterceptError), (norris, "s1", line.SlopeError), (norris, "residual", line.Residual), (norris, "rSquared", line.RSquared));
        Assert.True(lineDigits > 9, FormattableString.Invariant($"{lineDigits:0.0} digits"));
        TypeOneStudy hard = TypeOneStudy.Of([10000000.2, .. Enumerable.Range(0, 1000).Select(n => n % 2 == 0 ? 10000000.1 : 10000000.3)], 1e7)!;
        Assert.Equal(0.1, hard.Deviation, 1e-8); // NumAcc4, whose rule of making is published with it
        EvidenceLog.Record("Certified sets: one-way analysis of variance, straight line, standard deviation", "NIST Statistical Reference Datasets SiRstvt, Norris, NumAcc4", "read", "8, 9 and 7 digits", "met");
    }

    private static double Digits(params (JsonElement Set, string Name, double Found)[] checks) =>
        checks.Min(check => -Math.Log10(Math.Max(1e-15, Math.Abs(check.Found / check.Set.GetProperty(check.Name).GetDouble() - 1))));

    private static double Square(double x) => x * x;
}
