using Coilwright.Analysis.Curves;
using Coilwright.Physics.Circuit;

namespace Coilwright.Analysis.Tests.Curves;

public sealed class AddedCapacitorsTests
{
    [Fact]
    public void Resonances_of_9_19_kHz_bare_and_4_14_kHz_with_470_pF_mean_120_pF()
    {
        // Method read; figures by arithmetic. Each is printed to 10 Hz: uniform within 5 Hz.
        double deviation = 5 / Math.Sqrt(3);
        AddedCapacitors found = AddedCapacitors.Solve([new(0, 0, 9190, deviation), new(470e-12, 0, 4140, deviation)]);
        Assert.Equal(120e-12, found.Capacitance.Value, 0.5e-12);
        Assert.Equal(2.5, found.Inductance.Value, 0.01);
        Assert.InRange(120e-12, found.Capacitance.Low, found.Capacitance.High);
        Assert.True(found.Capacitance.High - found.Capacitance.Low < 2e-12);
    }

    [Fact]
    public void Measured_resonances_on_three_loads_give_the_inductance_that_was_measured()
    {
        // From memory: a measurement of 0.854 H, 2100 Ω and 9.9, 6.5, 4.4 kHz with 300, 700, 1500 pF in all, in a note whose author and
        // address were not kept.
        AddedCapacitors found = AddedCapacitors.Solve([new(300e-12, 0, 9900, 29), new(700e-12, 0, 6500, 29), new(1500e-12, 0, 4400, 29)]);
        Assert.Equal(0.854, found.Inductance.Value, 0.03);
        Assert.InRange(0, found.Capacitance.Low, found.Capacitance.High);
        Evidence
            .Outside(
                "Added capacitors: 95 % interval of the inductance from resonances with 300, 700 and 1500 pF",
                "a measurement recalled from a note whose author was not kept",
                "memory",
                "chance: resonances good to ± 50 Hz, as printed"
            )
            .Holds(found.Inductance.Low, found.Inductance.High, 0.854, "H")
            .Record();
    }

    [Fact]
    public void With_the_resistance_known_the_tops_of_damped_curves_give_exact_parts()
    {
        LumpedPickup truth = new(9000, 3, 140e-12);
        ResonanceReading[] readings =
        [
            .. ((double[])[0, 220e-12, 470e-12, 1000e-12]).Select(added => new ResonanceReading(
                added,
                0,
                PickupResponse.FindPeak(truth, new LoadCircuit { CableCapacitanceF = added })!.Value.FrequencyHz,
                1
            )),
        ];
        AddedCapacitors plain = AddedCapacitors.Solve(readings),
            damped = AddedCapacitors.Solve(readings, 9000);
        Assert.Equal(3, damped.Inductance.Value, 1e-5);
        Assert.Equal(140e-12, damped.Capacitance.Value, 1e-16);
        Assert.True(Math.Abs(plain.Inductance.Value - 3) > 1e-3);
    }

    [Theory]
    [InlineData(120, 0.0002)] // the rule's printed errors at 9.2 kHz (arithmetic)
    [InlineData(1000, 0.012)]
    public void Reading_below_the_resonance_is_too_high_by_the_rule(double hz, double error) =>
        Assert.Equal(error, ApparentInductance.Error(hz, 9200), error < 0.001 ? 0.00005 : 0.0005);

    [Fact]
    public void A_reading_near_the_resonance_is_refused_and_one_below_is_freed_of_its_error()
    {
        Assert.Null(ApparentInductance.Corrected(20, 8000, 9200));
        Assert.Null(ApparentInductance.Corrected(20, 10_000, 9200));
        double highest = ApparentInductance.HighestHz(9200);
        Assert.Equal(ApparentInductance.MostError, ApparentInductance.Error(highest, 9200), 1e-12);

        // A coil without loss: what is seen at 2 kHz, freed, is L.
        double omega = 2 * Math.PI * 2000,
            seen = 1 / (1 / 2.5 - omega * omega * 120e-12),
            resonance = 1 / (2 * Math.PI * Math.Sqrt(2.5 * 120e-12));
        Assert.Equal(2.5, ApparentInductance.Corrected(seen, 2000, resonance)!.Value, 1e-9);
    }
}
