using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Quantities;

namespace Coilwright.Workshop.Tests.Quantities;

public sealed class QuantityTests
{
    public static TheoryData<string> Keys =>
        [.. typeof(QuantityKey).GetFields().Select(constant => (string)constant.GetRawConstantValue()!)];

    [Theory]
    [MemberData(nameof(Keys))]
    public void Every_key_has_its_quantity(string key) => Assert.Equal(key, Quantity.Find(key)?.Key);

    [Fact]
    public void Every_quantity_has_a_key_of_the_list() =>
        Assert.Equal(
            Keys.Select(row => row.Data).Order(StringComparer.Ordinal),
            Quantity.All.Select(quantity => quantity.Key).Order(StringComparer.Ordinal)
        );

    [Theory]
    [InlineData("ohms")]
    [InlineData("DCRESISTANCE")]
    [InlineData("")]
    public void A_key_of_no_quantity_finds_none(string key) => Assert.Null(Quantity.Find(key));

    [Fact]
    public void Labels_are_those_that_people_read_everywhere() =>
        Assert.All(Quantity.All, quantity => Assert.Equal(quantity.Label, KeyLabels.Of(quantity.Key)));

    [Fact]
    public void The_unit_of_a_quantity_is_that_in_which_its_kind_is_kept() =>
        Assert.All(Quantity.All.Where(quantity => quantity.Kind is not null && quantity.Unit.Length > 0), quantity =>
            Assert.Equal(1, Read("1 " + quantity.Unit, quantity))
        );

    [Fact]
    public void A_range_is_told_in_a_unit_that_is_understood() =>
        Assert.All(Quantity.All.Where(quantity => quantity.Kind is not null), quantity =>
            Assert.True(Read("1 " + quantity.DisplayUnit, quantity) > 0)
        );

    // 6.2 kΩ at 30 °C over 1 + 0.003 93 · 10.
    [Fact]
    public void Ohms_are_compared_at_20_degrees_where_their_temperature_is_known()
    {
        Assert.Equal(5965.55, Quantity.DcResistance.Comparable(6200, 30), tolerance: 0.01);
        Assert.Equal(6200, Quantity.DcResistance.Comparable(6200, null));
        Assert.Equal(6200, Quantity.AcResistance.Comparable(6200, 30));
        Assert.Equal(2.4, Quantity.Comparable(QuantityKey.Inductance, 2.4, 30));
        Assert.Equal(7, Quantity.Comparable("unknown", 7, 30));
    }

    [Theory]
    [InlineData(QuantityKey.DcResistance, "DC resistance at 20 °C")]
    [InlineData(QuantityKey.AcResistance, "AC resistance")]
    [InlineData(QuantityKey.Q, "Q")]
    [InlineData(QuantityKey.Charge, "charge of the magnets")]
    public void What_is_compared_says_at_which_temperature(string key, string label) =>
        Assert.Equal(label, Quantity.Find(key)!.ComparedLabel);

    [Theory]
    [InlineData("DCR", QuantityKey.DcResistance)]
    [InlineData("R", QuantityKey.DcResistance)]
    [InlineData("l", QuantityKey.Inductance)]
    [InlineData("Peak", QuantityKey.LoadedPeak)]
    [InlineData("x", null)]
    public void People_type_short_names(string typed, string? key) => Assert.Equal(key, Quantity.FindAlias(typed)?.Key);

    [Theory]
    [InlineData(QuantityKey.DcResistance, 7430, "7.43 kΩ")]
    [InlineData(QuantityKey.Inductance, 2.4, "2.40 H")]
    [InlineData(QuantityKey.LoadedPeak, 4120, "4.12 kHz")]
    [InlineData(QuantityKey.Q, 3.26, "Q 3.3")]
    public void A_value_is_written_in_its_unit(string key, double si, string words) => Assert.Equal(words, Quantity.Find(key)!.Written(si));

    [Fact]
    public void Keys_of_coils_name_the_coil_where_there_is_more_than_one()
    {
        Assert.Equal("inductance", Quantity.Inductance.KeyOfCoil(0, coils: 1));
        Assert.Equal("coils[1].inductance", Quantity.Inductance.KeyOfCoil(1, coils: 2));
    }

    [Fact]
    public void A_plain_number_has_no_range_in_a_unit() => Assert.Throws<InvalidOperationException>(() => Quantity.Q.Within(0, 1, "3"));

    private static double Read(string typed, Quantity quantity) =>
        QuantityParser.TryParse(typed, quantity.Kind!.Value, unitRequired: true, out Entered entered, out _) ? entered.Si : double.NaN;
}
