using System.Text.Json;

namespace Coilwright.Tests.Commands;

public sealed class PredictTests
{
    private static readonly string s_harbour = RepositoryFiles.PathOf("demo", "recipes", "harbour-bridge.json");

    public static TheoryData<string> DemoRecipes =>
        [.. Directory.GetFiles(RepositoryFiles.PathOf("demo", "recipes"), "*.json").Select(path => Path.GetFileName(path)!)];

    [Theory]
    [MemberData(nameof(DemoRecipes))]
    public async Task Json_of_every_demo_recipe_is_valid_by_its_schema(string recipe)
    {
        CommandRun run = await CommandRun.Of(
            "predict",
            RepositoryFiles.PathOf("demo", "recipes", recipe),
            "--load",
            RepositoryFiles.PathOf("demo", "loads", "player.json"),
            "--json"
        );

        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.Empty(Schemas.Complaints("prediction.json", run.Output));
    }

    [Fact]
    public void The_schema_check_complains_of_a_broken_prediction() =>
        Assert.NotEmpty(Schemas.Complaints("prediction.json", """{ "format": "coilwright.prediction/1", "coils": [ { "name": 3 } ] }"""));

    [Fact]
    public async Task Every_forecast_lies_inside_its_interval()
    {
        CommandRun run = await CommandRun.Of("predict", s_harbour, "--json");
        using JsonDocument document = JsonDocument.Parse(run.Output);

        foreach (
            JsonProperty quantity in document
                .RootElement.GetProperty("coils")[0]
                .EnumerateObject()
                .Where(member => member.Value.ValueKind == JsonValueKind.Object && member.Value.TryGetProperty("low", out _))
        )
        {
            double low = quantity.Value.GetProperty("low").GetDouble(),
                high = quantity.Value.GetProperty("high").GetDouble();
            Assert.InRange(quantity.Value.GetProperty("value").GetDouble(), low, high);
        }
    }

    [Fact]
    public async Task What_to_watch_is_told_by_place_in_words_and_files_keep_the_path()
    {
        using TestFolder folder = new();
        string tight = (await File.ReadAllTextAsync(s_harbour, TestContext.Current.CancellationToken)).Replace(
                "\"maxBuild\":",
                "\"fillLimit\": 0.3, \"maxBuild\":",
                StringComparison.Ordinal
            ),
            file = folder.Write("tight.json", tight);
        CommandRun told = await CommandRun.Of("predict", file),
            kept = await CommandRun.Of("predict", file, "--json");

        Assert.Contains("Note, coil 1, winding, turns: fill", told.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("coils[0]", told.Output, StringComparison.Ordinal);
        Assert.Contains("\"coils[0].winding.turns\"", kept.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_spectrum_holds_the_frequencies_asked_for()
    {
        CommandRun run = await CommandRun.Of("predict", s_harbour, "--at", "120Hz,8kHz", "--json");
        using JsonDocument document = JsonDocument.Parse(run.Output);

        Assert.Equal(
            [120, 8000],
            document
                .RootElement.GetProperty("pickup")
                .GetProperty("spectrum")
                .EnumerateArray()
                .Select(line => line.GetProperty("frequency").GetDouble())
        );
    }

    [Theory]
    [MemberData(nameof(DemoRecipes))]
    public async Task Sensitivity_of_every_demo_recipe_is_valid_by_its_schema_and_every_change_lies_inside_its_interval(string recipe)
    {
        CommandRun run = await CommandRun.Of(
            "predict",
            RepositoryFiles.PathOf("demo", "recipes", recipe),
            "--load",
            RepositoryFiles.PathOf("demo", "loads", "player.json"),
            "--sensitivity",
            "--json"
        );

        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.Empty(Schemas.Complaints("prediction.json", run.Output));
        using JsonDocument document = JsonDocument.Parse(run.Output);
        JsonElement[] lines = [.. document.RootElement.GetProperty("sensitivity").EnumerateArray()];
        Assert.True(lines.Length >= 5);
        foreach (
            JsonElement told in lines
                .SelectMany(line => line.GetProperty("effects").EnumerateObject())
                .SelectMany(effect => effect.Value.EnumerateObject())
                .Select(one => one.Value)
                .Where(one => one.TryGetProperty("low", out _))
        )
        {
            Assert.InRange(
                told.GetProperty("value").GetDouble(),
                told.GetProperty("low").GetDouble(),
                told.GetProperty("high").GetDouble()
            );
        }
    }

    [Fact]
    public async Task Plain_sensitivity_names_each_change_and_what_cannot_be_made()
    {
        CommandRun run = await CommandRun.Of("predict", s_harbour, "--sensitivity");

        Assert.Equal(0, run.Exit);
        Assert.Matches(@"quantity +wire 1 % thicker +AWG 43", run.Output);
        Assert.Matches(@"DC resistance at 20 °C +−1\.8 ±0\.1 %", run.Output); // 1/1.01² and a little more build
        Assert.Contains("Cannot be made, AWG 41: does not fit", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_field_over_the_poles_is_read_at_the_jigs_distance()
    {
        CommandRun usual = await CommandRun.Of("predict", s_harbour, "--json"),
            far = await CommandRun.Of("predict", s_harbour, "--jig", "3mm", "--json");
        using JsonDocument near = JsonDocument.Parse(usual.Output),
            away = JsonDocument.Parse(far.Output);
        JsonElement[] one = [.. near.RootElement.GetProperty("pickup").GetProperty("poleField").EnumerateArray()],
            three = [.. away.RootElement.GetProperty("pickup").GetProperty("poleField").EnumerateArray()];
        static double Field(JsonElement pole) => Math.Abs(pole.GetProperty("field").GetProperty("value").GetDouble());

        Assert.NotEmpty(one);
        Assert.All(one, pole => Assert.Equal(1e-3, pole.GetProperty("distance").GetDouble()));
        Assert.All(three, pole => Assert.Equal(3e-3, pole.GetProperty("distance").GetDouble()));
        Assert.All(one.Zip(three), pair => Assert.InRange(Field(pair.Second), 0.2 * Field(pair.First), 0.9 * Field(pair.First)));

        CommandRun wrong = await CommandRun.Of("predict", s_harbour, "--jig", "80mm");
        Assert.Contains("--jig: outside the allowed range", wrong.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Plain_form_shows_value_interval_and_basis()
    {
        CommandRun run = await CommandRun.Of("predict", s_harbour);

        Assert.Equal(0, run.Exit);
        Assert.Matches(@"DC resistance at 20 °C +\S+ kΩ +\S+ kΩ – \S+ kΩ +forecast", run.Output);
    }

    [Fact]
    public async Task Accurate_and_fast_engines_agree_on_the_wire()
    {
        CommandRun fast = await CommandRun.Of("predict", s_harbour, "--json"),
            accurate = await CommandRun.Of("predict", s_harbour, "--accurate", "--json");

        Assert.Equal(Value(fast, "dcResistance"), Value(accurate, "dcResistance"), Value(fast, "dcResistance") * 1e-9);
        Assert.Equal(Value(fast, "inductance"), Value(accurate, "inductance"), Value(fast, "inductance") * 0.05);
    }

    private static double Value(CommandRun run, string quantity)
    {
        using JsonDocument document = JsonDocument.Parse(run.Output);
        return document.RootElement.GetProperty("coils")[0].GetProperty(quantity).GetProperty("value").GetDouble();
    }
}
