using System.Text.Json;
using Coilwright.Analysis.GaugeStudies;
using Coilwright.Analysis.Tests.Charts;

namespace Coilwright.Analysis.Tests.GaugeStudies;

public sealed class GaugeStudyTests
{
    private static readonly JsonElement s_gauges = ChartReference.Read("gauges.json");
    private static readonly CrossedReadings s_study = CrossedReadings.TryArrange(
        s_gauges
            .GetProperty("study")
            .GetProperty("readings")
            .EnumerateArray()
            .Select(row => new GaugeReading(row[0].GetString()!, row[1].GetString()!, row[2].GetDouble()))
    )!;

    [Fact] // the manual rounds on the way; exact arithmetic with its printed K1, K2, K3 gives these, ours are not rounded to four digits
    public void Average_and_range_as_the_manual_has_it()
    {
        AverageAndRange found = AverageAndRange.Compute(s_study);
        double[] expected = [0.2018567, 0.229667, 0.3057663, 1.1045956, 1.1461345],
            ours =

            [
                found.Variation.Repeatability,
                found.Variation.Reproducibility,
                found.Variation.Gauge,
                found.Variation.PartToPart,
                found.Variation.Total,
            ];
        Assert.Equal(0.341666667, found.MeanRange, 1e-8);
        Assert.Equal(0.444666667, found.PersonRange, 1e-8);
        Assert.Equal(26.68, 100 * found.Variation.GaugeShare, 0.01);
        Evidence check = Evidence.Outside(
            "Gauge study by average and range, 10 parts × 3 persons × 3 trials: EV, AV, GRR, PV, TV and distinct categories",
            "AIAG, Measurement Systems Analysis, 4th edition, in a quotation [MSA]",
            "read-secondary",
            "rounding: the manual's factors have four digits"
        );
        Assert.All(expected.Zip(ours), pair => check.WithinPart(pair.Second, pair.First, 2e-4));
        check.Same(found.Variation.DistinctCategories, 5).Record();
    }

    [Fact]
    public void Analysis_of_variance_of_the_same_study()
    {
        GaugeAnova found = GaugeAnova.Compute(s_study);
        Evidence check = Evidence.Outside(
            "Gauge study by analysis of variance, the same readings: F, p, five variances, categories",
            "widely printed result of the study of [MSA]",
            "memory",
            "rounding: half the last printed digit"
        );
        Assert.All(
            new[]
            {
                (88.36193444444447, found.Part.Squares),
                (3.167262222222221, found.Person.Squares),
                (0.35898222222218124, found.Interaction.Squares),
                (2.75893333333336, found.Error.Squares),
            },
            pair => Assert.Equal(pair.Item1, pair.Item2, 1e-9)
        );
        check
            .Within(found.Interaction.Over(found.Error)!.Value, 0.434, 0.0005)
            .Within(found.Interaction.Chance(found.Error)!.Value, 0.974, 0.0005);
        Assert.True(found.IsPooled);
        double[] expected = [0.09143, 0.03997, 0.05146, 1.08645, 1.17788];
        double[] variances =
        [
            Square(found.Variation.Gauge),
            Square(found.Variation.Repeatability),
            Square(found.Variation.Reproducibility),
            Square(found.Variation.PartToPart),
            Square(found.Variation.Total),
        ];
        Assert.All(expected.Zip(variances), pair => check.Within(pair.Second, pair.First, 0.000005));
        Assert.Equal(27.86, 100 * found.Variation.GaugeShare, 0.005);
        check.Same(found.Variation.DistinctCategories, 4).Record();
    }

