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
        int potential = 0,
            actual = 0;
        for (int set = 0; set < Sets; set++)
        {
            double[] values = [.. Enumerable.Range(0, 40).Select(_ => Normal.InvCDF(0, 1, 1 - random.NextDouble()))];
            IndividualsChart chart = IndividualsChart.Fit(values, values.Length)!;
            CapabilityStudy study = CapabilityStudy.OfMovingRange(values.Length, chart.Centre, chart.Sigma, -3, 3.6)!;
            CapabilityIndex cp = study.Potential()!.Value,
                cpk = study.Actual();
            potential += cp.Low <= 1.1 && cp.High >= 1.1 ? 1 : 0;
            actual += cpk.Low <= 1 && cpk.High >= 1 ? 1 : 0;
        }

        Evidence
            .Own(
                "Capability with sigma from the moving range: how often the 95 % intervals of Cp and Cpk hold the truth",
                "simulation with known truth, 2,000 sets of 40 [MovingRange]",
                "chance: four standard errors of 2,000 sets"
            )
            .Inside(100.0 * potential / Sets, 93, 97, "%", "Cp")
            .Inside(100.0 * actual / Sets, 93, 97, "%", "Cpk")
            .Record();
    }

    [Fact]
    public void One_normal_set_in_twenty_is_called_not_normal_and_nearly_every_skewed_one()
    {
        Random random = new(9);
        const int Sets = 2000;
        int normal = Enumerable
            .Range(0, Sets)
            .Count(_ =>
                !NormalityTest
                    .Compute([.. Enumerable.Range(0, 60).Select(_ => Normal.InvCDF(7, 3, 1 - random.NextDouble()))])!
                    .Value.LooksNormal
            );
        int skewed = Enumerable
            .Range(0, 200)
            .Count(_ =>
                !NormalityTest.Compute([.. Enumerable.Range(0, 60).Select(_ => -Math.Log(1 - random.NextDouble()))])!.Value.LooksNormal
            );
        Assert.True(skewed >= 195);
        Evidence
            .Own(
                "Test of Anderson and Darling at 5 %: normal sets of 60 called not normal",
                "simulation with known truth, 2,000 sets, at the recalled critical value of [Normality]",
                "chance: three standard errors of 2,000 sets"
            )
            .Inside(100.0 * normal / Sets, 3.5, 6.5, "%")
            .Record();
    }
}
