using System.Globalization;
using System.Text.Json;
using Coilwright.Physics.Circuit;

namespace Coilwright.Tests.Commands;

/// <summary>Circuits, netlists and measured curves from the command line.</summary>
public sealed class CurveCommandTests
{
    private const string Circuit = """
        { "format": "coilwright.circuit/1",
          "pickups": [
            { "name": "bridge",
              "coils": [ { "resistance": "8 kΩ", "inductance": "4.1 H", "capacitance": "110 pF",
                           "eddy": [ { "inductance": "0.5 H", "resistance": "60 kΩ" } ] } ],
              "volume": { "resistance": "500 kΩ", "setting": 0.7, "trebleRetaining": { "capacitance": "1 nF" } } },
            { "name": "neck",
              "coils": [ { "resistance": "6.2 kΩ", "inductance": "2.5 H", "capacitance": "120 pF" } ],
              "volume": { "resistance": "500 kΩ" } } ],
          "load": { "cable": { "capacitance": "500 pF" }, "input": { "resistance": "1 MΩ" } } }
        """;

    [Fact]
    public async Task Story_21_two_designs_on_one_load_and_the_change_between_them()
    {
        using TestFolder folder = new();
        string first = folder.Write(
            "first.json",
            """{ "format": "coilwright.lumped/1", "resistance": "6.2 kΩ", "inductance": "2.5 H", "capacitance": "120 pF" }"""
        );
        string load = folder.Write(
            "load.json",
            """{ "format": "coilwright.load/1", "volume": { "resistance": "250 kΩ" }, "tone": { "resistance": "250 """
                + """kΩ", "capacitor": "22 nF" }, "cable": { "capacitance": "470 pF" }, "input": { "resistance": "1 MΩ" } }"""
        );
        string other = folder.Write(
            "other.json",
            """{ "format": "coilwright.load/1", "volume": { "resistance": "500 kΩ" }, "tone": { "resistance": "500 """
                + """kΩ", "capacitor": "22 nF" }, "cable": { "capacitance": "470 pF" }, "input": { "resistance": "1 MΩ" } }"""
        );

        foreach ((string file, double gainDb, double hz) in new[] { (load, 3.6, 3760.0), (other, 7.6, 4030.0) })
        {
            CommandRun run = await CommandRun.Of("respond", first, "--load", file, "--json", "--mark", "3kHz", "--against", first);
            Assert.Equal((0, ""), (run.Exit, run.Error));
            Assert.Empty(Schemas.Complaints("response.json", run.Output));
            using JsonDocument document = JsonDocument.Parse(run.Output);
            JsonElement root = document.RootElement;
            // The printed gains count from the induced voltage; ours from 20 Hz, whose level stands beside it.
            Assert.Equal(gainDb, Value(root.GetProperty("peak").GetProperty("gain")) + Value(root.GetProperty("level")), 0.05);
            Assert.Equal(hz, Value(root.GetProperty("peak").GetProperty("frequency")), 10.0);
            Assert.Equal(0, Value(root.GetProperty("change").GetProperty("peakGain")), 1e-9);
            Assert.Equal(3000, root.GetProperty("marks")[0].GetProperty("frequency").GetDouble());
        }
    }

