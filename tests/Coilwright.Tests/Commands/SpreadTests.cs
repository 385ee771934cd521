using System.Text.Json;

namespace Coilwright.Tests.Commands;

public sealed class SpreadTests
{
    private static readonly string s_harbour = RepositoryFiles.PathOf("demo", "recipes", "harbour-bridge.json");

    [Theory]
    [InlineData("harbour-bridge.json")]
    [InlineData("breakwater-twin.json")]
    [InlineData("tideway-bass.json")]
    [InlineData("keel-blade.json")]
    public async Task Json_is_valid_by_its_schema_and_every_number_is_finite(string recipe)
    {
        CommandRun run = await CommandRun.Of("spread", RepositoryFiles.PathOf("demo", "recipes", recipe), "--samples", "1000", "--json");

        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.Empty(Schemas.Complaints("spread.json", run.Output));
        Assert.DoesNotContain("NaN", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Samples_and_seed_are_taken_and_told_and_the_target_counts()
    {
        CommandRun run = await CommandRun.Of("spread", s_harbour, "--samples", "5000", "--seed", "7", "--json"),
            again = await CommandRun.Of("spread", s_harbour, "--samples", "5000", "--seed", "7", "--json");
        using JsonDocument document = JsonDocument.Parse(run.Output);
        JsonElement root = document.RootElement,
            resistance = root.GetProperty("quantities").GetProperty("dcResistance");

        Assert.Equal((5000, 7), (root.GetProperty("samples").GetInt32(), root.GetProperty("seed").GetInt32()));
        Assert.Equal(run.Output, again.Output);
        Assert.InRange(resistance.GetProperty("outsideTarget").GetDouble(), 0.2, 0.5);
        Assert.Equal("Ω", resistance.GetProperty("unit").GetString());
        Assert.InRange(
            resistance.GetProperty("mean").GetDouble(),
            resistance.GetProperty("low").GetDouble(),
            resistance.GetProperty("high").GetDouble()
        );
    }

    [Fact]
    public async Task Plain_form_names_causes_and_remedies()
    {
        CommandRun run = await CommandRun.Of("spread", s_harbour, "--samples", "1000");

        Assert.Equal(0, run.Exit);
        Assert.Contains("bare diameter", run.Output, StringComparison.Ordinal);
        Assert.Contains("10 m of each spool", run.Output, StringComparison.Ordinal);
        Assert.Contains("wound by time", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Too_few_samples_are_refused_with_the_range()
    {
        CommandRun run = await CommandRun.Of("spread", s_harbour, "--samples", "3");

        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.Contains("100 to 1,000,000", run.Error, StringComparison.Ordinal);
    }
}
