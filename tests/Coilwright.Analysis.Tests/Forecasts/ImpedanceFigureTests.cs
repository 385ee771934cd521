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

    [Fact] // the bare two-pole: at ω0 = 1/√(LC) the impedance is Q·√(R² + ω0²L²), Q from R alone: without cores there is no more loss
    public void At_the_resonance_it_is_the_coils_own_times_its_quality()
    {
        PickupForecast pickup = Predict();
        Figure peak = Assert.Single(pickup.Others, one => one.Name == QuantityKey.PeakImpedance);
        double ohm = pickup.Spectrum[0].Resistance.Value,
            reactance = Math.Sqrt(pickup.Inductance.Value / pickup.Capacitance.Value);
        double closed = reactance * Math.Sqrt(1 + Math.Pow(reactance / ohm, 2));

        Assert.Equal(1, peak.Value / closed, 0.02); // the response stands highest a little below ω0
        Assert.InRange(peak.Value, peak.Estimate.Low, peak.Estimate.High);
    }

    [Fact] // a few turns of thick wire have no peak between 20 Hz and the end of the search
    public void Without_a_resonance_there_is_none()
    {
        PickupForecast pickup = Predict(turns: 3);
        Assert.Null(pickup.UnloadedResonance);
        Assert.DoesNotContain(pickup.Others, one => one.Name == QuantityKey.PeakImpedance);
    }

    private static Figure Impedance(PickupForecast pickup) => Assert.Single(pickup.Others, one => one.Name == QuantityKey.Impedance);

    private static double Width(Figure figure) => (figure.Estimate.High - figure.Estimate.Low) / figure.Value;

    private static PickupForecast Predict(double turns = 8000) =>
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
                            Winding = new WindingModel { Turns = turns, Direction = WindingDirection.CounterClockwise },
                        },
                    ],
                },
                load: null,
                new ForecastOptions { FrequenciesHz = [1000] },
                TestContext.Current.CancellationToken
            )
            .Pickup;
}
