using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Quantities;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Winding;
using Coilwright.Physics.Wire;

namespace Coilwright.Analysis.Tests.Forecasts;

/// <summary>The impedance between a pickup's wires, against the network that gives the response.</summary>
public sealed class ImpedanceFigureTests
{
    [Fact] // another way: the response's network, from the forecast's own resistance, inductance and capacitance at 1 kHz
    public void The_impedance_at_1_kilohertz_is_that_of_the_bare_network()
    {
        PickupForecast pickup = Predict();
        SpectrumForecast line = pickup.Spectrum.Single();
        LumpedPickup lumped = new(line.Resistance.Value, line.Inductance.Value, pickup.Capacitance.Value);
        double ohm = PickupResponse.Compute(lumped, LoadCircuit.None, [1000]).Points[0].ImpedanceOhm;

        Assert.Equal(1, Impedance(pickup).Value / ohm, 1e-6);
        Assert.True(ohm > line.Resistance.Value, "the coil is more than its resistance there");
    }

    [Fact] // |Z|² = R² + (ωL)²: what the resistance leaves of the inductance's interval
    public void Its_interval_follows_from_those_of_resistance_and_inductance()
    {
        PickupForecast pickup = Predict();
        Figure impedance = Impedance(pickup);
        double reactive = Math.Pow(2 * Math.PI * 1000 * pickup.Inductance.Value / impedance.Value, 2);
        double expected = Math.Sqrt(
            Math.Pow(reactive * Width(pickup.Inductance), 2) + Math.Pow((1 - reactive) * Width(pickup.Spectrum[0].Resistance), 2)
        );
        Assert.InRange(impedance.Value, impedance.Estimate.Low, impedance.Estimate.High);
        Assert.Equal(expected, Width(impedance), 0.3 * expected); // wire and turns move both together
    }

    private static Figure Impedance(PickupForecast pickup) => Assert.Single(pickup.Others, one => one.Name == QuantityKey.Impedance);

    private static double Width(Figure figure) => (figure.Estimate.High - figure.Estimate.Low) / figure.Value;

    private static PickupForecast Predict() =>
        Forecaster
            .Predict(
                new PickupModel
                {
                    Connection = Connection.Single,
                    Coils =
                    [
                        new CoilModel
                        {
                            Name = "coil",
                            Bobbin = new Bobbin
                            {
                                CoreLengthM = 0.061,
                                CoreWidthM = 0.0062,
                                EndRadiusM = 0.0031,
                                WindingHeightM = 0.0112,
                            },
                            Wire = WireCatalogue.Standard.ModelFor("AWG 42", "single", "plain-enamel"),
                            Winding = new WindingModel { Turns = 8000, Direction = WindingDirection.CounterClockwise },
                        },
                    ],
                },
                load: null,
                new ForecastOptions { FrequenciesHz = [1000] },
                TestContext.Current.CancellationToken
            )
            .Pickup;
}
