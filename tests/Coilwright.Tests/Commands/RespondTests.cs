using System.Globalization;
using System.Text.Json;

namespace Coilwright.Tests.Commands;

/// <summary>Story 21: 2.5 H, 120 pF, 6.2 kΩ on several loads.</summary>
public sealed class RespondTests
{
    private const string Lumped = """{ "format": "coilwright.lumped/1", "resistance": "6.2 kΩ", "inductance": "2.5 H", "capacitance": "120 pF" }""";

    // Story 21's figures; tolerance is half of the last printed digit.
    [Theory]
    [InlineData(null, 9190, 5, null)]
    [InlineData("""{ "format": "coilwright.load/1", "cable": { "capacitance": "470 pF" } }""", 4140, 5, null)]
    [InlineData("""{ "format": "coilwright.load/1", "volume": { "resistance": "250 kΩ", "setting": 1 }, "tone": { "resistance": "250 kΩ", "capacitor": "22 nF", "setting": 1 }, "cable": { "capacitance": "470 pF" }, "input": { "resistance": "1 MΩ" } }""", 3760, 5, 3.6)]
    [InlineData("""{ "format": "coilwright.load/1", "volume": { "resistance": "500 kΩ", "setting": 1 }, "tone": { "resistance": "500 kΩ", "capacitor": "22 nF", "setting": 1 }, "cable": { "capacitance": "470 pF" }, "input": { "resistance": "1 MΩ" } }""", 4030, 5, 7.6)]
    public async Task Story_21_the_peak_on_the_players_load(string? load, double peakHz, double tolerance, double? gainDb)
    {
        using TestFolder folder = new();
        string[] args = ["respond", folder.Write("pickup.json", Lumped), "--json", .. load is null ? Array.Empty<string>() : ["--load", folder.Write("load.json", load)]];

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
        string pickup = folder.Write("pickup.json", Lumped), load = folder.Write("load.json", """{ "format": "coilwright.load/1", "cable": { "capacitance": "470 pF" }, "input": { "resistance": "1 MΩ" } }""");

        CommandRun table = await CommandRun.Of("respond", pickup, "--load", load, "--from", "1 kHz", "--to", "10kHz", "--points", "2001", "--csv"), json = await CommandRun.Of("respond", pickup, "--load", load, "--json");

        string[] lines = table.Output.TrimEnd().Split('\n');
        Assert.Equal("frequency [Hz],gain [dB],phase [deg],impedance [Ω]", lines[0]);
        double[][] rows = [.. lines.Skip(1).Select(line => line.Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray())];
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
        string recipe = RepositoryFiles.PathOf("demo", "recipes", "harbour-bridge.json"), load = RepositoryFiles.PathOf("demo", "loads", "player.json");

        CommandRun respond = await CommandRun.Of("respond", recipe, "--load", load, "--json"), predict = await CommandRun.Of("predict", recipe, "--load", load, "--json");

        using JsonDocument response = JsonDocument.Parse(respond.Output), prediction = JsonDocument.Parse(predict.Output);
        double told = prediction.RootElement.GetProperty("pickup").GetProperty("loadedResonance").GetProperty("frequency").GetProperty("value").GetDouble();
        Assert.Equal(told, response.RootElement.GetProperty("peak").GetProperty("frequency").GetProperty("value").GetDouble(), told * 0.005);
    }
}
