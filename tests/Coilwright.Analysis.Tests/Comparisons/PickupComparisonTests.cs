using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Wire;

namespace Coilwright.Analysis.Tests.Comparisons;

/// <summary>Two designs against each other: what both have in common falls out of the difference, what they have not stays in it.</summary>
public sealed class PickupComparisonTests
{
    private static readonly LoadCircuit s_load = new()
    {
        CableCapacitanceF = 500e-12,
        InputResistanceOhm = 1e6,
        Volume = new(500e3, 1),
    };

    private static SolvedPickup Solved(PickupModel model) => new(model, s_load, cancel: TestContext.Current.CancellationToken);

    private static Dictionary<string, ComparisonLine> Between(PickupModel first, PickupModel second) =>
        PickupComparison.Between(Solved(first), Solved(second)).ToDictionary(line => line.Name, StringComparer.Ordinal);

    [Fact]
    public void A_pickup_against_itself_differs_in_nothing_for_certain()
    {
        foreach (ComparisonLine line in Between(Pickups.Single(), Pickups.Single()).Values)
        {
            Assert.Equal(0, line.Difference!.Value.Value);
            Assert.True(line.Difference.Value.IsExact, line.Name);
            Assert.False(line.First!.Value.IsExact && line.Name is not "coupling", line.Name);
        }
    }

    [Fact]
    public void Both_sides_are_what_their_own_forecasts_say_interval_for_interval()
    {
        Dictionary<string, ComparisonLine> lines = Between(Pickups.Single(), Pickups.Single(9000));
        Prediction more = Forecaster.Predict(Pickups.Single(9000), s_load, cancel: TestContext.Current.CancellationToken);
        foreach (
            (string name, Figure figure) in new (string, Figure)[]
            {
                ("dcResistance", more.Pickup.DcResistance),
                ("inductance", more.Pickup.Inductance),
                ("capacitance", more.Pickup.Capacitance),
                ("loadedPeak", more.Pickup.LoadedResonance!.Frequency),
                ("loadedPeakGain", more.Pickup.LoadedResonance.Gain),
                ("wireMass", more.Coils[0].WireMass),
                ("hum", more.Pickup.HumEffectiveArea),
            }
        )
        {
            Estimate told = lines[name].Second!.Value,
                named = more.Named[name].Estimate;
            foreach (
                (double expected, double contrast, double byName) in new[]
                {
                    (figure.Value, told.Value, named.Value),
                    (figure.Estimate.Low, told.Low, named.Low),
                    (figure.Estimate.High, told.High, named.High),
                }
            )
            {
                Assert.Equal(expected, contrast, 1e-9 * Math.Abs(expected));
                Assert.Equal(expected, byName, 1e-9 * Math.Abs(expected));
            }
        }
    }

    // One spool in both: its diameter falls out but for the build. Two gauges are two spools: R goes with 1/d², so each adds its own
    // 2·u(d)/d in quadrature.
    [Fact]
    public void Wire_of_one_spool_falls_out_of_the_ratio_and_wire_of_two_does_not()
    {
        Estimate one = Between(Pickups.Single(), Pickups.Single(9000))["dcResistance"].Ratio!.Value;
        Estimate two = Between(Pickups.Single(), Pickups.Single(gauge: "AWG 43"))["dcResistance"].Ratio!.Value;
        double own = 0;
        foreach (string gauge in (string[])["AWG 42", "AWG 43"])
        {
            Estimate bare = WireCatalogue.Standard.ModelFor(gauge, "single", "plain-enamel").BareDiameterM;
            own += Math.Pow(2 * (bare.High - bare.Low) / 2 / bare.Value, 2);
        }

        Assert.InRange(Half(one), 1e-5, 0.004);
        Assert.Equal(Math.Sqrt(own), Half(two), 0.06 * Math.Sqrt(own)); // 1/d² curves by a few per cent over the interval

        static double Half(Estimate ratio) => Math.Log(ratio.High / ratio.Low) / 2;
    }

    [Fact]
    public void Hum_of_a_balanced_pair_is_a_magnitude_with_its_scatter()
    {
        ComparisonLine hum = Between(Pickups.Twin(), Pickups.Twin(5500))["hum"];
        Assert.Equal(0, hum.First!.Value.Low);
        Assert.True(hum.First.Value.High > 0);
        Assert.Null(hum.Ratio);
        Assert.True(hum.Difference!.Value.High > hum.Difference.Value.Low);
    }
}
