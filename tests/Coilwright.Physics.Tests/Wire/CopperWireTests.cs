using Coilwright.Physics.Wire;

namespace Coilwright.Physics.Tests.Wire;

public sealed class CopperWireTests
{
    // Read: a NEMA-based copper wire table, ohms per 1,000 ft at 20 °C, 30, 34, 35 and 36 AWG, to its four figures.
    [Theory]
    [InlineData(0.000254, 103.7)]
    [InlineData(0.00016002, 261.3)]
    [InlineData(0.00014224, 330.7)]
    [InlineData(0.000127, 414.8)]
    [InlineData(0.00012954, 398.7)]
    public void Ohms_per_thousand_feet_are_those_of_the_printed_table(double bareDiameterM, double ohm) =>
        Assert.Equal(ohm, 304.8 * CopperWire.OhmPerM(bareDiameterM), 0.06);

    // Read at second hand: 42 AWG 1,652 Ω per 1,000 ft (5.42 Ω/m), 1 % by its own rounding; and "about 0.4 % per degree".
    [Fact]
    public void Forty_two_gauge_is_within_a_per_cent_of_a_published_procedure()
    {
        ReferenceRows.Near(5.42, CopperWire.OhmPerM(63.5e-6), 0.01, "Ω/m");
        ReferenceRows.Near(1.004, CopperWire.TemperatureFactor(21), 1e-4, "factor per degree");
    }

    // Read: 200 turns of 55 mm at 5.4 Ω/m are 59 Ω; 1,524 m at 1.7 Ω/ft are 8.5 kΩ, whose table figure is 2.4 % lower.
    [Fact]
    public void Published_lengths_of_forty_two_gauge_have_their_published_resistance()
    {
        Assert.Equal(59, 200 * 0.055 * CopperWire.OhmPerM(63.5e-6), 1.0);
        Assert.Equal(8500 / 1.7 * 1.659, 1524 * CopperWire.OhmPerM(63.5e-6), 8.0);
    }

    // Read inputs, derived there: 5,000 turns, 4,698 Ω → 133.7 mm; 6,950 turns, 6,700 Ω → 137.1 mm of 43 AWG.
    [Theory]
    [InlineData(5000, 4698, 0.1337)]
    [InlineData(6950, 6700, 0.1371)]
    public void Mean_turn_follows_from_turns_and_ohms(double turns, double ohm, double meanTurnM) =>
        Assert.Equal(meanTurnM, CopperWire.LengthFromOhmM(ohm, CopperWire.OhmPerM(55.88e-6)) / turns, 5e-5);

    // Arithmetic with the IEC 60028 coefficient; the first is also a maker's published example (read).
    [Theory]
    [InlineData(6300, 35, 5949)]
    [InlineData(8314, 30, 8000)]
    public void Ohms_are_stated_at_20_degrees(double ohm, double temperatureC, double at20C)
    {
        Assert.Equal(at20C, CopperWire.CorrectTo20C(ohm, temperatureC), 0.5);
        Assert.Equal(ohm, CopperWire.CorrectFrom20C(CopperWire.CorrectTo20C(ohm, temperatureC), temperatureC), 1e-9);
    }

    // Arithmetic: 10.00 m reading 56.2 Ω at 23.5 °C is 5.544 Ω/m, 1.8 % over nominal 42 AWG.
    [Fact]
    public void A_measured_spool_is_compared_with_its_nominal()
    {
        double ohmPerM = CopperWire.CorrectTo20C(56.2, 23.5) / 10;
        Assert.Equal(5.544, ohmPerM, 5e-4);
        Assert.Equal(0.018, ohmPerM / CopperWire.OhmPerM(63.5e-6) - 1, 5e-4);
    }

    // 1 % stretch: the coil's length is set by its turns, so a metre of the thinner wire, not the longer piece, is what counts.
    [Fact]
    public void A_stretched_wire_follows_from_constant_volume()
    {
        double thinnerM = 63.5e-6 * CopperWire.StretchedDiameterFactor(0.01);
        Assert.Equal(1.01, CopperWire.OhmPerM(thinnerM) / CopperWire.OhmPerM(63.5e-6), 1e-12);
        Assert.Equal(1.01, CopperWire.StretchFactor(0.01), 1e-12);
        Assert.Equal(1.01 * CopperWire.BareMassKgPerM(thinnerM), CopperWire.BareMassKgPerM(63.5e-6), 1e-15);
    }

    [Fact]
    public void Doubling_the_diameter_quarters_the_resistance() =>
        Gen.Double[2e-5, 2e-4]
            .ForAll(d =>
                Math.Abs(4 * CopperWire.OhmPerM(2 * d) / CopperWire.OhmPerM(d) - 1) < 1e-12
                && Math.Abs(CopperWire.BareDiameterFromOhmPerM(CopperWire.OhmPerM(d, 27), 27) / d - 1) < 1e-12
            );

    [Fact]
    public void Length_and_mass_of_a_spool_turn_into_each_other() =>
        Gen.Double[1, 1e6]
            .ForAll(lengthM =>
            {
                double massKgPerM = CopperWire.MassKgPerM(63.5e-6, 71.12e-6);
                return Math.Abs(CopperWire.LengthFromMassM(CopperWire.MassFromLengthKg(lengthM, massKgPerM), massKgPerM) / lengthM - 1)
                    < 1e-12;
            });

    // Mass by way of resistance: 0.15328 Ω·g/m² is the mass resistivity of standard copper (read).
    [Fact]
    public void Mass_from_resistance_is_the_mass_resistivity_over_it() =>
        ReferenceRows.Near(0.15328e-3 / 5.444, CopperWire.BareMassFromOhmPerM(5.444), 1e-4, "kg/m");

    [Fact] // 14 gf on 63.5 µm: 43.4 MPa, strain 3.7e-4, of which 0.68 goes into the section
    public void Tension_alone_raises_the_resistance_by_a_quarter_of_a_thousandth()
    {
        Assert.Equal(2.52e-4, CopperWire.ElasticStretch(14 * 9.80665e-3, 63.5e-6), 0.01e-4);
        Assert.True(CopperWire.ElasticStretch(1, 63.5e-6) < 0.0014, "beyond the yield it stays at the elastic limit");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void A_diameter_that_is_none_is_refused(double diameterM) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CopperWire.OhmPerM(diameterM));
}
