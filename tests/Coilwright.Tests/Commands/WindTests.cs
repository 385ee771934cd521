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

    [Theory]
    [InlineData("hand-winder.json")]
    [InlineData("gear-winder.json")]
    [InlineData("stepper-winder.json")]
    [InlineData("timed-winder.json")]
    public async Task The_sheet_of_every_kind_of_machine_is_valid_by_its_schema_and_complete(string machine)
    {
        string file = RepositoryFiles.PathOf("demo", "machines", machine);
        CommandRun run = await CommandRun.Of("wind", s_harbour, "--machine", file, "--json"),
            plain = await CommandRun.Of("wind", s_harbour, "--machine", file);

        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.Empty(Schemas.Complaints("setup.json", run.Output));
        Assert.All(
            [
                "wire",
                "tension",
                "pitch",
                "turns per layer",
                "direction",
                "seen from",
                "start",
                "speed",
                "meter at 23.0 °C",
                "first piece",
                "If the wire breaks",
                "CAUTION",
            ],
            word => Assert.Contains(word, plain.Output, StringComparison.Ordinal)
        );
    }

    /// <summary>
    /// Story 12: a counter that runs × 1.006 stops at 4,970 for 5,000 real turns; the pair 19 : 100 on a 1 mm screw gives 0.19 mm; 43 AWG
    /// takes 8.6 to 13.8 gf, and the shop's own figure is 11.
    /// </summary>
    [Fact]
    public async Task An_old_machine_gets_its_own_stop_gears_and_tension()
    {
        using TestFolder folder = new();
        string recipe = (await File.ReadAllTextAsync(s_harbour, TestContext.Current.CancellationToken))
            .Replace("\"turns\": 8000", "\"turns\": 5000", StringComparison.Ordinal)
            .Replace("AWG 42", "AWG 43", StringComparison.Ordinal)
            .Replace("\"tension\": \"14 gf\", ", "", StringComparison.Ordinal);
        CommandRun run = await CommandRun.Of(
            "wind",
            folder.Write("old.json", recipe),
            "--machine",
            RepositoryFiles.PathOf("demo", "machines", "gear-winder.json"),
            "--json"
        );
        using JsonDocument document = JsonDocument.Parse(run.Output);
        JsonElement coil = document.RootElement.GetProperty("coils")[0],
            tension = coil.GetProperty("tension");

        Assert.Equal(4970, coil.GetProperty("counterStop").GetDouble());
        Assert.StartsWith("gear pair 19 : 100", coil.GetProperty("setting").GetProperty("how").GetString(), StringComparison.Ordinal);
        Assert.Equal(0.19e-3, coil.GetProperty("setting").GetProperty("pitch").GetProperty("value").GetDouble(), 1e-12);
        Assert.Equal(
            [8.6, 13.8, 11.0],
            new[] { "low", "high", "own" }.Select(name =>
                Math.Round(tension.GetProperty(name).GetProperty("value").GetDouble() / 9.80665e-3, 1)
            )
        );
    }

    /// <summary>
    /// 417 s at 1,150 rpm are 8,000 turns; ± 8 % of speed and ± 1.5 s of stopping are ± 8.0 %, and the ohms spread a little more because
    /// the last turns are the longest.
    /// </summary>
    [Fact]
    public async Task A_timed_machine_gets_seconds_and_the_spread_they_imply()
    {
        CommandRun run = await CommandRun.Of(
            "wind",
            s_harbour,
            "--machine",
            RepositoryFiles.PathOf("demo", "machines", "timed-winder.json"),
            "--json"
        );
        using JsonDocument document = JsonDocument.Parse(run.Output);
        JsonElement coil = document.RootElement.GetProperty("coils")[0],
            timed = coil.GetProperty("setting").GetProperty("timed");

        Assert.False(coil.TryGetProperty("counterStop", out _));
        Assert.Equal(8000 / 1150.0 * 60, timed.GetProperty("seconds").GetProperty("value").GetDouble(), 1e-9);
        double spread = Math.Sqrt(0.08 * 0.08 + Math.Pow(1.5 / (8000 / 1150.0 * 60), 2));
        Assert.Equal(8000 * (1 - spread), timed.GetProperty("turns").GetProperty("low").GetDouble(), 1e-6);
        Assert.InRange(
            timed.GetProperty("dcResistanceAt20C").GetProperty("high").GetDouble()
                / timed.GetProperty("dcResistanceAt20C").GetProperty("value").GetDouble()
                - 1,
            spread,
            0.2
        );
    }

    [Fact]
    public async Task A_machine_file_that_is_wrong_exits_2_with_the_field()
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of(
            "wind",
            s_harbour,
            "--machine",
            folder.Write("m.json", """{ "format": "coilwright.machine/1", "kind": "gears" }""")
        );
        Assert.Equal(2, run.Exit);
        Assert.Contains("kind", run.Error, StringComparison.Ordinal);
        Assert.Contains("\"gear\"", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_meter_in_a_warm_room_reads_0_393_percent_a_degree_more()
    {
        CommandRun run = await CommandRun.Of("wind", s_harbour, "--room", "95 °F", "--json");
        using JsonDocument document = JsonDocument.Parse(run.Output);
        JsonElement coil = document.RootElement.GetProperty("coils")[0];
        double cold = coil.GetProperty("dcResistanceAt20C").GetProperty("expected").GetProperty("value").GetDouble(),
            warm = coil.GetProperty("dcResistanceAtRoom").GetProperty("expected").GetProperty("value").GetDouble();

        Assert.Equal(1 + 0.00393 * 15, warm / cold, 1e-9); // 95 °F is 35 °C
    }

    [Fact]
    public async Task Story_8_turns_that_do_not_fit_exit_1_and_say_by_how_much()
    {
        using TestFolder folder = new();
        string tight = (await File.ReadAllTextAsync(s_harbour, TestContext.Current.CancellationToken)).Replace(
            "\"turns\": 8000",
            "\"turns\": 16000",
            StringComparison.Ordinal
        );

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
