using System.Text.Json;

namespace Coilwright.Tests.Commands;

public sealed class SolveTests
{
    private static readonly string s_harbour = RepositoryFiles.PathOf("demo", "recipes", "harbour-bridge.json");

    [Fact]
    public async Task Recipes_found_are_whole_meet_the_wants_and_forecast_the_same_again()
    {
        CommandRun run = await CommandRun.Of(
            "solve",
            s_harbour,
            "--want",
            "dcResistance=8.2kΩ",
            "--want",
            "loadedPeak>=3.2kHz",
            "--vary",
            "turns,gauge",
            "--points",
            "5",
            "--json"
        );

        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.Empty(Schemas.Complaints("solutions.json", run.Output));
        using JsonDocument document = JsonDocument.Parse(run.Output);
        JsonElement best = document.RootElement.GetProperty("solutions")[0];
        Assert.True(document.RootElement.GetProperty("met").GetBoolean());
        using TestFolder folder = new();
        CommandRun again = await CommandRun.Of(
            "predict",
            folder.Write("found.json", best.GetProperty("recipe").GetRawText()),
            "--load",
            RepositoryFiles.PathOf("demo", "loads", "player.json"),
            "--json"
        );
        using JsonDocument prediction = JsonDocument.Parse(again.Output);
        JsonElement pickup = prediction.RootElement.GetProperty("pickup");
        Assert.InRange(pickup.GetProperty("dcResistance").GetProperty("value").GetDouble(), 8118, 8282);
        Assert.InRange(pickup.GetProperty("loadedResonance").GetProperty("frequency").GetProperty("value").GetDouble(), 3200, 20_000);
        Assert.Equal(
            best.GetProperty("prediction").GetProperty("pickup").GetProperty("inductance").GetProperty("value").GetDouble(),
            pickup.GetProperty("inductance").GetProperty("value").GetDouble(),
            1e-9
        );
        Assert.Equal(
            best.GetProperty("changes").GetProperty("turns").GetInt32(),
            best.GetProperty("recipe").GetProperty("coils")[0].GetProperty("winding").GetProperty("turns").GetInt32()
        );
    }

    [Fact]
    public async Task What_cannot_be_met_exits_1_and_says_what_binds()
    {
        CommandRun run = await CommandRun.Of("solve", s_harbour, "--want", "dcResistance=12kΩ", "--vary", "turns", "--json"),
            plain = await CommandRun.Of("solve", s_harbour, "--want", "dcResistance=12kΩ", "--vary", "turns");

        Assert.Equal((1, 1), (run.Exit, plain.Exit));
        Assert.Empty(Schemas.Complaints("solutions.json", run.Output));
        using JsonDocument document = JsonDocument.Parse(run.Output);
        Assert.False(document.RootElement.GetProperty("met").GetBoolean());
        Assert.Contains("fill", document.RootElement.GetProperty("binding").EnumerateArray().Select(text => text.GetString()));
        Assert.Contains("Cannot be met", plain.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_change_in_output_is_meant_against_the_recipe_as_it_stands()
    {
        CommandRun run = await CommandRun.Of("solve", s_harbour, "--want", "output=+1dB", "--vary", "turns", "--points", "2", "--json");
        using JsonDocument document = JsonDocument.Parse(run.Output);
        JsonElement best = document.RootElement.GetProperty("solutions")[0];

        // Output goes with turns, 8,000 × 10^(1/20) = 8,976, and a little less as the outer turns see less of the strings.
        Assert.InRange(best.GetProperty("changes").GetProperty("turns").GetInt32(), 8900, 9200);
    }

    [Fact]
    public async Task Every_wrong_want_and_choice_is_listed_at_once()
    {
        CommandRun run = await CommandRun.Of(
            "solve",
            s_harbour,
            "--want",
            "dcResistance=8.2",
            "--want",
            "outputt=max",
            "--want",
            "loadedPeak>=3kg",
            "--want",
            "nonsense",
            "--vary",
            "turn,gauge=AWG77,turns=9..5",
            "--points",
            "1"
        );

        Assert.Equal((2, ""), (run.Exit, run.Output));
        string[] lines = [.. run.Error.Split('\n').Where(line => line.StartsWith("  --", StringComparison.Ordinal))];
        Assert.Equal(8, lines.Length);
        Assert.Contains(lines, line => line.Contains("the nearest is output", StringComparison.Ordinal));
        Assert.Contains(lines, line => line.Contains("kΩ", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Another_magnet_and_a_larger_bobbin_make_whole_recipes()
    {
        CommandRun run = await CommandRun.Of(
            "solve",
            s_harbour,
            "--want",
            "inductance>=2.9H",
            "--vary",
            "magnet=alnico-2/alnico-5,windingHeight=10mm..12mm",
            "--points",
            "3",
            "--json"
        );

        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.Empty(Schemas.Complaints("solutions.json", run.Output));
        using JsonDocument document = JsonDocument.Parse(run.Output);
        Assert.Equal("alnico-2", document.RootElement.GetProperty("solutions")[0].GetProperty("changes").GetProperty("magnet").GetString());
    }
}
