using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Bench.Tests;

public sealed class MeterLineTests
{
    [Theory] // forms NR1, NR2 and NR3 of IEEE 488.2 section 8.7, from memory of the standard
    [InlineData("6301", 6301)]
    [InlineData("+6301", 6301)]
    [InlineData("6301.20", 6301.2)]
    [InlineData("-0.0012", -0.0012)]
    [InlineData("+6.30120E+03", 6301.2)]
    [InlineData("6.30120e3\r\n", 6301.2)]
    [InlineData("  +2.41000E+00,+7.55E+00,0", 2.41)] // an LCR meter sends several; the first is read
    [InlineData(".5", 0.5)]
    public void A_number_is_read_in_every_form_that_meters_send(string line, double expected)
    {
        Assert.True(MeterLine.TryRead(line, out MeterReading reading));
        Assert.Equal((expected, false), (reading.Value, reading.IsOverRange));
    }

    [Theory] // SCPI-1999 infinity, from memory; common practice of bench meters
    [InlineData("+9.9E+37")]
    [InlineData("9.90000000E+37")]
    [InlineData("9.9E37\n")]
    public void Over_range_is_an_open_coil(string line)
    {
        Assert.True(MeterLine.TryRead(line, out MeterReading reading));
        Assert.True(reading.IsOverRange);
        Assert.Null(reading.Value);
        Assert.True(QuantityParser.IsOpen(MeterLine.AsTyped(line)));
    }

    [Fact]
    public void Not_a_number_is_neither_a_value_nor_open()
    {
        Assert.True(MeterLine.TryRead("9.91E37", out MeterReading reading));
        Assert.Equal((null, false), (reading.Value, reading.IsOverRange));
    }

    [Theory]
    [InlineData("")]
    [InlineData("OVLD")]
    [InlineData("6.30 k")]
    [InlineData("6.3.0")]
    [InlineData("6,30")] // perhaps a person's decimal comma; never 6
    [InlineData("1E999")]
    [InlineData("+-5")]
    public void What_is_no_meters_number_is_left_as_it_is(string line)
    {
        Assert.False(MeterLine.TryRead(line, out _));
        Assert.Equal(line, MeterLine.AsTyped(line));
    }

    [Fact]
    public void Any_double_written_as_NR3_comes_back_and_coil_entry_understands_it() =>
        Gen.Double[1e-3, 1e9]
            .ForAll(ohm =>
            {
                string line = ohm.ToString("+0.00000E+00", CultureInfo.InvariantCulture);
                return MeterLine.TryRead(line, out MeterReading reading)
                    && Math.Abs(reading.Value!.Value / ohm - 1) < 0.6e-5
                    && QuantityParser.TryParse(
                        MeterLine.AsTyped(line),
                        QuantityKind.Resistance,
                        unitRequired: false,
                        out Entered entered,
                        out _
                    )
                    && entered.Si == reading.Value;
            });
}
