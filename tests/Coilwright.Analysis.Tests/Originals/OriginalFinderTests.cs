using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Originals;
using Coilwright.Physics;
using Coilwright.Physics.Wire;
using Coilwright.Shared;
using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Tests.Originals;

public sealed class OriginalFinderTests
{
    private static readonly (string Gauge, string Build, double Prior)[] s_wires =
        [("AWG 41", "single", 0.1), ("AWG 42", "single", 0.3), ("AWG 42", "heavy", 0.15), ("AWG 43", "single", 0.2), ("AWG 43", "heavy", 0.1), ("AWG 44", "single", 0.15)];

    private static OriginalQuestion Question(PickupModel model, params OriginalReading[] readings) => new()
    {
        Wires = [.. s_wires.Select(wire => new WireHypothesis(wire.Gauge, wire.Build, WireCatalogue.Standard.ModelFor(wire.Gauge, wire.Build, "plain-enamel"), wire.Prior))],
        Cores = [new CoreHypothesis("", model, 1)],
        Readings = readings,
        Samples = 2048,
    };

    private static OriginalReading Reading(string quantity, double value, double half, double atHz = 1000) => new(quantity, value, half, atHz);

    // By hand: 8,420 Ω over 130 mm of 42, 43 and 44 AWG (5.445, 7.03 and 8.51 Ω/m nominal) are 11,900, 9,210 and 7,610 turns.
    [Fact]
    public void A_sister_coil_of_8k42_has_these_turns_by_gauge_and_42_does_not_fit()
    {
        PickupModel model = Pickups.Single() with
        {
            Coils = [Pickups.Single().Coils[0] with { Poles = [], Bobbin = new() { CoreLengthM = 55.4e-3, CoreWidthM = 5e-3, EndRadiusM = 2.5e-3, WindingHeightM = 11e-3, MaxBuildM = 4.3e-3 } }],
        };
        OriginalAnswer answer = OriginalFinder.Find(Question(model, Reading("dcResistance", 8420, 42), Reading("meanTurnLength", 0.13, 0.002)), TestContext.Current.CancellationToken);
        Explanation Of(string gauge) => answer.Explanations.First(found => found.Gauge == gauge && found.Build == "single");

        Assert.False(Of("AWG 42").Fits);
        Assert.Equal(11_900, Of("AWG 42").Turns.Value, 11_900 * 0.04); // on this bobbin its mean turn would be longer
        Assert.InRange(Of("AWG 42").Probability, 0, 0.03);
        Assert.Equal(9210, Of("AWG 43").Turns.Value, 9210 * 0.03);
        Assert.Equal(7610, Of("AWG 44").Turns.Value, 7610 * 0.03);
        Assert.True(answer.Explanations[0].Fits);
        Assert.Equal(1, answer.Explanations.Sum(found => found.Probability), 0.02);
        Assert.Contains(answer.NextReadings.Take(4), next => next.Quantity == "overallDiameter" && next.InformationBits > 0.5);
    }

    /// <summary>Simulated originals of known truth, wound and read by the forecast's own physics with everything scattered.</summary>
    [Fact]
    public void Probabilities_and_intervals_hold_on_simulated_originals()
    {
        const int Originals = 60;
        Random random = new(20261125);
        int inside = 0, told = 0;
        double claimed = 0;
        for (int k = 0; k < Originals; k++)
        {
            (int wire, double turns, OriginalReading[] readings) = Simulate(random);
            OriginalAnswer answer = OriginalFinder.Find(Question(Pickups.Single(), readings) with { Seed = k + 1 }, TestContext.Current.CancellationToken);
            Estimate interval = answer.Quantities["turns"];
            inside += turns >= interval.Low && turns <= interval.High ? 1 : 0;
            Explanation best = answer.Explanations[0];
            claimed += best.Probability;
            told += best.Gauge == s_wires[wire].Gauge && best.Build == s_wires[wire].Build ? 1 : 0;
        }

        // Binomial limits of 99.9 %: 60 at 95 % are 50 to 60; the best explanation is right as often as it claims to be.
        double spread = 3.3 * Math.Sqrt(Originals * 0.25);
        Assert.InRange(inside, 50, 60);
        Assert.InRange(told, claimed - spread, claimed + spread);
        EvidenceLog.Record(
            "Identification of 60 simulated originals", "simulated with known truth", "derived", "95 % intervals of the turns hold 50 to 60 of 60; best explanation right as often as claimed, within 3.3 deviations",
            string.Create(CultureInfo.InvariantCulture, $"{inside} of 60 inside; right {told} times, claimed {claimed:F0}"));
    }

