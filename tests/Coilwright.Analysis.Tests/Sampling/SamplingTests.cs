using System.Text.Json;
using Coilwright.Analysis.Sampling;
using CsCheck;

namespace Coilwright.Analysis.Tests.Sampling;

/// <summary>Sources stand beside each check; the tables themselves are src/Coilwright.Analysis/Sampling/Tables.</summary>
public sealed class SamplingTests
{
    private static readonly AttributePlan s_double = new([new(125, 3, 7), new(125, 8, 9)]);
    private static readonly AttributePlan s_multiple = new([
        new(50, 0, 4),
        new(50, 1, 6),
        new(50, 3, 8),
        new(50, 5, 10),
        new(50, 7, 11),
        new(50, 10, 12),
        new(50, 13, 14),
    ]);

    [Theory] // binomial, computed with an independent program
    [InlineData(0.01, 0.9989874428494793)]
    [InlineData(0.02, 0.9506649450551754)]
    [InlineData(0.04, 0.4501042921396585)]
    [InlineData(0.08, 0.007943896282600322)]
    public void A_single_plan_accepts_as_computed_elsewhere(double defective, double expected) =>
        Assert.Equal(expected, AttributePlan.Single(200, 7).AcceptProbability(defective), 1e-8);

    [Theory]
    [InlineData(0.01, 0.9990158098637345, 129.64547601003378, 0.9979566291153994, 83.16946572627823)]
    [InlineData(0.04, 0.4011757533611733, 188.2393996822691, 0.44711014991820236, 167.24334178429848)]
    [InlineData(0.06, 0.07096361607430454, 164.7359555208221, 0.08471842477366227, 117.98366379677753)]
    public void Double_and_multiple_plans_accept_and_cost_as_computed_elsewhere(
        double defective,
        double acceptDouble,
        double meanDouble,
        double acceptMultiple,
        double meanMultiple
    )
    {
        Assert.Equal(acceptDouble, s_double.AcceptProbability(defective), 1e-8);
        Assert.Equal(meanDouble, s_double.MeanSample(defective), 1e-6);
        Assert.Equal(acceptMultiple, s_multiple.AcceptProbability(defective), 1e-8);
        Assert.Equal(meanMultiple, s_multiple.MeanSample(defective), 1e-6);
    }

    [Theory] // n = 80, Ac = 1: part defective in % at a probability of acceptance
    [InlineData(0.99, 0.18669070304152977)]
    [InlineData(0.50, 2.0890637230822082)]
    [InlineData(0.10, 4.775175835880554)]
    public void The_curve_is_read_backwards(double probability, double percent) =>
        Assert.Equal(percent, 100 * AttributePlan.Single(80, 1).DefectiveAt(probability), 1e-6);

    [Fact] // Kiermeier, Journal of Statistical Software 26(6) 2008, read
    public void The_smallest_plans_are_the_published_ones()
    {
        Evidence check = Evidence
            .Outside(
                "Smallest sampling plans: four published ones",
                "A. Kiermeier, J. Stat. Software 26(6) 2008; vignette of the R package AQLSchemes [Sampling]",
                "read",
                "exact"
            )
            .Same(AttributePlan.FindSingle(0.05, 0.95, 0.15, 0.075)!.Stages[0], new SampleStage(80, 7, 8))
            .Same(AttributePlan.FindSingle(0.019296, 0.95, 0.045884, 0.10)!.Stages[0], new SampleStage(359, 11, 12));
        VariablesPlan known = VariablesPlan.Find(0.05, 0.95, 0.15, 0.075, spreadKnown: true)!,
            unknown = VariablesPlan.Find(0.05, 0.95, 0.15, 0.075, spreadKnown: false)!;
        check.Same(known.Size, 26).Same(unknown.Size, 49);
        Assert.True(known.AcceptProbability(0.15) <= 0.075 && new VariablesPlan(25, 1.32, true).AcceptProbability(0.05) is > 0.5 and < 1);
        // the published k lies between the two that just keep one promise each
        Assert.InRange(1.322271, KeepingBad(26, true) - 1e-6, known.K + 1e-6);
        Assert.InRange(1.326538, KeepingBad(49, false) - 1e-4, unknown.K + 1e-4);
        check.Record();
    }

    [Theory] // code J, AQL 1 %: plan read in the same manual, probabilities by an independent noncentral t
    [InlineData(0.01, 0.9416724847392443)]
    [InlineData(0.05, 0.20892057932903269)]
    [InlineData(0.10, 0.0165073246633228)]
    public void A_plan_by_variables_accepts_as_the_noncentral_t_says(double defective, double expected) =>
        Assert.Equal(expected, new VariablesPlan(35, 1.89).AcceptProbability(defective), 1e-8);

