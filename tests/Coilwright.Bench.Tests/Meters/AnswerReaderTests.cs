using Coilwright.Bench.Meters;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Bench.Tests.Meters;

public sealed class AnswerReaderTests
{
    private static readonly MeterProfile s_ohms = new()
    {
        Name = "bench meter",
        Quantity = "dcResistance",
        Kind = QuantityKind.Resistance,
        Unit = UnitTable.Find(QuantityKind.Resistance, "Ω")!,
        Words = new Dictionary<string, Unit?>(StringComparer.OrdinalIgnoreCase) { ["AUTO"] = null },
    };

    [Theory] // forms of IEEE 488.2 section 8.7 and its suffixes, from memory of the standard; MOHM is megohm there
    [InlineData("+6.18210E+03", 6182.1)]
    [InlineData("6182.1\r", 6182.1)]
    [InlineData("6182", 6182)]
    [InlineData("+6.1821E+0 KOHM", 6182.1)]
    [InlineData("6.1821kOhm", 6182.1)]
    [InlineData("0.0061821 MOHM", 6182.1)]
    [InlineData("6.1821 k", 6182.1)]
    [InlineData("6182.1 Ω", 6182.1)]
    [InlineData("6182.1 AUTO", 6182.1)]
    [InlineData("R=6182.1", 6182.1)]
    [InlineData("+6.18210E+03,+1.00000E+00", 6182.1)]
    public void A_reading_is_understood_in_every_form(string line, double expected)
    {
        MeterAnswer answer = new AnswerReader(s_ohms).Read(line);
        Assert.False(answer.IsOverRange);
        Assert.Equal(expected, answer.Value!.Value, 1e-9 * expected);
        Assert.Equal((line.Trim(), "dcResistance", "Ω"), (answer.Raw, answer.Quantity, answer.Unit));
    }

    [Theory]
    [InlineData("+9.90000E+37")]
    [InlineData("-9.9E37")]
    [InlineData("9.9E+37 OHM")]
    public void Over_range_is_no_value(string line) => Assert.True(new AnswerReader(s_ohms).Read(line).IsOverRange);

    [Theory]
    [InlineData("OL", "O.L kOhm", false)]
    [InlineData("O.L", "O.L kOhm", true)]
    [InlineData("1E9", "1.0E9", true)]
    [InlineData("1E9", "0.99E9", false)]
    public void A_profile_says_how_over_range_looks(string overload, string line, bool isOver)
    {
        AnswerReader reader = new(s_ohms with { Overload = overload });
        if (overload == "OL")
        {
            Assert.Throws<InstrumentException>(() => reader.Read(line)); // neither the word of the profile nor a number
            return;
        }

        Assert.Equal(isOver, reader.Read(line).IsOverRange);
    }

    [Theory]
    [InlineData("", InstrumentTrouble.Nonsense)]
    [InlineData("ERR", InstrumentTrouble.Nonsense)]
    [InlineData("9.91E37", InstrumentTrouble.Nonsense)]
    [InlineData("\u0001\u0002\u00ff6182", InstrumentTrouble.Nonsense)]
    [InlineData("1.2.3", InstrumentTrouble.Nonsense)]
    [InlineData("6,182", InstrumentTrouble.Nonsense)] // a decimal comma, or two numbers
    [InlineData("2.53 H", InstrumentTrouble.WrongUnit)]
    [InlineData("6182 FURLONGS", InstrumentTrouble.WrongUnit)]
    public void What_is_not_sure_is_a_fault_and_never_a_value(string line, InstrumentTrouble trouble)
    {
        InstrumentException fault = Assert.Throws<InstrumentException>(() => new AnswerReader(s_ohms).Read(line));
        Assert.Equal(trouble, fault.Trouble);
    }

    [Fact]
    public void A_line_of_noise_is_never_taken_for_its_digits() =>
        Assert.Throws<InstrumentException>(() => new AnswerReader(s_ohms).Read(new string('7', 300)));

    [Theory]
    [InlineData(1, false, "6182.1,0.5", 6182.1)]
    [InlineData(2, false, "6182.1,0.5", 0.5)]
    [InlineData(0, false, "1;2;3.5", 3.5)]
    [InlineData(1, false, "6182,1", 6182)] // counted out: the comma parts two numbers
    [InlineData(1, true, "6,182", 6.182)]
    [InlineData(2, true, "6,182;7,5", 7.5)]
    public void A_profile_says_which_number_and_which_decimal_sign(int place, bool comma, string line, double expected)
    {
        MeterProfile profile = s_ohms with { Place = place, IsPlaceCounted = place > 0, HasDecimalComma = comma };
        Assert.Equal(expected, new AnswerReader(profile).Read(line).Value!.Value, 1e-12);
    }

    [Fact]
    public void A_number_without_a_unit_stands_in_the_profiles()
    {
        MeterProfile kiloohms = s_ohms with { Unit = UnitTable.Find(QuantityKind.Resistance, "kΩ")! };
        Assert.Equal(6182.1, new AnswerReader(kiloohms).Read("6.1821").Value!.Value, 1e-9);
        MeterProfile fahrenheit = s_ohms with
        {
            Quantity = "temperature",
            Kind = QuantityKind.Temperature,
            Unit = UnitTable.Find(QuantityKind.Temperature, "°F")!,
        };
        Assert.Equal(20, new AnswerReader(fahrenheit).Read("68.0").Value!.Value, 1e-9);
    }
}