    private static (int Wire, double Turns, OriginalReading[] Readings) Simulate(Random random)
    {
        double Z() => Normal.Sample(random, 0, 1);
        double pick = random.NextDouble() * s_wires.Sum(wire => wire.Prior);
        int wire = 0;
        while (pick > s_wires[wire].Prior)
        {
            pick -= s_wires[wire++].Prior;
        }

        PickupModel model = Pickups.Single();
        CoilModel coil = model.Coils[0];
        while (true)
        {
            WireModel table = WireCatalogue.Standard.ModelFor(s_wires[wire].Gauge, s_wires[wire].Build, "plain-enamel");
            double bareM = table.BareDiameterM.Value + Z() * table.BareDiameterM.StandardDeviation, overallM = table.OverallDiameterM.Value + Z() * table.OverallDiameterM.StandardDeviation;
            double turns = Math.Round(4000 * Math.Pow(2.5, random.NextDouble())), packing = 0.77 + 0.02 * Z();
            double buildM = turns * Math.PI / 4 * overallM * overallM / (packing * coil.Bobbin.WindingHeightM);
            if (buildM > coil.Bobbin.MaxBuildM || overallM < 1.005 * bareM)
            {
                continue; // such a winding is not made on this bobbin
            }

            Estimate mu = coil.Poles[0].RelativePermeability;
            CoilModel made = coil with
            {
                Wire = table with { BareDiameterM = Estimate.Exact(bareM), OverallDiameterM = Estimate.Exact(overallM) },
                Winding = coil.Winding with { Turns = turns, MeasuredBuildM = buildM },
                Poles = [coil.Poles[0] with { RelativePermeability = Estimate.Exact(mu.Value + Z() * mu.StandardDeviation) }],
            };
            CoilForecast forecast = Forecaster.Predict(model with { Coils = [made] }, null, cancel: TestContext.Current.CancellationToken).Coils[0];
            double ohm = forecast.DcResistance.Value * (1 + 0.005 / 1.96 * Z()), henry = forecast.Inductance.Value;
            return (wire, turns,
            [
                Reading("dcResistance", ohm * (1 + 0.005 / 1.96 * Z()), 0.005 * ohm), Reading("inductance", henry * (1 + 0.01 / 1.96 * Z()), 0.01 * henry),
                Reading("overallDiameter", overallM + 1.27e-6 / 1.96 * Z(), 1.27e-6),
            ]);
        }
    }

    [Fact]
    public void A_reading_taken_tells_about_as_much_as_it_promised()
    {
        OriginalReading ohm = Reading("dcResistance", 6000, 30);
        OriginalAnswer before = OriginalFinder.Find(Question(Pickups.Single(), ohm), TestContext.Current.CancellationToken);
        double promised = before.NextReadings.Single(next => next.Quantity == "overallDiameter").InformationBits;
        double left = new[] { 58e-6, 62e-6, 66e-6, 71e-6, 76e-6, 81e-6 }.Average(overall =>
            Entropy(OriginalFinder.Find(Question(Pickups.Single(), ohm, Reading("overallDiameter", overall, 1.27e-6)), TestContext.Current.CancellationToken)));
        Assert.InRange(promised, 0.3, Entropy(before));
        Assert.InRange(left, 0, Entropy(before) - 0.4 * promised);
    }

    [Fact]
    public void Readings_that_nothing_explains_say_so()
    {
        OriginalAnswer answer = OriginalFinder.Find(Question(Pickups.Single(), Reading("dcResistance", 6000, 30), Reading("inductance", 30, 0.3)), TestContext.Current.CancellationToken);
        Assert.NotEmpty(answer.Warnings);
    }

    private static double Entropy(OriginalAnswer answer) => answer.Explanations.Where(found => found.Probability > 0).Sum(found => -found.Probability * Math.Log2(found.Probability));
}
