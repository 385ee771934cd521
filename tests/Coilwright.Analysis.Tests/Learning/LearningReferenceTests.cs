using Coilwright.Analysis.Learning;
using Coilwright.Shared;
using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Tests.Learning;

/// <summary>Learning against closed forms, published data and a sampling run.</summary>
public sealed class LearningReferenceTests
{
    /// <summary>Eight schools: effects and standard errors [Gelman2013, table 5.2], from memory.</summary>
    private static readonly (double Mean, double Error)[] s_schools =
    [
        (28, 15),
        (8, 10),
        (-3, 16),
        (7, 11),
        (-1, 9),
        (1, 11),
        (18, 10),
        (12, 18),
    ];

    /// <summary>Newcomb's 66 passages of light, ns less 24,800 [Stigler1977], from memory.</summary>
    private static readonly double[] s_newcomb =
    [
        .. (
            (string)"28 26 33 24 34 -44 27 16 40 -2 29 22 24 21 25 30 23 29 31 19 24 20 36 32 36 "
            + "28 25 21 28 29 37 25 28 26 30 32 36 26 30 22 36 23 "
            + "27 27 28 27 31 27 26 33 26 32 32 24 39 28 24 25 32 25 29 27 28 29 16 23"
        )
            .Split(' ')
            .Select(value => double.Parse(value, System.Globalization.CultureInfo.InvariantCulture)),
    ];

    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(10)]
    [InlineData(25)]
    public void Few_trust_their_kin_as_the_closed_form_says(double between)
    {
        NormalHierarchy solved = Schools(between);
        (double mean, double variance) = Pooled(between);
        for (int j = 0; j < s_schools.Length; j++)
        {
            double data = 1 / (s_schools[j].Error * s_schools[j].Error),
                prior = 1 / (between * between),
                expected = (data * s_schools[j].Mean + prior * mean) / (data + prior),
                spread = 1 / (data + prior) + Math.Pow(prior / (data + prior), 2) * variance;
            (double found, double doubt) = solved.Sum(SchoolOf(j, between));
            Assert.Equal(expected, found, 1e-6 * 30);
            Assert.Equal(spread, doubt, 1e-5 * spread);
        }
    }

    [Fact]
    public void Eight_schools_come_out_as_published()
    {
        double[] published = [10, 8, 7, 8, 5, 6, 10, 8]; // medians [Gelman2013, table 5.3], from memory
        double[] between = [.. Enumerable.Range(0, 300).Select(k => 0.05 + 0.1 * k)];
        double[] weights = [.. between.Select(Likelihood)];
        Evidence evidence = Evidence.Outside(
            "Eight schools shrink as published",
            "[Gelman2013], table 5.3: posterior medians, points",
            "memory",
            "rounding: printed to whole points, and the medians of a run of 200 draws",
            id: "learning-schools"
        );
        for (int j = 0; j < s_schools.Length; j++)
        {
            double Below(double at) =>
                between
                    .Zip(weights, (tau, weight) =>
                    {
                        (double mean, double variance) = Schools(tau).Sum(SchoolOf(j, tau));
                        return weight * Normal.CDF(mean, Math.Sqrt(variance), at);
                    })
                    .Sum() / weights.Sum();
            double low = -20,
                high = 40;
            while (high - low > 1e-3)
            {
                double middle = (low + high) / 2;
                (low, high) = Below(middle) < 0.5 ? (middle, high) : (low, middle);
            }

            evidence.Within(low, published[j], 1, "points", "school " + (char)('A' + j));
        }

        evidence.Record();
    }

    [Fact]
    public void Newcombs_two_bad_readings_are_left_out()
    {
        EffectPrior[] light = [new(new Effect(EffectKind.Shop, ""), 1e6)];
        LearntQuantity learnt = HierarchicalFit.Fit(
            [.. s_newcomb.Select(value => new LearningReading(value, light))],
            [],
            new LearningPriors(5) { BadDeviation = 50 }
        );
        Evidence evidence = Evidence.Outside(
            "Newcomb's passages of light keep their middle in spite of two bad readings",
            "[Stigler1977]: mean and deviation without −44 and −2, 27.75 and 5.08 ns, against 26.2 and 10.7 with them",
            "memory",
            "method: bad readings are weighed and not cut off, and the deviation trusts a start of 5 as 4 readings"
        );
        evidence.Within(learnt.Correction(light).Mean, 27.75, 0.1, "ns", "middle");
        evidence.Within(Math.Sqrt(learnt.CoilVariance), 5.08, 0.15, "ns", "deviation");
        evidence.Record();
    }

    [Fact]
    public void What_is_learnt_agrees_with_a_long_sampling_run()
    {
        SimulatedShop shop = new(11, isTrue: false);
        LearningCoil coil = shop.Coils[^1],
            other = coil with { Lot = LearningCoil.NotYetSeen, Spool = LearningCoil.NotYetSeen };
        LearntQuantity learnt = shop.Resistance;
        SamplingRun run = new(shop.Ohms, LearningPriors.Resistance, seed: 5, draws: 20_000);
        Evidence evidence = Evidence.Own(
            "Learning agrees with a long seeded sampling run of the same model, its variances drawn too",
            "20,000 draws by Gibbs; middle in deviations of the run, half-width over the run's",
            "method: variances are put in as found, and their doubt comes back as Student's t"
        );
        foreach ((string what, LearningCoil of) in new[] { ("seen lot", coil), ("lot not yet seen", other) })
        {
            LearntCorrection found = learnt.Correction(of.OfResistance);
            (double mean, double half) = run.Next(of.OfResistance);
            evidence.Within((found.Mean - mean) / (half / 1.96), 0, 0.15, "deviations", what + ", middle");
            evidence.Within(found.NextHalf / half, 1, 0.15, "1", what + ", half-width");
        }

        evidence.Record();
    }

    private static EffectPrior[] SchoolOf(int j, double between) =>
        [new(new Effect(EffectKind.Shop, ""), 1e8), new(new Effect(EffectKind.Bobbin, "ABCDEFGH"[j].ToString()), between * between)];

    private static NormalHierarchy Schools(double between) =>
        new([.. s_schools.Select((one, j) => new LearningCell(SchoolOf(j, between), 1 / (one.Error * one.Error), one.Mean, 1, 1))], _ => 1);

    /// <summary>The common mean and its variance at a spread between schools [Gelman2013, equation 5.20].</summary>
    private static (double Mean, double Variance) Pooled(double between)
    {
        double[] weights = [.. s_schools.Select(one => 1 / (one.Error * one.Error + between * between))];
        return (s_schools.Zip(weights, (one, weight) => one.Mean * weight).Sum() / weights.Sum(), 1 / weights.Sum());
    }

    /// <summary>How likely a spread between schools is, with nothing known before [Gelman2013, equation 5.21].</summary>
    private static double Likelihood(double between)
    {
        (double mean, double variance) = Pooled(between);
        return Math.Sqrt(variance) * s_schools.Aggregate(1.0, (product, one) => product * Density(one, mean, between));
    }

    private static double Density((double Mean, double Error) one, double mean, double between) =>
        Normal.PDF(mean, Math.Sqrt(one.Error * one.Error + between * between), one.Mean) * 10;
}
