using Coilwright.Analysis.Capability;
using Coilwright.Analysis.Charts;
using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Tests.Capability;

public sealed class CapabilityIntervalTests
{
    [Fact] // Cp = 1 by construction; of intervals said to hold it in 95 of 100 sets, so many must
    public void Intervals_with_sigma_from_the_moving_range_hold_the_truth_as_often_as_they_say()
    {
        Random random = new(42);
        const int Sets = 2000;
        int potential = 0, actual = 0;
        for (int set = 0; set < Sets; set++)
        {
            double[] values = [.. Enumerable.Range(0, 40).Select(_ => Normal.InvCDF(0, 1, 1 - random.NextDouble()))];
            IndividualsChart chart = IndividualsChart.Fit(values, values.Length)!;
            CapabilityStudy study = CapabilityStudy.OfMovingRange(values.Length, chart.Centre, chart.Sigma, -3, 3.6)!;
            CapabilityIndex cp = study.Potential()!.Value, cpk = study.Actual();
            potential += cp.Low <= 1.1 && cp.High >= 1.1 ? 1 : 0;
            actual += cpk.Low <= 1 && cpk.High >= 1 ? 1 : 0;
        }

        Assert.InRange((double)potential / Sets, 0.93, 0.97);
        Assert.InRange((double)actual / Sets, 0.93, 0.97);
        EvidenceLog.Record("Capability with sigma from the moving range: how often the 95 % interval holds the truth", "simulation, 2,000 sets of 40", "derived", "0.93 to 0.97", FormattableString.Invariant($"Cp {(double)potential / Sets:0.000}, Cpk {(double)actual / Sets:0.000}"));
    }

    [Fact]
    public void One_normal_set_in_twenty_is_called_not_normal_and_nearly_every_skewed_one()
    {
        Random random = new(9);
        const int Sets = 2000;
        int normal = Enumerable.Range(0, Sets).Count(_ => !NormalityTest.Of([.. Enumerable.Range(0, 60).Select(_ => Normal.InvCDF(7, 3, 1 - random.NextDouble()))])!.Value.LooksNormal);
        int skewed = Enumerable.Range(0, 200).Count(_ => !NormalityTest.Of([.. Enumerable.Range(0, 60).Select(_ => -Math.Log(1 - random.NextDouble()))])!.Value.LooksNormal);
        Assert.InRange((double)normal / Sets, 0.035, 0.065);
        Assert.True(skewed >= 195);
        EvidenceLog.Record("Test of Anderson and Darling at 5 %: normal sets of 60 called not normal", "critical value of Stephens 1986", "memory", "0.035 to 0.065", FormattableString.Invariant($"{(double)normal / Sets:0.000}"));
    }
}