    [Fact] // read: open test set; reference −4, tolerance 15
    public void Type_one_study()
    {
        TypeOneStudy study = TypeOneStudy.Compute(ChartReference.Numbers(s_gauges.GetProperty("typeOne").GetProperty("values")), -4)!;
        Evidence check = Evidence.Outside(
            "Type 1 gauge study: Cg, Cgk, bias, its t, p and interval",
            "tests of jaspQualityControl, commit 38c84de52092 [JaspQc]",
            "read",
            "rounding: half the last printed digit"
        );
        double[] whole = [-3.946, 0.420014577006512, 0.054, 0.909105737620188, 0.367744349288335, 0.17336682204762];
        double[] ours = [study.Mean, study.Deviation, study.Bias, study.BiasT, study.BiasChance, study.Bias + study.BiasHalfWidth];
        Assert.All(whole.Zip(ours), pair => check.Within(pair.Second, pair.First, 1e-8));
        double[] capable = [1.19, 1.15, 1.34, 1.27],
            found = [study.Cg(15), study.Cgk(15), study.Cg(15, 0.15, 4), study.Cgk(15, 0.15, 4)];
        Assert.All(capable.Zip(found), pair => check.Within(pair.Second, pair.First, 0.005));
        check.Record();
    }

    [Fact]
    public void Check_standard_of_the_handbook()
    {
        JsonElement[] days = [.. s_gauges.GetProperty("checkStandard").GetProperty("values").EnumerateArray()];
        TypeOneStudy between = TypeOneStudy.Compute([.. days.Select(day => day[0].GetDouble())], 97)!;
        double within = Math.Sqrt(days.Average(day => Square(day[1].GetDouble())));
        Evidence
            .Outside(
                "Check standard: mean, day-to-day and short-term deviation",
                "NIST/SEMATECH e-Handbook of Statistical Methods, 2.6.2 [HandbookGauge]",
                "read",
                "rounding: half the last printed digit"
            )
            .Within(between.Mean, 97.0698, 0.00005)
            .Within(between.Deviation, 0.0268, 0.00005)
            .Within(within, 0.06139, 0.000005)
            .Record();
    }

    [Fact]
    public void Certified_sets_of_statistics()
    {
        JsonElement sets = ChartReference.Read("certified.json"),
            silicon = sets.GetProperty("SiRstvt"),
            norris = sets.GetProperty("Norris");
        OneWayAnova anova = OneWayAnova.Compute([.. silicon.GetProperty("groups").EnumerateArray().Select(ChartReference.Numbers)])!;
        Evidence check = Evidence.Outside(
            "Certified sets: one-way analysis of variance, straight line, standard deviation",
            "NIST/ITL Statistical Reference Datasets SiRstvt, Norris, NumAcc4 [StRD]",
            "read",
            "rounding: of doubles on stiff data; 8, 9 and 7 digits"
        );
        void Hold(JsonElement set, double part, params (string Name, double Found)[] values) =>
            Assert.All(values, value => check.WithinPart(value.Found, set.GetProperty(value.Name).GetDouble(), part, value.Name));
        Hold(
            silicon,
            1e-8,
            ("between", anova.Between.Squares),
            ("within", anova.Within.Squares),
            ("f", anova.Between.Over(anova.Within)!.Value),
            ("rSquared", anova.RSquared),
            ("deviation", anova.Deviation)
        );
        StraightLine line = StraightLine.Fit([
            .. norris.GetProperty("points").EnumerateArray().Select(point => (point[0].GetDouble(), point[1].GetDouble())),
        ])!;
        Hold(
            norris,
            1e-9,
            ("b0", line.Intercept),
            ("b1", line.Slope),
            ("s0", line.InterceptError),
            ("s1", line.SlopeError),
            ("residual", line.Residual),
            ("rSquared", line.RSquared)
        );
        TypeOneStudy hard = TypeOneStudy.Compute(
            [10000000.2, .. Enumerable.Range(0, 1000).Select(n => n % 2 == 0 ? 10000000.1 : 10000000.3)],
            1e7
        )!;
        check.WithinPart(hard.Deviation, 0.1, 1e-7, "NumAcc4, whose rule of making is published with it").Record();
    }

    private static double Square(double x) => x * x;
}
