using Coilwright.Formats.Circuits;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Recipes;

public class LoadAndLumpedReaderTests
{
    [Theory]
    [MemberData(nameof(DemoFiles.Loads), MemberType = typeof(DemoFiles))]
    public void Demo_loads_are_read_without_a_problem(string name)
    {
        ReadOutcome<LoadCircuit> outcome = LoadReader.Read(DemoFiles.Load(name));
        Assert.True(outcome.Ok, string.Join("\n", outcome.Problems));
        Assert.Equal(1e6, outcome.Value!.InputResistanceOhm);
    }

    [Fact]
    public void The_players_load_is_understood_part_by_part()
    {
        LoadCircuit load = LoadReader.Read(DemoFiles.Load("player")).Value!;
        Assert.Equal(new VolumeControl(500e3, 1), load.Volume);
        Assert.Equal(new ToneControl(500e3, 22e-9, 1), load.Tone);
        Assert.Equal(500e-12, load.CableCapacitanceF);
        Assert.Equal(0, load.InputCapacitanceF);
    }

    [Fact]
    public void A_cable_may_be_given_by_its_length()
    {
        LoadCircuit load = LoadReader
            .Read("""{ "format": "coilwright.load/1", "cable": { "length": "5 m", "capacitancePerLength": "100 pF/m" } }""")
            .Value!;
        Assert.Equal(500e-12, load.CableCapacitanceF, 1e-21);
        Assert.Null(load.Volume);
        Assert.Null(load.InputResistanceOhm);
    }

    [Fact]
    public void A_load_lists_every_mistake()
    {
        const string Json = """
            { "format": "coilwright.load/1", "volume": { "resistance": 500, "setting": 2 },
              "tone": { "resistance": "500 kΩ", "capacitor": "22 F" },
              "cable": { "capacitance": "500 pF", "length": "5 m" }, "inptu": {} }
            """;
        ReadOutcome<LoadCircuit> outcome = LoadReader.Read(Json);
        Assert.Null(outcome.Value);
        string[] expected =
        [
            "cable.capacitance",
            "cable.capacitancePerLength",
            "inptu",
            "tone.capacitor",
            "volume.resistance",
            "volume.setting",
        ];
        Assert.Equal(expected, outcome.Problems.Select(problem => problem.Field).Order(StringComparer.Ordinal));
        Assert.Equal("22 F", outcome.Problems.Single(problem => problem.Field == "tone.capacitor").Understood);
    }

    [Fact]
    public void A_lumped_pickup_is_understood_with_its_branches()
    {
        const string Json = """
            { "format": "coilwright.lumped/1", "resistance": "7.8 kΩ", "inductance": "4.4 H", "capacitance": "120 pF",
              "eddy": [ { "inductance": "0.9 H", "resistance": "60 kΩ" } ], "parallelLoss": "1 MΩ" }
            """;
        LumpedPickup pickup = LumpedReader.Read(Json).Value!;
        Assert.Equal((7800, 4.4, 120e-12), (pickup.ResistanceOhm, pickup.InductanceH, pickup.CapacitanceF));
        Assert.Equal(new EddyBranch(0.9, 60e3), Assert.Single(pickup.Eddy));
        Assert.Equal(1e6, pickup.ParallelLossOhm);
    }

    [Fact]
    public void A_lumped_pickup_lists_every_mistake()
    {
        ReadOutcome<LumpedPickup> outcome = LumpedReader.Read(
            """{ "format": "coilwright.lumped/1", "resistance": "7.8 kH", "capacitance": "120 pF", "eddy": [ """
                + """{ "resistance": "60 kΩ" }, 3 ] }"""
        );
        string[] expected = ["eddy[0].inductance", "eddy[1]", "inductance", "resistance"];
        Assert.Equal(expected, outcome.Problems.Select(problem => problem.Field).Order(StringComparer.Ordinal));
    }
}
