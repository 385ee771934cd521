using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Tests.Entry;

/// <summary>
/// Expected values are arithmetic: 1 in = 25.4 mm and 1 lb = 0.45359237 kg (exact by definition), 1 gf = 9.80665 mN (standard gravity).
/// </summary>
public class QuantityParserTests
{
    [Theory]
    [InlineData("7.43 k", QuantityKind.Resistance, 7430, "kΩ")]
    [InlineData("7k43", QuantityKind.Resistance, 7430, "kΩ")]
    [InlineData("7,43 kΩ", QuantityKind.Resistance, 7430, "kΩ")]
    [InlineData("7.43 kohm", QuantityKind.Resistance, 7430, "kΩ")]
    [InlineData("7.43 kOhms", QuantityKind.Resistance, 7430, "kΩ")]
    [InlineData("7.43\u00a0k\u2126", QuantityKind.Resistance, 7430, "kΩ")]
    [InlineData("7,432 kΩ", QuantityKind.Resistance, 7432, "kΩ")]
    [InlineData("7430", QuantityKind.Resistance, 7430, "Ω")]
    [InlineData("7 430", QuantityKind.Resistance, 7430, "Ω")]
    [InlineData("7'430 Ω", QuantityKind.Resistance, 7430, "Ω")]
    [InlineData("1,234.5", QuantityKind.Resistance, 1234.5, "Ω")]
    [InlineData("1.234,5", QuantityKind.Resistance, 1234.5, "Ω")]
    [InlineData("1,234,567", QuantityKind.Resistance, 1234567, "Ω")]
    [InlineData("8k2", QuantityKind.Resistance, 8200, "kΩ")]
    [InlineData("8K2", QuantityKind.Resistance, 8200, "kΩ")]
    [InlineData("7k8 Ω", QuantityKind.Resistance, 7800, "kΩ")]
    [InlineData("4R7", QuantityKind.Resistance, 4.7, "Ω")]
    [InlineData("1M", QuantityKind.Resistance, 1e6, "MΩ")]
    [InlineData("1M2", QuantityKind.Resistance, 1.2e6, "MΩ")]
    [InlineData("1e3", QuantityKind.Resistance, 1000, "Ω")]
    [InlineData("1.5E+3 ohm", QuantityKind.Resistance, 1500, "Ω")]
    [InlineData(".5 k", QuantityKind.Resistance, 500, "kΩ")]
    [InlineData("2.5 thou", QuantityKind.Length, 6.35e-5, "thou")]
    [InlineData("2.5 mil", QuantityKind.Length, 6.35e-5, "thou")]
    [InlineData("2,5thou", QuantityKind.Length, 6.35e-5, "thou")]
    [InlineData("0.0635 mm", QuantityKind.Length, 6.35e-5, "mm")]
    [InlineData("0,063 mm", QuantityKind.Length, 6.3e-5, "mm")]
    [InlineData("63 µm", QuantityKind.Length, 6.3e-5, "µm")]
    [InlineData("63 μm", QuantityKind.Length, 6.3e-5, "µm")]
    [InlineData("2.6 in", QuantityKind.Length, 0.06604, "in")]
    [InlineData("2.6\"", QuantityKind.Length, 0.06604, "in")]
    [InlineData("66 MM", QuantityKind.Length, 0.066, "mm")]
    [InlineData("\u221211 mm", QuantityKind.Length, -0.011, "mm")]
    [InlineData("150 F", QuantityKind.Temperature, 65.5555555555555, "°F")]
    [InlineData("150F", QuantityKind.Temperature, 65.5555555555555, "°F")]
    [InlineData("150 F", QuantityKind.Capacitance, 150, "F")]
    [InlineData("23.5", QuantityKind.Temperature, 23.5, "°C")]
    [InlineData("23,5 c", QuantityKind.Temperature, 23.5, "°C")]
    [InlineData("60 °C", QuantityKind.Temperature, 60, "°C")]
    [InlineData("293.15 K", QuantityKind.Temperature, 20, "K")]
    [InlineData("470 pF", QuantityKind.Capacitance, 470e-12, "pF")]
    [InlineData("470p", QuantityKind.Capacitance, 470e-12, "pF")]
    [InlineData("2u2", QuantityKind.Capacitance, 2.2e-6, "µF")]
    [InlineData("2µ2", QuantityKind.Capacitance, 2.2e-6, "µF")]
    [InlineData("22n", QuantityKind.Capacitance, 22e-9, "nF")]
    [InlineData("4n7F", QuantityKind.Capacitance, 4.7e-9, "nF")]
    [InlineData("2.4 H", QuantityKind.Inductance, 2.4, "H")]
    [InlineData("2H4", QuantityKind.Inductance, 2.4, "H")]
    [InlineData("980 mH", QuantityKind.Inductance, 0.98, "mH")]
    [InlineData("14 gf", QuantityKind.Force, 0.1372931, "gf")]
    [InlineData("14 g", QuantityKind.Force, 0.1372931, "gf")]
    [InlineData("0.1 N", QuantityKind.Force, 0.1, "N")]
    [InlineData("1 kHz", QuantityKind.Frequency, 1000, "kHz")]
    [InlineData("3k2", QuantityKind.Frequency, 3200, "kHz")]
    [InlineData("1,200 rpm", QuantityKind.Speed, 1200, "rpm")]
    [InlineData("8,000", QuantityKind.Turns, 8000, "turns")]
    [InlineData("8.000", QuantityKind.Turns, 8000, "turns")]
    [InlineData("8000.5 turns", QuantityKind.Turns, 8000.5, "turns")]
    [InlineData("5%", QuantityKind.Fraction, 0.05, "%")]
    [InlineData("0,5 %", QuantityKind.Fraction, 0.005, "%")]
    [InlineData("2 MS/m", QuantityKind.Conductivity, 2e6, "MS/m")]
    [InlineData("0.31 T", QuantityKind.FluxDensity, 0.31, "T")]
    [InlineData("950 G", QuantityKind.FluxDensity, 0.095, "G")]
    [InlineData("100 pF/m", QuantityKind.CapacitancePerLength, 100e-12, "pF/m")]
    [InlineData("5.544 ohm/m", QuantityKind.ResistancePerLength, 5.544, "Ω/m")]
    [InlineData("1659 Ω/1000 ft", QuantityKind.ResistancePerLength, 5.44291338582677, "Ω/kft")]
    [InlineData("0.5 lb", QuantityKind.Mass, 0.226796185, "lb")]
    [InlineData("12 mV", QuantityKind.Voltage, 0.012, "mV")]
    [InlineData("10 min", QuantityKind.Duration, 600, "min")]
    public void Typed_forms_are_understood(string typed, QuantityKind kind, double si, string unit)
    {
        Assert.True(QuantityParser.TryParse(typed, kind, unitRequired: false, out Entered entered, out string why), why);
        Assert.Equal(si, entered.Si, Math.Abs(si) * 1e-14);
        Assert.Equal(unit, entered.UnitTyped);
        Assert.Equal(typed, entered.Typed);
    }

