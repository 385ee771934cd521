using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Workshop.Tests.Instruments;

public sealed class MeterProfileReaderTests
{
    [Fact]
    public void A_profile_is_read_whole()
    {
        MeterProfile profile = Read(
            """
            { "format": "coilwright.meter/1", "name": "bench meter", "begin": ["*CLS"], "ask": "MEAS:RES?", "end": "\r\n", "number": "last",
              "unit": "kΩ", "words": { "KOHM": "kΩ", "AUTO": "" }, "overload": "OL", "settle": "0.5 s", "still": "0.1 %", "wait": "3 s",
              "decimal": "comma", "quantity": "acResistance", "serial": { "baud": 19200, "dataBits": 7, "parity": "even", "stopBits": 2 } }
            """
        );
        Assert.Equal(("bench meter", "MEAS:RES?", "\r\n", 0), (profile.Name, profile.Ask, profile.End, profile.Place));
        Assert.Equal(("acResistance", QuantityKind.Resistance, "kΩ"), (profile.Quantity, profile.Kind, profile.Unit.Symbol));
        Assert.Equal(("OL", 0.5, 0.001, 3.0), (profile.Overload, profile.Settle.TotalSeconds, profile.Still, profile.Wait.TotalSeconds));
        Assert.Equal(["*CLS"], profile.Begin);
        Assert.True(profile.HasDecimalComma && profile.Words["kohm"]!.Symbol == "kΩ" && profile.Words["auto"] is null);
        Assert.Equal(new SerialLine(19200, 7, "even", 2), profile.Serial);
    }

    [Theory]
    [InlineData("Ω", "dcResistance")]
    [InlineData("H", "inductance")]
    [InlineData("nF", "capacitance")]
    [InlineData("°C", "temperature")]
    [InlineData("kHz", "loadedPeak")]
    [InlineData("G", "poleField")]
    public void The_unit_says_what_is_read(string unit, string quantity) =>
        Assert.Equal(quantity, Read($$"""{ "format": "coilwright.meter/1", "name": "m", "unit": "{{unit}}" }""").Quantity);

    [Fact]
    public void Every_mistake_is_told_at_once()
    {
        ReadOutcome<MeterProfile> read = MeterProfileReader.Read(
            """
            { "format": "coilwright.meter/1", "name": "", "unit": "furlong", "number": "third", "end": "x", "settle": "90 s", "still": 3,
              "words": { "A": "H" }, "serial": { "baud": 1, "parity": "mark" }, "colour": "red", "begin": [1] }
            """
        );
        Assert.Null(read.Value);
        string[] fields = [.. read.Problems.Select(problem => problem.Field).Order(StringComparer.Ordinal)];
        Assert.Equal(
            ["begin[0]", "colour", "end", "name", "number", "serial.baud", "serial.parity", "settle", "still", "unit", "words.A"],
            fields
        );
    }

    [Fact]
    public void Every_profile_that_comes_with_the_program_is_right_and_asks_for_what_it_says()
    {
        Assert.True(MeterProfiles.All.Count >= 6);
        Assert.All(MeterProfiles.All, one => Assert.Same(one.Profile, MeterProfiles.Find(one.Key.ToUpperInvariant())));
        Assert.Null(MeterProfiles.Find("nothing"));
    }

    private static MeterProfile Read(string json)
    {
        ReadOutcome<MeterProfile> read = MeterProfileReader.Read(json);
        Assert.True(read.Value is not null, string.Join("\n", read.Problems.Select(problem => problem.Field + ": " + problem.Message)));
        return read.Value!;
    }
}