    [Fact] // drawn lots against the integral
    public void A_plan_by_variables_accepts_what_drawn_lots_say()
    {
        Random random = new(414);
        double z = 1.6448536269514722; // 5 % beyond
        int accepted = 0;
        const int Lots = 40_000;
        for (int lot = 0; lot < Lots; lot++)
        {
            double[] values =
            [
                .. Enumerable
                    .Range(0, 10)
                    .Select(_ => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble())),
            ];
            double mean = values.Average(),
                spread = Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / 9);
            accepted += (z - mean) / spread >= 1.5 ? 1 : 0;
        }

        double expected = new VariablesPlan(10, 1.5).AcceptProbability(0.05);
        Assert.Equal(expected, (double)accepted / Lots, 4 * Math.Sqrt(expected * (1 - expected) / Lots));
    }

    [Fact] // MIL-STD-414 example (memory): 197, 188, 184, 205, 201 with the limit 209; exact values by an independent beta function
    public void The_part_beyond_a_limit_is_estimated()
    {
        double[] values = [197, 188, 184, 205, 201];
        TabulatedVariablesPlan plan = new(5, 0.0332, 1.53);
        (bool accept, double above) = plan.Judge(values, null, 209);
        Assert.True(accept);
        Assert.Equal(0.02182311752038682, above, 1e-10);
        Assert.Equal(0.00616896789681819, plan.Judge(values, 180, null).Beyond, 1e-10);
        Assert.Equal(0.02182311752038682 + 0.00616896789681819, plan.Judge(values, 180, 209).Beyond, 1e-10);
        Assert.False(plan.Judge([.. values.Select(value => value + 20)], null, 209).Accept);
        Assert.Equal(0.0938161649974, VariablesPlan.EstimatedBeyond(-110, 8, -100, 10, spreadKnown: true), 1e-10);
        Assert.Equal(0.0206956259972, VariablesPlan.EstimatedBeyond(-255, 15, -225, 42, spreadKnown: false), 1e-10);
    }

    [Fact] // AQLSchemes vignette, read: lot 3,201–10,000, level II, AQL 1.5 %
    public void The_tables_give_the_published_plans()
    {
        Assert.Equal(new SampleStage(200, 7, 8), SamplingTables.Attribute(5000, "II", 1.5, Inspection.Normal).Stages[0]);
        Assert.Equal(new SampleStage(200, 5, 6), SamplingTables.Attribute(5000, "II", 1.5, Inspection.Tightened).Stages[0]);
        TabulatedVariablesPlan plan = SamplingTables.Variables(5000, 1.5, Inspection.Normal);
        Assert.Equal((75, 0.0317), (plan.Size, plan.LargestBeyond));
        Assert.Equal(1.84097, plan.K, 5e-6);
    }

    [Fact] // M and k are two ways to say one thing: the part beyond at a distance of k is M
    public void Distances_and_parts_of_the_variables_tables_agree() =>
        Assert.All(
            from lot in (int[])[8, 100, 500, 5000, 200_000]
            from level in SamplingTables.VariablesLevels
            from inspection in Enum.GetValues<Inspection>()
            select SamplingTables.Variables(lot, level, inspection),
            plan =>
                Assert.Equal(
                    plan.LargestBeyond,
                    plan.Size < 3 ? plan.LargestBeyond : VariablesPlan.EstimatedBeyond(0, 1, plan.K, plan.Size, spreadKnown: false),
                    1.2e-5
                )
        ); // k is printed to 5 digits

    [Fact]
    public void Tighter_levels_and_tightened_inspection_never_accept_more() =>
        Gen.Select(Gen.Int[2, 100_000], Gen.Int[0, 14], Gen.Double[0.001, 0.3])
            .ForAll(
                (lot, level, defective) =>
                {
                    double Accept(int at, Inspection inspection) =>
                        SamplingTables.Attribute(lot, "II", SamplingTables.AttributeLevels[at], inspection).AcceptProbability(defective);
                    return Accept(level, Inspection.Tightened) <= Accept(level, Inspection.Normal) + 1e-12;
                }
            );

    [Fact]
    public void What_is_not_in_the_tables_is_refused()
    {
        Assert.Throws<ArgumentException>(() => SamplingTables.Attribute(100, "IV", 1.0, Inspection.Normal));
        Assert.Throws<ArgumentException>(() => SamplingTables.Attribute(100, "II", 1.1, Inspection.Normal));
    }

    private static double KeepingBad(int size, bool spreadKnown)
    {
        (double low, double high) = (-10, 10);
        for (int step = 0; step < 60; step++)
        {
            double middle = (low + high) / 2;
            (low, high) = new VariablesPlan(size, middle, spreadKnown).AcceptProbability(0.15) > 0.075 ? (middle, high) : (low, middle);
        }

        return low;
    }
}