    [Theory]
    [InlineData("", QuantityKind.Resistance, "nothing")]
    [InlineData("   ", QuantityKind.Resistance, "nothing")]
    [InlineData("seven", QuantityKind.Resistance, "not a number")]
    [InlineData("1,234", QuantityKind.Resistance, "1.234 Ω or 1234 Ω")]
    [InlineData("2,500 pF", QuantityKind.Capacitance, "2.500 pF or 2500 pF")]
    [InlineData("7.4.3 k", QuantityKind.Resistance, "do not make one number")]
    [InlineData("1,23,456", QuantityKind.Resistance, "do not make one number")]
    [InlineData("74 30", QuantityKind.Resistance, "do not group")]
    [InlineData("7.43 mm", QuantityKind.Resistance, "not a unit")]
    [InlineData("7k43 mm", QuantityKind.Resistance, "not a unit")]
    [InlineData("2m5", QuantityKind.Length, "not a unit")]
    [InlineData("66 °C", QuantityKind.Length, "not a unit")]
    [InlineData("NaN", QuantityKind.Resistance, "not a number")]
    [InlineData("1e999", QuantityKind.Resistance, "too large")]
    [InlineData("--5", QuantityKind.Resistance, "not a number")]
    [InlineData("7.43 kk", QuantityKind.Resistance, "not a unit")]
    [InlineData("7,,4", QuantityKind.Resistance, "do not make one number")]
    public void What_cannot_be_understood_says_why(string typed, QuantityKind kind, string expected)
    {
        Assert.False(QuantityParser.TryParse(typed, kind, unitRequired: false, out Entered entered, out string why));
        Assert.Contains(expected, why, StringComparison.Ordinal);
        Assert.False(entered.IsKnown);
    }

    [Fact]
    public void A_bare_number_needs_a_unit_where_one_is_required_and_takes_the_customary_one_elsewhere()
    {
        Assert.False(QuantityParser.TryParse("66", QuantityKind.Length, unitRequired: true, out _, out string why));
        Assert.Contains("mm", why, StringComparison.Ordinal);
        Assert.True(QuantityParser.TryParse("7k8", QuantityKind.Resistance, unitRequired: true, out Entered entered, out _));
        Assert.Equal(7800, entered.Si);
        Assert.True(QuantityParser.TryParse("7.43", QuantityKind.Resistance, unitRequired: false, out entered, out _, "kΩ"));
        Assert.Equal(7430, entered.Si);
        Assert.Equal("kΩ", entered.UnitTyped);
        Assert.True(QuantityParser.TryParse("0,0635", QuantityKind.Length, unitRequired: false, out entered, out _, "mm"));
        Assert.Equal(6.35e-5, entered.Si);
    }

