using Coilwright.Workshop.Interpretations;

namespace Coilwright.Workshop.Tests.Interpretations;

/// <summary>What is said beside a field, and what a document then holds.</summary>
public sealed class FieldInterpreterTests
{
    [Theory]
    [InlineData("coils[0].winding.turns", "8.000", "8,000 turns", "8000")]
    [InlineData("coils[0].winding.turns", "8,000", "8,000 turns", "8000")]
    [InlineData("coils[0].winding.turns", "8k", "8,000 turns", "8000")]
    [InlineData("coils[0].winding.turns", "8.25", "8.25 turns", "8.25")]
    [InlineData("coils[0].wire.gauge", "42", "AWG 42, 0.0635 mm", "\"AWG 42\"")]
    [InlineData("coils[0].wire.gauge", "2.5 thou", "AWG 42, 0.0635 mm", "\"AWG 42\"")]
    [InlineData("coils[0].wire.gauge", ".0025\"", "AWG 42, 0.0635 mm", "\"AWG 42\"")]
    [InlineData("coils[0].wire.gauge", "63 µm", "0.063 mm of the metric series", "\"0.063 mm\"")]
    [InlineData("coils[0].wire.gauge", "0,063", "0.063 mm of the metric series", "\"0.063 mm\"")]
    [InlineData("coils[1].bobbin.coreLength", "64,5 mm", "64.5 mm", "\"64.5 mm\"")]
    [InlineData("coils[1].bobbin.coreLength", "64 mm", "64 mm", "\"64 mm\"")]
    [InlineData("coils[0].bobbin.coreWidth", "6,2 mm ± 0,05 mm", "6.2 mm ± 0.05 mm", "\"6.2 mm ± 0.05 mm\"")]
    [InlineData("coils[0].bobbin.coreWidth", "6.2 ± 0.05 mm", "6.2 mm ± 0.05 mm", "\"6.2 ± 0.05 mm\"")]
    [InlineData("coils[0].poles[0].diameter", "0.187 in ± 1 %", "0.187 in ± 0.00187 in (4.750 mm ± 0.0475 mm)", "\"0.187 in ± 1 %\"")]
    [InlineData("magnets[0].size[2]", "3.2 mm +/- 0.1", "3.2 mm ± 0.1 mm", "\"3.2 mm +/- 0.1\"")]
    [InlineData("strings.clearance", "2.5 mm ± 0.2 mm", "2.5 mm ± 0.2 mm", "\"2.5 mm ± 0.2 mm\"")]
    [InlineData("coils[0].poles[0].made", "by hand", "", "\"by-hand\"")]
    [InlineData("metalwork[0].measured", "yes", "", "true")]
    [InlineData("coils[0].bobbin.fillLimit", "0,74", "0.74", "0.74")]
    [InlineData("spool.received", "2270", "2270 g", "\"2270\"")]
    [InlineData("batch.quantity", "1.200", "1,200", "1200")]
    [InlineData("test.resistance", "open", "open", "\"open\"")]
    [InlineData("wind.counter", "4.000", "4,000 turns", "4000")]
    [InlineData("winder.turns", "100,6", "100.6 turns", "100.6")]
    [InlineData("batch.more", "1,000", "1,000", "1000")]
    [InlineData("parts.count", "2k", "2,000", "2000")]
    [InlineData("charts.lambda", "0,2", "0.2", "0.2")]
    [InlineData("clocks.bath", "60,5", "60.5 °C", "\"60.5\"")]
    [InlineData("shop.room", "74 F", "74 °F", "\"74 F\"")]
    [InlineData("hold.ohmPerM", "5,544", "5.544 Ω/m", "\"5.544\"")]
    [InlineData("entry.resistance", "9.9E37", "open", "\"9.9E37\"")]
    [InlineData("magnets.charge", "full", "full", "\"full\"")]
    [InlineData("magnets.charge", "80,5 %", "80.5 %", "\"80.5 %\"")]
    [InlineData("magnets.charge", "900 G", "900 G", "\"900 G\"")]
    [InlineData("variant.bass", "19,5 mm", "19.5 mm", "\"19.5 mm\"")]
    [InlineData("set.offset", "+1,5 dB", "+1.5 dB", "\"+1,5 dB\"")]
    [InlineData("name", "8,000", "", "\"8,000\"")]
    [InlineData("coils[0].wire.insulation", "Plain  Enamel", "", "\"plain-enamel\"")]
    [InlineData("coils[0].wire.insulation", "plain-enamel", "", "\"plain-enamel\"")]
    [InlineData("coils[0].poles[1].material", "alnico 5", "", "\"alnico-5\"")]
    [InlineData("metalwork[0].material", "nickel silver", "", "\"nickel-silver\"")]
    [InlineData("metalwork[0].material", "moon cheese", "", "\"moon cheese\"")]
    [InlineData("coils[0].bobbin.material", "Pear wood", "", "\"Pear wood\"")]
    [InlineData("potting.kind", "Wax", "", "\"wax\"")]
    public void What_is_typed_is_echoed_and_kept_plainly(string field, string typed, string echo, string json)
    {
        Interpretation read = FieldInterpreter.Read(field, typed);
        Assert.Equal((echo, json), (read.Echo, read.Value!.ToJsonString(s_plain)));
    }

    [Fact]
    public void An_interval_that_is_not_understood_says_what_may_stand_there()
    {
        Interpretation read = FieldInterpreter.Read("coils[0].bobbin.coreWidth", "6.2 mm ±");
        Assert.StartsWith("there is no number behind the ±", read.Echo, StringComparison.Ordinal);
        Assert.EndsWith("± 0 to less than 6.2 mm, or to less than 100 %", read.Echo, StringComparison.Ordinal);
        Assert.Equal("6.2 mm ±", (string?)read.Value);
    }

    [Theory]
    [InlineData("spool.received", "2,270", "2.270 g", "2270 g")]
    [InlineData("targets.dcResistance.nominal", "6,210 Ω", "6.210 Ω", "6210 Ω")]
    [InlineData("magnets.charge", "1,200 G", "1.200 G", "1200 G")]
    public void Two_possible_readings_are_both_offered_and_nothing_is_decided(string field, string typed, params string[] readings)
    {
        Interpretation read = FieldInterpreter.Read(field, typed);
        Assert.Equal(readings, read.Readings);
        Assert.Equal(typed, (string?)read.Value);
        Assert.All(readings, reading => Assert.Empty(FieldInterpreter.Read(field, reading).Readings));
    }

    [Fact]
    public void An_impossible_value_is_said_beside_the_field() =>
        Assert.Contains("outside", FieldInterpreter.Read("coils[0].bobbin.coreLength", "64 m").Echo, StringComparison.Ordinal);

    [Theory]
    [InlineData("coils[0].wire.insulation", "plain-enamel", "plain enamel")]
    [InlineData("metalwork[0].material", "nickel-silver", "nickel silver")]
    [InlineData("coils[0].bobbin.material", "abs", "ABS")]
    [InlineData("coils[0].bobbin.material", "Pear wood", "Pear wood")]
    [InlineData("coils[0].name", "neck-side", "neck-side")]
    public void A_form_shows_the_label_of_a_key_and_a_name_as_it_is(string field, string kept, string shown) =>
        Assert.Equal(shown, FieldInterpreter.Shown(field, kept));

    private static readonly System.Text.Json.JsonSerializerOptions s_plain = new()
    {
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };
}
