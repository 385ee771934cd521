using Coilwright.Formats.Circuits;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Circuit.Networks;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Formats.Tests.Circuits;

public sealed class CircuitReaderTests
{
    private const string Two = """
        { "format": "coilwright.circuit/1", "name": "Two",
          "pickups": [
            { "name": "bridge", "coils": [ { "name": "slug", "resistance": "4 kΩ", "inductance": "2.1 H",
              "capacitance": "70 pF", "eddy": [ { "inductance": "0.3 H", "resistance": "40 kΩ" } ] },
                                           { "name": "screw", "resistance": "4.1 kΩ", "inductance": "2 H",
                                             "capacitance": "75 pF", "parallelLoss": "3 MΩ", "level": -1, "leads": "exchanged" } ],
              "mutual": [ { "coils": ["slug", "screw"], "coupling": -0.2 } ], "leads": "exchanged",
              "volume": { "resistance": "500 kΩ", "taper": "logarithmic", "setting": 0.5, "wiring": "from-wiper",
                "trebleRetaining": { "capacitance": "680 pF", "resistance": "150 kΩ", "joined": "series" } } },
            { "name": "neck", "coils": [ { "resistance": "6.2 kΩ", "inductance": "2.5 H", "capacitance": "120 pF", "tap": 0.6 } ] } ],
          "selected": ["neck", "bridge"], "joined": "series",
          "load": { "tone": { "resistance": "250 kΩ", "capacitor": "22 nF" },
            "buffer": { "inputResistance": "2 MΩ", "gain": 1.5 }, "cable": { "length": "5 m", "capacitancePerLength": "100 pF/m" } } }
        """;

    [Fact]
    public void A_circuit_is_understood_part_by_part()
    {
        ReadOutcome<GuitarCircuit> outcome = CircuitReader.Read(Two);
        Assert.True(outcome.Ok, string.Join("\n", outcome.Problems));
        GuitarCircuit circuit = outcome.Value!;
        CircuitPickup bridge = circuit.Pickups[0];
        Assert.Equal([1, 0], circuit.Selected);
        Assert.Equal(Joining.Series, circuit.Joined);
        Assert.True(bridge.Reversed);
        Assert.Equal(-0.2 * Math.Sqrt(4.2), bridge.Mutual[0].InductanceH, 1e-12);
        Assert.Equal((-1.0, true, 3e6), (bridge.Coils[1].Level, bridge.Coils[1].Reversed, bridge.Coils[1].ParallelLossOhm));
        Assert.Equal(0.1, bridge.Volume!.Value.Setting, 1e-12);
        Assert.True(bridge.Volume.Value.FromWiper);
        Assert.Equal(new TrebleRetainer(150e3, 680e-12, true), bridge.Volume.Value.Retainer);
        Assert.Equal(0.6, circuit.Pickups[1].Coils[0].TapShare);
        Assert.Equal(500e-12, circuit.Load.CableCapacitanceF, 1e-20);
        Assert.Equal(new BufferStage(2e6, 0, 1e3, 1.5), circuit.Load.Buffer);
    }

    [Theory]
    [InlineData("\"neck\", \"bridge\"", "\"neck\", \"middle\"", "selected[1]", "bridge, neck")]
    [InlineData("\"coupling\": -0.2", "\"coupling\": 1.2", "pickups[0].mutual[0].coupling", "-0.999 to 0.999")]
    [InlineData("\"coupling\": -0.2", "\"inductance\": \"2.2 H\"", "pickups[0].mutual", "root of the two inductances")]
    [InlineData("[\"slug\", \"screw\"]", "[\"slug\", \"slug\"]", "pickups[0].mutual[0].coils", "two different coils")]
    [InlineData("\"setting\": 0.5", "\"setting\": 1.2", "pickups[0].volume.setting", "0 to 1")]
    [InlineData("\"tap\": 0.6", "\"tap\": 120", "pickups[1].coils[0].tap", "0.01 to 1")]
    [InlineData("\"joined\": \"series\" }", "\"joned\": \"series\" }", "pickups[0].volume.trebleRetaining.joned", "joined")]
    [InlineData("\"name\": \"neck\"", "\"name\": \"bridge\"", "pickups", "one name")]
    [InlineData("\"4 kΩ\"", "\"-4 kΩ\"", "pickups[0].coils[0].resistance", "outside")]
    [InlineData("\"22 nF\"", "\"22 F\"", "load.tone.capacitor", "outside")]
    public void A_mistake_is_told_with_its_place_and_what_is_allowed(string right, string wrong, string place, string says)
    {
        string json = Two.Replace(right, wrong, StringComparison.Ordinal);
        Assert.NotEqual(Two, json);
        ReadOutcome<GuitarCircuit> outcome = CircuitReader.Read(json);
        Assert.Null(outcome.Value);
        Problem problem = Assert.Single(outcome.Problems, one => one.Field == place);
        Assert.Contains(says, $"{problem.Message} {problem.Allowed} {problem.Understood}", StringComparison.Ordinal);
    }

    [Fact]
    public void A_measured_taper_must_run_from_end_to_end()
    {
        string Load(string taper) =>
            $$"""{ "format": "coilwright.load/1", "volume": { "resistance": "500 kΩ", "setting": 0.25, "taper": {{taper}} } }""";
        Assert.Equal(0.06, LoadReader.Read(Load("[[0, 0], [0.5, 0.12], [1, 1]]")).Value!.Volume!.Value.Setting, 1e-12);
        Assert.Equal(0.25, LoadReader.Read(Load("\"linear\"")).Value!.Volume!.Value.Setting);
        foreach (
            string wrong in (string[])
                [
                    "[[0, 0], [0.5, 0.12]]",
                    "[[0, 0], [0.5, 0.6], [0.4, 0.7], [1, 1]]",
                    "[[0, 0.2], [1, 0.1]]",
                    "[[0, 0], \"half\", [1, 1]]",
                    "\"steep\"",
                    "[]",
                    "[[0,0],[1,2]]",
                ]
        )
        {
            ReadOutcome<LoadCircuit> outcome = LoadReader.Read(Load(wrong));
            Assert.True(
                outcome.Value is null
                    && outcome.Problems.All(problem => problem.Field.StartsWith("volume.taper", StringComparison.Ordinal)),
                wrong
            );
        }
    }

    [Fact]
    public void A_control_at_120_percent_and_absurd_parts_are_all_told_at_once()
    {
        ReadOutcome<LoadCircuit> outcome = LoadReader.Read(
            """
            { "format": "coilwright.load/1", "volume": { "resistance": "-500 kΩ", "setting": 1.2,
              "trebleRetaining": { "capacitance": "3 F" } }, "tone": { "resistance": "500 kΩ", "capacitor": "22 nF",
              "setting": "120 %" }, "buffer": { "gain": 0 } }
            """
        );
        Assert.Null(outcome.Value);
        Assert.Equal(
            ["buffer.gain", "tone.setting", "volume.resistance", "volume.setting", "volume.trebleRetaining.capacitance"],
            outcome.Problems.Select(problem => problem.Field).Order(StringComparer.Ordinal)
        );
    }
}