    [Fact]
    public async Task A_circuit_responds_and_its_netlist_holds_every_part()
    {
        using TestFolder folder = new();
        string circuit = folder.Write("two.json", Circuit);
        CommandRun json = await CommandRun.Of("respond", circuit, "--json", "--refine"),
            netlist = await CommandRun.Of("respond", circuit, "--netlist");
        Assert.Equal((0, ""), (json.Exit, json.Error));
        Assert.Empty(Schemas.Complaints("response.json", json.Output));
        Assert.Empty(Schemas.Complaints("circuit.json", Circuit));
        using JsonDocument document = JsonDocument.Parse(json.Output);
        double peak = Value(document.RootElement.GetProperty("peak").GetProperty("gain"));
        Assert.Equal(
            peak,
            document.RootElement.GetProperty("points").EnumerateArray().Max(point => point.GetProperty("gain").GetDouble()),
            1e-6
        );
        Assert.Equal(0, netlist.Exit);
        Assert.All((string[])["V1a ", "L1ae1 ", "Cvol1keep ", "Rvol2below ", "Ccable ", ".ac dec ", ".end"], part =>
            Assert.Contains("\n" + part, netlist.Output, StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task A_recipe_is_written_as_parts_that_sound_like_it()
    {
        CommandRun run = await CommandRun.Of(
            "respond",
            RepositoryFiles.PathOf("demo", "recipes", "harbour-bridge.json"),
            "--load",
            RepositoryFiles.PathOf("demo", "loads", "player.json"),
            "--netlist"
        );
        Assert.Equal((0, ""), (run.Exit, run.Error));
        string note = run.Output.Split('\n')[1];
        Assert.StartsWith("* L(f) and R(f) of the recipe", note, StringComparison.Ordinal);
        double percent = double.Parse(note.Split("at most ")[1].Split(' ')[0], CultureInfo.InvariantCulture);
        Assert.InRange(percent, 0, 1); // 1 % is 0.09 dB, a tenth of what an ear tells apart (common practice, no source)
    }

    [Fact]
    public async Task A_fitted_curve_is_a_pickup_that_responds()
    {
        using TestFolder folder = new();
        LumpedPickup truth = new(7800, 3.5, 120e-12) { Eddy = [new(0.9, 60e3)] };
        string rows = string.Concat(
                PickupResponse
                    .LogFrequencies(50, 20_000, 300)
                    .Select(hz =>
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{hz:R};{PickupImpedance.Ohm(truth, hz).Real:R};{PickupImpedance.Ohm(truth, hz).Imaginary:R}\n"
                        )
                    )
            )
            .Replace('.', ',');
        string curve = folder.Write("curve.csv", "frequency [Hz];real [Ω];imaginary [Ω]\n" + rows);
        CommandRun json = await CommandRun.Of("fit", curve, "--json", "--at", "1kHz,8kHz"),
            lumped = await CommandRun.Of("fit", curve, "--lumped"),
            plain = await CommandRun.Of("fit", curve);
        Assert.Equal((0, ""), (json.Exit, json.Error));
        Assert.Empty(Schemas.Complaints("fit.json", json.Output));
        Assert.Empty(Schemas.Complaints("lumped.json", lumped.Output));
        Assert.Contains("semicolon between cells, decimal comma", plain.Output, StringComparison.Ordinal);
        using JsonDocument document = JsonDocument.Parse(json.Output);
        Assert.Equal(3.5, Value(document.RootElement.GetProperty("parts").GetProperty("inductance")), 1e-4);
        Assert.Equal(
            [false, true],
            document
                .RootElement.GetProperty("inductanceAt")
                .EnumerateArray()
                .Select(one => one.GetProperty("tooNearResonance").GetBoolean())
        );
        CommandRun respond = await CommandRun.Of("respond", folder.Write("fitted.json", lumped.Output), "--json");
        using JsonDocument response = JsonDocument.Parse(respond.Output);
        Assert.Equal(
            1,
            Value(response.RootElement.GetProperty("peak").GetProperty("frequency"))
                / PickupResponse.FindPeak(truth, LoadCircuit.None)!.Value.FrequencyHz,
            1e-4
        );
    }

    [Fact]
    public async Task A_gain_curve_alone_says_what_it_cannot_tell()
    {
        using TestFolder folder = new();
        LumpedPickup truth = new(6200, 2.5, 120e-12);
        string rows = string.Concat(
            PickupResponse
                .Compute(truth, LoadCircuit.None, PickupResponse.LogFrequencies(100, 20_000, 120))
                .Points.Select(point => string.Create(CultureInfo.InvariantCulture, $"{point.FrequencyHz:R},{point.GainDb:0.000}\n"))
        );
        string curve = folder.Write("gain.csv", "frequency [Hz],gain [dB]\n" + rows);
        CommandRun alone = await CommandRun.Of("fit", curve, "--json"),
            with = await CommandRun.Of("fit", curve, "--json", "--resistance", "6.2k");
        using JsonDocument open = JsonDocument.Parse(alone.Output),
            told = JsonDocument.Parse(with.Output);
        Assert.NotEmpty(open.RootElement.GetProperty("undetermined").EnumerateArray());
        Assert.Empty(told.RootElement.GetProperty("undetermined").EnumerateArray());
        Assert.Equal(2.5, Value(told.RootElement.GetProperty("parts").GetProperty("inductance")), 0.01);
    }

    [Fact]
    public async Task Two_resonances_give_the_capacitance_and_a_reading_too_near_is_refused()
    {
        CommandRun done = await CommandRun.Of("resonance", "--peak", "9.19kHz", "470pF:4.14kHz", "--inductance", "2.53H", "--json"),
            refused = await CommandRun.Of("resonance", "--peak", "9.19kHz", "470pF:4.14kHz", "--inductance", "12H", "--at", "8kHz");
        Assert.Equal((0, ""), (done.Exit, done.Error));
        Assert.Empty(Schemas.Complaints("resonance.json", done.Output));
        using JsonDocument document = JsonDocument.Parse(done.Output);
        Assert.Equal(120e-12, Value(document.RootElement.GetProperty("capacitance")), 0.5e-12);
        Assert.Equal(2.5, Value(document.RootElement.GetProperty("reading").GetProperty("inductance")), 0.005);
        Assert.Equal(1, refused.Exit);
        Assert.Contains("too near the resonance", refused.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("resonance", "--peak", "9.19kHz")]
    [InlineData("resonance", "--peak", "9.19kHz", "470pF:12kHz")]
    [InlineData("resonance", "--peak", "9.19", "470pF:4kHz")]
    [InlineData("fit", "none.csv")]
    [InlineData("fit", "none.csv", "--eddy", "9")]
    [InlineData("respond", "a.json", "--csv", "--netlist")]
    public async Task Wrong_entries_exit_2_with_a_reason(params string[] args)
    {
        CommandRun run = await CommandRun.Of(args);
        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.NotEmpty(run.Error);
    }

    [Fact]
    public async Task Pickups_that_cancel_are_said_to_give_nothing()
    {
        using TestFolder folder = new();
        string circuit = folder.Write(
            "out.json",
            """
            { "format": "coilwright.circuit/1", "joined": "series", "pickups": [
              { "name": "a", "coils": [ { "resistance": "6 kΩ", "inductance": "2 H", "capacitance": "100 pF" } ] },
              { "name": "b", "leads": "exchanged",
                "coils": [ { "resistance": "6 kΩ", "inductance": "2 H", "capacitance": "100 pF" } ] } ] }
            """
        );
        CommandRun run = await CommandRun.Of("respond", circuit);
        Assert.Equal(2, run.Exit);
        Assert.Contains("cancel", run.Error, StringComparison.Ordinal);
    }

    private static double Value(JsonElement quantity) => quantity.GetProperty("value").GetDouble();

    /// <summary>
    /// Curves that were really measured, tests/Reference/measured: with the exciter in them none is a pickup behind a flat source.
    /// </summary>
    [Fact]
    public async Task A_measured_curve_that_no_winding_can_give_has_no_result_and_says_why()
    {
        using TestFolder folder = new();
        string[][] rows =
        [
            .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Reference", "measured", "responses.csv"))
                .Skip(1)
                .Select(line => line.Split(',', 3)),
        ];
        foreach (IGrouping<string, string[]> curve in rows.GroupBy(row => row[0] + "-" + row[1]))
        {
            string path = folder.Write(
                curve.Key + ".csv",
                "frequency [Hz],gain [dB],phase [deg]\n" + string.Join('\n', curve.Select(row => row[2]))
            );
            CommandRun json = await CommandRun.Of("fit", path, "--json");
            Assert.Equal((1, ""), (json.Exit, json.Error));
            Assert.Empty(Schemas.Complaints("fit.json", json.Output));
            using JsonDocument found = JsonDocument.Parse(json.Output);
            Assert.NotEqual(0, found.RootElement.GetProperty("none").GetArrayLength());
            Assert.False(found.RootElement.TryGetProperty("lumped", out _));
        }
    }

    [Fact]
    public async Task A_curve_without_a_winding_is_told_in_words_and_gives_no_pickup_to_go_on_with()
    {
        using TestFolder folder = new();
        string path = folder.Write(
            "flat.csv",
            "frequency [Hz],gain [dB]\n"
                + string.Join(
                    '\n',
                    Enumerable.Range(1, 60).Select(n => FormattableString.Invariant($"{100 * n},{(n % 2 == 0 ? 40 : -40)}"))
                )
        );
        CommandRun plain = await CommandRun.Of("fit", path),
            lumped = await CommandRun.Of("fit", path, "--lumped");
        Assert.Equal(1, plain.Exit);
        Assert.Contains("this curve gives no pickup", plain.Output, StringComparison.Ordinal);
        Assert.Equal((2, ""), (lumped.Exit, lumped.Output));
        CommandRun beyond = await CommandRun.Of(
            "fit",
            folder.Write("beyond.csv", "frequency [Hz],gain [dB]\n100,-211900\n200,1\n300,1\n400,1\n")
        );
        Assert.Equal(2, beyond.Exit);
        Assert.Contains("-240 to 240 dB", beyond.Error, StringComparison.Ordinal);
    }
}
