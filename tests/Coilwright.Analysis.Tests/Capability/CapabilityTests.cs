using Coilwright.Analysis.Capability;
using Coilwright.Analysis.Tests.Charts;
using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Tests.Capability;

public sealed class CapabilityTests
{
    [Fact] // 50 hardness values, limits 0.8 and 2.4; computed outside this code base
    public void Titanium_hardness()
    {
        CapabilityStudy study = CapabilityStudy.Overall(
            ChartReference.Numbers(ChartReference.Read("subgroups.json").GetProperty("titanium").GetProperty("values")),
            0.8,
            2.4
        )!;
        CapabilityIndex cp = study.Potential()!.Value,
            cpk = study.Actual();
        double[] expected =
        [
            2.0057450680473763,
            1.6095749718822416,
            2.401129420437003,
            1.8081791788447101,
            1.438453965693955,
            2.1779043919954653,
            2.2033109572500424,
            1.7383583676396088,
        ];
        double[] found = [cp.Value, cp.Low, cp.High, cpk.Value, cpk.Low, cpk.High, study.Upper!.Value, study.AboutTarget(1.6)!.Value];
        Evidence check = Evidence.Outside(
            "Capability with intervals, 50 values: eight figures",
            "computed outside this program on the titanium hardness data of an example of SAS/QC [Capability]",
            "derived",
            "rounding: of the outside computation"
        );
        Assert.All(expected.Zip(found), pair => check.Within(pair.Second, pair.First, 1e-8));
        check.Record();
    }

    [Fact] // textbook figures from memory, arithmetic checked
    public void Textbook_intervals_and_one_sided()
    {
        CapabilityIndex cp = new CapabilityStudy(20, 50, 1.75, 38, 62).Potential()!.Value;
        Assert.Equal(2.29, cp.Value, 0.005);
        // the book goes on with 2.29
        Assert.Equal([1.57, 3.01], [Math.Round(2.29 * cp.Low / cp.Value, 2), Math.Round(2.29 * cp.High / cp.Value, 2)]);
        CapabilityIndex cpk = new CapabilityStudy(20, 0, 1, null, 3 * 1.33).Actual();
        Assert.Equal([0.88, 1.78], [Math.Round(cpk.Low, 2), Math.Round(cpk.High, 2)]);
        CapabilityStudy oneSided = new(30, 264, 32, 200, null);
        Assert.Equal(0.67, oneSided.Actual().Value, 0.005);
        Assert.Null(oneSided.Potential());
    }

    [Fact] // lognormal and Weibull: exact quantiles, outside computation; limits at 0.05 % and 99.99 %
    public void Not_normal_by_percentiles()
    {
        Check("lognormal", p => LogNormal.InvCDF(0, 0.25, p), 1.2736156629150033, 1.3732343518763241, 1.062724109743571);
        Check("Weibull", p => Math.Pow(-Math.Log(1 - p), 1 / 1.5), 1.2503713646404668, 1.3187109258169925, 1.0076779889862155);
        Check("gamma", p => Gamma.InvCDF(4, 1, p), 1.273712906357524, 1.3589250987841288, 1.0343357140053315);
        Check("half-normal", p => Normal.InvCDF(0, 1, (1 + p) / 2), 1.2143082953659883, 1.270863408928134, 1.0015834145446074);
    }

    [Fact]
    public void Percentiles_of_normal_values_give_the_usual_index()
    {
        PercentileCapability normal = PercentileCapability.FromQuantiles(p => Normal.InvCDF(10, 2, p));
        Assert.Equal(new CapabilityStudy(100, 10, 2, 3, 15).Actual().Value, normal.Actual(3, 15), 1e-4); // 3 sigma is the 99.865 01 % point
    }

    private static void Check(string name, Func<double, double> quantile, double pp, double upper, double lower)
    {
        PercentileCapability study = PercentileCapability.FromQuantiles(quantile);
        double low = quantile(0.0005),
            high = quantile(0.9999);
        Evidence
            .Outside(
                $"Capability of a {name} distribution by percentiles",
                "exact quantiles, computed outside this program [Capability]",
                "derived",
                "rounding: of the outside computation"
            )
            .Within(study.Potential(low, high), pp, 1e-8)
            .Within(study.Upper(high), upper, 1e-8)
            .Within(study.Lower(low), lower, 1e-8)
            .Record();
    }
}
