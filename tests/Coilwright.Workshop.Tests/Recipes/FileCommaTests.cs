using Coilwright.Formats.Circuits;
using Coilwright.Formats.Originals;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.Tests.Winding;

namespace Coilwright.Workshop.Tests.Recipes;

/// <summary>In files of ours the point alone is decimal: a comma is refused by field, with what to write.</summary>
public sealed class FileCommaTests
{
    private const string Winder = """
        { "format": "coilwright.machine/1", "name": "Winder 1", "kind": "hand-guided", "speed": { "low": "300 rpm", "high": "1,500 rpm" } }
        """;

    private const string Rules = """{ "format": "coilwright.rules/1", "gaussSpread": "2,5 %", "ink": { "potLife": "1,5 h" } }""";

    private static readonly (string Name, Func<string, IReadOnlyList<Problem>> Read)[] s_readers =
    [
        ("machine", json => MachineReader.ReadFile(json).Problems),
        ("rules", json => ShopRulesReader.ReadFile(json).Problems),
        ("original", json => OriginalReader.Read(json).Problems),
        ("lumped", json => LumpedReader.Read(json).Problems),
        ("circuit", json => CircuitReader.Read(json).Problems),
        ("load", json => LoadReader.ReadFile(json).Problems),
    ];

    [Theory]
    [InlineData("machine", Winder, "speed.high", "1500 rpm")]
    [InlineData(
        "machine",
        """{ "format": "coilwright.machine/1", "name": "W", "kind": "hand-guided", "ownTensions": [ { "gauge": "0,063 """
            + """mm", "tension": "14 gf" } ] }""",
        "ownTensions[0].gauge",
        "0.063 mm"
    )]
    [InlineData("rules", Rules, "gaussSpread", "2.5 %")]
    [InlineData("rules", Rules, "ink.potLife", "1.5 h")]
    [InlineData(
        "original",
        """{ "format": "coilwright.original/1", "readings": [ { "quantity": "dcResistance", "value": "5,76 kΩ" } ] }""",
        "readings[0].value",
        "5.76 kΩ"
    )]
    [InlineData(
        "original",
        """{ "format": "coilwright.original/1", "readings": [ { "quantity": "dcResistance", "value": "5.76 """
            + """kΩ", "uncertainty": "0,5 %" } ] }""",
        "readings[0].uncertainty",
        "0.5 %"
    )]
    [InlineData(
        "original",
        """{ "format": "coilwright.original/1", "bobbin": { "coreLength": "61,5 mm" }, "readings": [] }""",
        "bobbin.coreLength",
        "61.5 mm"
    )]
    [InlineData(
        "original",
        """{ "format": "coilwright.original/1", "wire": { "gauge": "0,063 mm" }, "readings": [] }""",
        "wire.gauge",
        "0.063 mm"
    )]
    [InlineData("lumped", """{ "format": "coilwright.lumped/1", "resistance": "6,2 kΩ" }""", "resistance", "6.2 kΩ")]
    [InlineData("load", """{ "format": "coilwright.load/1", "volume": { "resistance": "250,5 kΩ" } }""", "volume.resistance", "250.5 kΩ")]
    public void A_comma_is_refused_by_field_with_what_to_write(string reader, string json, string field, string instead)
    {
        Problem problem = Assert.Single(s_readers.Single(one => one.Name == reader).Read(json), one => one.Field == field);
        Assert.Equal($"in a file the point alone is the decimal sign; write \"{instead}\"", problem.Message);
    }

    [Fact]
    public void Where_a_comma_can_mean_two_things_both_ways_to_write_it_are_named()
    {
        IReadOnlyList<Problem> problems = OriginalReader
            .Read("""{ "format": "coilwright.original/1", "readings": [ { "quantity": "wireLength", "value": "1,136 m" } ] }""")
            .Problems;
        Assert.Contains(
            "write \"1.136 m\" or \"1136 m\"",
            problems.Single(one => one.Field == "readings[0].value").Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_winder_kept_with_a_comma_before_is_still_read_and_tested()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        Assert.Contains(await shop.Machines.KeepAsync(Guid.NewGuid(), Winder, "", WorkingShop.Cancel), problem =>
            problem.Field == "speed.high"
        );
        await shop.Records.Machines.AddAsync(
            new MachineRecord(Guid.NewGuid(), "Winder 1", Winder, "", shop.Clock.GetUtcNow()),
            WorkingShop.Cancel
        );
        Assert.Empty(await shop.Machines.KeepTestAsync(Guid.NewGuid(), "Winder 1", "100.6", "100", "", WorkingShop.Cancel));
        Machine machine = Assert.Single(await shop.Machines.ListAsync(WorkingShop.Cancel));
        Assert.Equal((1500, 100.6), (machine.Speed!.HighRpm, machine.Counter!.Turns));
    }
}
