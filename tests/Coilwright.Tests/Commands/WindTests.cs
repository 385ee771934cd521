using System.Text.Json;

namespace Coilwright.Tests.Commands;

public sealed class WindTests
{
    private static readonly string s_harbour = RepositoryFiles.PathOf("demo", "recipes", "harbour-bridge.json");

    public static TheoryData<string> DemoRecipes => PredictTests.DemoRecipes;

    [Theory]
    [MemberData(nameof(DemoRecipes))]
    public async Task Json_of_every_demo_recipe_is_valid_by_its_schema(string recipe)
    {
        CommandRun run = await CommandRun.Of("wind", RepositoryFiles.PathOf("demo", "recipes", recipe), "--json");

        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.Empty(Schemas.Complaints("setup.json", run.Output));
    }

    [Fact]
    public async Task Story_1_the_set_up_states_what_the_recipe_says()
    {
        CommandRun run = await CommandRun.Of("wind", s_harbour, "--machine", "Winder 2", "--json");
        using JsonDocument document = JsonDocument.Parse(run.Output);
        JsonElement coil = document.RootElement.GetProperty("coils")[0];

        Assert.Equal(8000, coil.GetProperty("counterStop").GetDouble());
        Assert.Equal("counter-clockwise", coil.GetProperty("direction").GetString());
        Assert.Equal(58, coil.GetProperty("turnsPerLayer").GetProperty("value").GetDouble(), 0.5); // 11 mm ÷ 0.19 mm
        Assert.Equal(14 * 9.80665e-3, coil.GetProperty("tension").GetProperty("own").GetProperty("value").GetDouble(), 1e-9);
        Assert.Equal(400, coil.GetProperty("runTime").GetProperty("value").GetDouble(), 1e-9); // 8,000 turns at 1,200 rpm
        JsonElement cold = coil.GetProperty("dcResistanceAt20C");
        Assert.Equal(6180 * 0.96, cold.GetProperty("lowest").GetProperty("value").GetDouble(), 1e-6);
        Assert.Equal(6180 * 1.04, cold.GetProperty("highest").GetProperty("value").GetDouble(), 1e-6);
    }

    [Fact]
    public async Task Tension_band_of_43_gauge_is_that_of_story_12()
    {
        CommandRun run = await CommandRun.Of("wind", RepositoryFiles.PathOf("demo", "recipes", "keel-blade.json"), "--json");
        using JsonDocument document = JsonDocument.Parse(run.Output);
        JsonElement tension = document.RootElement.GetProperty("coils")[0].GetProperty("tension");

        Assert.Equal(8.6, tension.GetProperty("low").GetProperty("value").GetDouble() / 9.80665e-3, 0.1);
        Assert.Equal(13.8, tension.GetProperty("high").GetProperty("value").GetDouble() / 9.80665e-3, 0.2);
    }

    [Fact]
    public async Task The_meter_in_a_warm_room_reads_0_393_percent_a_degree_more()
    {
        CommandRun run = await CommandRun.Of("wind", s_harbour, "--room", "95 °F", "--json");
        using JsonDocument document = JsonDocument.Parse(run.Output);
        JsonElement coil = document.RootElement.GetProperty("coils")[0];
        double cold = coil.GetProperty("dcResistanceAt20C").GetProperty("expected").GetProperty("value").GetDouble(), warm = coil.GetProperty("dcResistanceAtRoom").GetProperty("expected").GetProperty("value").GetDouble();

        Assert.Equal(1 + 0.00393 * 15, warm / cold, 1e-9); // 95 °F is 35 °C
    }

    [Fact]
    public async Task Story_8_turns_that_do_not_fit_exit_1_and_say_by_how_much()
    {
        using TestFolder folder = new();
        string tight = (await File.ReadAllTextAsync(s_harbour, TestContext.Current.CancellationToken)).Replace("\"turns\": 8000", "\"turns\": 16000", StringComparison.Ordinal);

        CommandRun run = await CommandRun.Of("wind", folder.Write("tight.json", tight));

        Assert.Equal(1, run.Exit);
        Assert.Matches(@"does not fit: \S+ mm too thick", run.Output);
    }

    [Fact]
    public async Task Plain_form_prints_the_cautions_and_the_closing_line()
    {
        CommandRun run = await CommandRun.Of("wind", s_harbour);

        Assert.Contains("CAUTION  Rotating spindle", run.Output, StringComparison.Ordinal);
        Assert.Contains("CAUTION  Fine wire", run.Output, StringComparison.Ordinal);
        Assert.Contains("safety data sheet, local codes, and those licensed to advise", run.Output, StringComparison.Ordinal);
    }
}
