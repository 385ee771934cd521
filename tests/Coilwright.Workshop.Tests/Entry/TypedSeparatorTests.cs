using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Tests.Entry;

/// <summary>A wrong thousand is worse than a question: how points, commas and spaces between digits are read.</summary>
public class TypedSeparatorTests
{
    private static readonly Limits s_coil = new(QuantityKind.Resistance, 100, 1e5, "Ω", "6.2 kΩ");
    private static readonly Limits s_any = new(QuantityKind.Resistance, 0.1, 1e6, "Ω", "6.2 kΩ");

    [Theory]
    [InlineData("8000", 8000.0)]
    [InlineData("8,000", 8000.0)]
    [InlineData("8.000", 8000.0)]
    [InlineData("8 000", 8000.0)]
    [InlineData("8\u00a0000", 8000.0)]
    [InlineData("8\u2009000", 8000.0)]
    [InlineData("8\u202f000", 8000.0)]
    [InlineData("8'000", 8000.0)]
    [InlineData("8\u2019000", 8000.0)]
    [InlineData("8k", 8000.0)]
    [InlineData("8K turns", 8000.0)]
    [InlineData("8k2", 8200.0)]
    [InlineData("8.25k", 8250.0)]
    [InlineData("8,000.25", 8000.25)]
    [InlineData("8.25", 8.25)]
    [InlineData("8,25 turns", 8.25)]
    public void In_a_count_a_separator_before_three_digits_groups(string typed, double? turns)
    {
        bool read = QuantityParser.TryParse(typed, QuantityKind.Turns, unitRequired: false, out Entered entered, out _);
        Assert.Equal(turns is not null, read);
        Assert.Equal(turns ?? double.NaN, entered.Si);
    }

    [Theory]
    [InlineData("8,000", 8000)]
    [InlineData("8.000", 8000)]
    [InlineData("8k", 8000)]
    [InlineData("12", 12)]
    [InlineData("8.25", null)]
    [InlineData("many", null)]
    [InlineData("10,001", null)]
    [InlineData("0", null)]
    [InlineData("1e308", null)]
    public void A_number_of_coils_is_read_by_the_same_rule(string typed, int? count)
    {
        bool read = CountParser.TryParse(typed, 1, 10_000, out int found, out string why);
        Assert.Equal((count is not null, count ?? 1), (read, found));
        Assert.Equal(read, why.Length == 0);
    }

    [Theory]
    [InlineData("6,21k", 6210)]
    [InlineData("6.210 kΩ", 6210)]
    [InlineData("1.234,5", 1234.5)]
    [InlineData("1,234.5", 1234.5)]
    [InlineData("6,210 Ω", 6210)]
    [InlineData("6.210 Ω", 6210)]
    [InlineData("621,5", 621.5)]
    public void A_coils_resistance_that_must_be_possible_is_read(string typed, double ohm)
    {
        Assert.True(QuantityParser.TryParse(typed, s_coil, unitRequired: false, out Entered entered, out string why), why);
        Assert.Equal(ohm, entered.Si, 1e-9);
    }

    [Fact]
    public void When_only_thousands_are_possible_the_echo_says_so()
    {
        ParsedQuantity read = QuantityParser.Read("6,210 Ω", s_coil, unitRequired: false);
        Assert.Equal((6210.0, "6210 Ω"), (read.Entered.Si, read.Plain));
        Assert.Contains("6210 Ω", read.Note, StringComparison.Ordinal);
        Assert.Equal("", QuantityParser.Read("6.21 kΩ", s_coil, unitRequired: false).Note);
    }

    [Fact]
    public void When_both_are_possible_neither_is_taken_and_both_are_named()
    {
        ParsedQuantity read = QuantityParser.Read("6,210 Ω", s_any, unitRequired: false);
        Assert.False(read.Entered.IsKnown);
        Assert.Equal(["6.210 Ω", "6210 Ω"], read.Readings);
        Assert.Contains("6.210 Ω or 6210 Ω", read.Why, StringComparison.Ordinal);
        Assert.Equal([6.21, 6210.0], read.Readings.Select(one => QuantityParser.Read(one, s_any, unitRequired: true).Entered.Si));
    }

    [Fact]
    public void Turns_as_every_page_prints_them_are_read_back() =>
        Gen.Int[1, 400_000]
            .Sample(
                quarters =>
                {
                    double turns = quarters / 4.0;
                    foreach (
                        string printed in (string[])
                            [
                                turns.ToString("#,##0.##", CultureInfo.InvariantCulture),
                                QuantityParser.Format(turns, QuantityKind.Turns),
                                QuantityParser.Echo(new Entered(turns, "", "turns"), QuantityKind.Turns),
                            ]
                    )
                    {
                        Assert.True(
                            QuantityParser.TryParse(printed, QuantityKind.Turns, unitRequired: false, out Entered back, out string why),
                            $"{printed}: {why}"
                        );
                        Assert.Equal(turns, back.Si);
                    }
                },
                iter: 5_000
            );

    [Fact]
    public void Whole_metres_and_ohms_as_pages_print_them_are_read_back() =>
        Gen.Int[1, 2_000_000]
            .Sample(
                whole =>
                {
                    foreach ((QuantityKind kind, string unit) in new[] { (QuantityKind.Length, "m"), (QuantityKind.Resistance, "Ω") })
                    {
                        string printed = QuantityParser.Grouped(whole) + " " + unit;
                        Assert.True(
                            QuantityParser.TryParse(printed, kind, unitRequired: true, out Entered back, out string why),
                            $"{printed}: {why}"
                        );
                        Assert.Equal(whole, back.Si);
                    }
                },
                iter: 5_000
            );

    [Fact]
    public void A_printed_value_means_the_same_in_every_field_that_may_hold_it() =>
        Gen.Select(Gen.Enum<QuantityKind>(), Gen.Double[1, 10], Gen.Int[-6, 6], Gen.Int[3, 6])
            .Sample(
                (kind, mantissa, power, digits) =>
                {
                    string printed = QuantityParser.Format(mantissa * Math.Pow(10, power), kind, digits);
                    Assert.True(QuantityParser.TryParse(printed, kind, unitRequired: true, out Entered plain, out _));
                    Limits field = new(kind, plain.Si / 2, plain.Si * 2000, UnitOf(kind), "");
                    Assert.True(
                        QuantityParser.TryParse(printed, field, unitRequired: true, out Entered there, out string why),
                        $"{printed}: {why}"
                    );
                    Assert.True(there.Si.Equals(plain.Si) || plain.Si <= 0, printed);
                },
                iter: 5_000
            );

    private static string UnitOf(QuantityKind kind) => QuantityParser.UnitsOf(kind).Split(',')[0];
}
