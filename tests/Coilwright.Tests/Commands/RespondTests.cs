using System.Globalization;
using System.Text.Json;

namespace Coilwright.Tests.Commands;

/// <summary>Story 21: 2.5 H, 120 pF, 6.2 kΩ on several loads.</summary>
public sealed class RespondTests
{
    private const string Lumped =
        """{ "format": "coilwright.lumped/1", "resistance": "6.2 kΩ", "inductance": "2.5 H", "capacitance": "120 pF" }""";

    // Direct nodal solutions and ngspice, which agree to 4e-5 in frequency and 1e-4 dB (derived): 2.45 H, 6.2 kΩ, 110 pF; 500 pF of cable
    // and 1 MΩ behind.
    [Theory]
    [InlineData(250, 1.0, 3752.3000224392317, 4.085481342856011, 6034.268700711823)]
    [InlineData(250, 0.0, 612.8008126093144, 4.365692934401759, 988.8304024874277)]
    [InlineData(500, 1.0, 4001.0482145293067, 7.925458455650544, 6292.905156596039)]
    [InlineData(500, 0.0, 613.1278189357145, 4.571365873971925, 986.9153409937296)]
    public async Task Peak_and_minus_3_dB_match_an_independent_circuit_solution(
        double kiloohm,
        double tone,
        double peakHz,
        double gainDb,
        double minus3DbHz
    )
    {
        using TestFolder folder = new();
        string pickup = folder.Write(
            "pickup.json",
            """{ "format": "coilwright.lumped/1", "resistance": "6.2 kΩ", "inductance": "2.45 H", "capacitance": "110 pF" }"""
        );
        string load = folder.Write(
            "load.json",
            string.Create(
                CultureInfo.InvariantCulture,
                $$"""
                { "format": "coilwright.load/1", "volume": { "resistance": "{{kiloohm}} kΩ", "setting": 1 },
                  "tone": { "resistance": "{{kiloohm}} kΩ", "capacitor": "22 nF", "setting": {{tone}} },
                  "cable": { "capacitance": "500 pF" }, "input": { "resistance": "1 MΩ" } }
                """
            )
        );

        CommandRun run = await CommandRun.Of("respond", pickup, "--load", load, "--json");

        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.Empty(Schemas.Complaints("response.json", run.Output));
        using JsonDocument document = JsonDocument.Parse(run.Output);
        double Of(JsonElement element) => element.GetProperty("value").GetDouble();
        JsonElement peak = document.RootElement.GetProperty("peak");
        Assert.Equal(1, Of(peak.GetProperty("frequency")) / peakHz, 1e-4);
        Assert.Equal(gainDb, Of(peak.GetProperty("gain")), 0.001);
        Assert.Equal(1, Of(document.RootElement.GetProperty("minus3dB")) / minus3DbHz, 1e-4);
    }

    // Story 21's bare and cabled peaks, printed to three digits from 1/(2π√LC); the curve's own peak lies R²C/(4L), 0.05 % and 0.23 %,
    // lower.
    [Theory]
    [InlineData(null, 9190, 9.2, null)]
    [InlineData("""{ "format": "coilwright.load/1", "cable": { "capacitance": "470 pF" } }""", 4140, 14.4, null)]
    public async Task Story_21_the_peak_on_the_players_load(string? load, double peakHz, double tolerance, double? gainDb)
    {
        using TestFolder folder = new();
        string[] args =
        [
            "respond",
            folder.Write("pickup.json", Lumped),
            "--json",
            .. load is null ? Array.Empty<string>() : ["--load", folder.Write("load.json", load)],
        ];

        CommandRun run = await CommandRun.Of(args);

        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.Empty(Schemas.Complaints("response.json", run.Output));
        using JsonDocument document = JsonDocument.Parse(run.Output);
        JsonElement peak = document.RootElement.GetProperty("peak");
        Assert.Equal(peakHz, peak.GetProperty("frequency").GetProperty("value").GetDouble(), tolerance);
        if (gainDb is { } gain)
        {
            Assert.Equal(gain, peak.GetProperty("gain").GetProperty("value").GetDouble(), 0.05);
        }
    }

    [Fact]
    public async Task The_table_holds_the_points_asked_for_and_the_peak_stands_on_the_curve()
    {
        using TestFolder folder = new();
        string pickup = folder.Write("pickup.json", Lumped),
            load = folder.Write(
                "load.json",
                """{ "format": "coilwright.load/1", "cable": { "capacitance": "470 pF" }, "input": { "resistance": "1 MΩ" } }"""
            );

        CommandRun table =
                await CommandRun.Of("respond", pickup, "--load", load, "--from", "1 kHz", "--to", "10kHz", "--points", "2001", "--csv"),
            json = await CommandRun.Of("respond", pickup, "--load", load, "--json");

        string[] lines = table.Output.TrimEnd().Split('\n');
        Assert.Equal("frequency [Hz],gain [dB],phase [deg],impedance [Ω]", lines[0]);
        double[][] rows =
        [
            .. lines.Skip(1).Select(line => line.Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray()),
        ];
        Assert.Equal(2001, rows.Length);
        Assert.Equal(1000, rows[0][0], 1e-6);
        Assert.Equal(10_000, rows[^1][0], 1e-6);
        double[] highest = rows.MaxBy(row => row[1])!;
        using JsonDocument document = JsonDocument.Parse(json.Output);
        JsonElement peak = document.RootElement.GetProperty("peak");
        Assert.Equal(highest[0], peak.GetProperty("frequency").GetProperty("value").GetDouble(), highest[0] * 0.0012); // the grid's step
        Assert.Equal(highest[1], peak.GetProperty("gain").GetProperty("value").GetDouble(), 0.01);
    }

    [Fact]
    public async Task A_recipe_responds_too_with_the_peak_its_prediction_tells()
    {
        string recipe = RepositoryFiles.PathOf("demo", "recipes", "harbour-bridge.json"),
            load = RepositoryFiles.PathOf("demo", "loads", "player.json");

        CommandRun respond = await CommandRun.Of("respond", recipe, "--load", load, "--json"),
            predict = await CommandRun.Of("predict", recipe, "--load", load, "--json");

        using JsonDocument response = JsonDocument.Parse(respond.Output),
            prediction = JsonDocument.Parse(predict.Output);
        double told = prediction
            .RootElement.GetProperty("pickup")
            .GetProperty("loadedResonance")
            .GetProperty("frequency")
            .GetProperty("value")
            .GetDouble();
        Assert.Equal(
            told,
            response.RootElement.GetProperty("peak").GetProperty("frequency").GetProperty("value").GetDouble(),
            told * 0.005
        );
    }
}
