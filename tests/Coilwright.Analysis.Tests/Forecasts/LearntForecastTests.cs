using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Spread;
using Coilwright.Physics;

namespace Coilwright.Analysis.Tests.Forecasts;

/// <summary>What a shop has learnt takes the place of what a forecast does not know, and of nothing else.</summary>
public sealed class LearntForecastTests
{
    private static readonly LearntFactor s_ohm = new(1.02, 0.003, 0.008, "learnt set 1 of 2026-03-02"),
        s_henry = new(0.97, 0.004, 0.02, "learnt set 1 of 2026-03-02");

    [Fact]
    public void A_coil_has_what_was_learnt_and_all_else_of_the_plain_forecast()
    {
        PickupModel plain = Pickups.Single();
        Prediction before = Predicted(plain),
            after = Predicted(Learnt(plain));
        CoilForecast was = before.Coils[0],
            now = after.Coils[0];
        Assert.Equal(1.02, now.DcResistance.Value / was.DcResistance.Value, 1e-9);
        Assert.Equal(0.97, now.Inductance.Value / was.Inductance.Value, 1e-9);
        Assert.Equal(0.97, after.Pickup.Inductance.Value / before.Pickup.Inductance.Value, 1e-6);
        Assert.Equal(Math.Sqrt(0.003 * 0.003 + 0.008 * 0.008), HalfOf(now.DcResistance), 0.0005); // and the turns' 0.2 %
        Assert.Equal(Math.Sqrt(0.004 * 0.004 + 0.02 * 0.02), HalfOf(now.Inductance), 0.0005);
        Assert.All([now.DcResistance, now.Inductance, after.Pickup.DcResistance, after.Pickup.Inductance], figure =>
        {
            Assert.Equal(Basis.Learnt, figure.Estimate.Basis);
            Assert.Equal("learnt set 1 of 2026-03-02", figure.Derivation.Source);
        });
        string[] moved = ["dcResistance", "inductance"];
        Assert.All(was.All.Zip(now.All).Where(pair => !moved.Contains(pair.First.Name)), pair =>
            Assert.Equal(pair.First.Estimate, pair.Second.Estimate)
        );
    }

    [Fact]
    public void Only_a_measured_spool_leaves_the_ohms_per_metre_in_the_interval()
    {
        PickupModel plain = Pickups.Single();
        CoilModel coil = plain.Coils[0];
        PickupModel measured = plain with
        {
            Coils =
            [
                coil with
                {
                    Wire = coil.Wire with { MeasuredOhmPerM = Estimate.Within(coil.Wire.OhmPerMAt20C * 1.05, 0.01, Basis.Measured) },
                    Learnt = new LearntCoil(s_ohm, s_ohm with { Factor = 0.99 }, null),
                },
            ],
        };
        Figure ohm = Predicted(measured).Coils[0].DcResistance,
            was = Predicted(plain).Coils[0].DcResistance;
        Assert.Equal(1.05 * 0.99, ohm.Value / was.Value, 1e-9);
        Assert.Equal(Math.Sqrt(0.003 * 0.003 + 0.008 * 0.008 + 0.01 * 0.01), HalfOf(ohm), 0.0005);
    }

    [Fact]
    public void A_run_scatters_as_the_shops_coils_do()
    {
        PickupModel learnt = Learnt(Pickups.Single());
        RunSpread run = RunForecaster.Spread(
            learnt,
            null,
            new Dictionary<string, SpreadTarget>(),
            samples: 2000,
            seed: 1,
            cancel: TestContext.Current.CancellationToken
        );
        QuantitySpread ohm = run.Quantities.Single(one => one.Name == "dcResistance");
        double expected = Math.Sqrt(0.003 * 0.003 + 0.008 * 0.008 + 0.002 * 0.002 + 0.0039 * 0.0039) / 1.96; // turns, and 1 °C of the room
        Assert.Equal(expected, ohm.StandardDeviation / ohm.Mean, 0.1 * expected);
        Assert.Equal("learnt", ohm.Causes[0].Cause);
        Assert.All(run.FieldCheck.Quantities, line => Assert.InRange(line.Largest, 0, 0.05)); // what was learnt is no error of the field
    }

    private static Prediction Predicted(PickupModel model) =>
        Forecaster.Predict(model, null, cancel: TestContext.Current.CancellationToken);

    private static PickupModel Learnt(PickupModel model) =>
        model with
        {
            Coils = [.. model.Coils.Select(coil => coil with { Learnt = new LearntCoil(s_ohm, null, s_henry) })],
        };

    private static double HalfOf(Figure figure) => Math.Log(figure.Estimate.High / figure.Estimate.Low) / 2;
}