    [Theory]
    [InlineData("open", true)]
    [InlineData("OL", true)]
    [InlineData("0L", true)]
    [InlineData(" inf ", true)]
    [InlineData("∞", true)]
    [InlineData("0", false)]
    [InlineData("7k43", false)]
    public void An_open_coil_is_recognised(string typed, bool open) => Assert.Equal(open, QuantityParser.IsOpen(typed));

    [Theory]
    [InlineData(7430, QuantityKind.Resistance, 3, "7.43 kΩ")]
    [InlineData(999.96, QuantityKind.Resistance, 4, "1.000 kΩ")]
    [InlineData(56.2, QuantityKind.Resistance, 3, "56.2 Ω")]
    [InlineData(0.071e-3, QuantityKind.Length, 3, "0.0710 mm")]
    [InlineData(1136, QuantityKind.Length, 3, "1136 m")]
    [InlineData(470e-12, QuantityKind.Capacitance, 3, "470 pF")]
    [InlineData(22e-9, QuantityKind.Capacitance, 2, "22 nF")]
    [InlineData(8000, QuantityKind.Turns, 3, "8000 turns")]
    [InlineData(0.05, QuantityKind.Fraction, 2, "5.0 %")]
    [InlineData(23.5, QuantityKind.Temperature, 3, "23.5 °C")]
    [InlineData(-0.011, QuantityKind.Length, 3, "-11.0 mm")]
    [InlineData(0, QuantityKind.Resistance, 3, "0.00 Ω")]
    public void Values_are_written_with_the_unit_that_suits_them(double si, QuantityKind kind, int digits, string expected) =>
        Assert.Equal(expected, QuantityParser.Format(si, kind, digits));

    [Fact]
    public void A_stated_unit_is_kept_and_the_echo_repeats_the_digits()
    {
        Assert.Equal("0.250 in", QuantityParser.FormatIn(0.00635, QuantityKind.Length, "in"));
        Assert.True(QuantityParser.TryParse("7k43", QuantityKind.Resistance, unitRequired: true, out Entered entered, out _));
        Assert.Equal("7.43 kΩ", QuantityParser.Echo(entered, QuantityKind.Resistance));
        Assert.True(QuantityParser.TryParse("150 F", QuantityKind.Temperature, unitRequired: true, out entered, out _));
        Assert.Equal("150 °F", QuantityParser.Echo(entered, QuantityKind.Temperature));
    }

    [Fact]
    public void What_is_written_is_read_back_as_the_same_value()
    {
        Gen<QuantityKind> kinds = Gen.Enum<QuantityKind>();
        Gen.Select(kinds, Gen.Double[1, 10], Gen.Int[-6, 6], Gen.Int[3, 12])
            .ForAll(
                (kind, mantissa, power, digits) =>
                {
                    double si = mantissa * Math.Pow(10, power);
                    string written = QuantityParser.Format(si, kind, digits);
                    Assert.True(
                        QuantityParser.TryParse(written, kind, unitRequired: true, out Entered back, out string why),
                        $"{written}: {why}"
                    );
                    double rounding = Math.Abs(si) * 0.5000001 * Math.Pow(10, 1 - digits);
                    Assert.True(Math.Abs(back.Si - si) <= rounding + LastDecimal(kind), $"{si:R} → {written} → {back.Si:R}");
                },
                count: 20_000
            );
    }

    [Fact]
    public void No_text_at_all_makes_it_throw() =>
        Gen.Select(Gen.Enum<QuantityKind>(), Gen.String[Gen.OneOf(Gen.Char, Gen.Char["0123456789.,kKMmuµnpΩRFHe+-% '\"°C"]), 0, 14])
            .ForAll(
                (kind, text) =>
                {
                    bool understood = QuantityParser.TryParse(text, kind, unitRequired: false, out Entered entered, out string why);
                    Assert.Equal(understood, entered.IsKnown);
                    Assert.Equal(understood, why.Length == 0);
                },
                count: 50_000
            );

    /// <summary>
    /// Turns and turns per minute are written to 0.01 at most; nothing else has more than 15 decimals in its smallest unit.
    /// </summary>
    private static double LastDecimal(QuantityKind kind) => kind is QuantityKind.Turns or QuantityKind.Speed ? 0.005001 : 1e-15;
}
