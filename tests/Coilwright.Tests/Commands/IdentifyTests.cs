using System.Text.Json;

namespace Coilwright.Tests.Commands;

/// <summary>coilwright identify.</summary>
public sealed class IdentifyTests
{
    [Fact]
    public async Task An_original_is_explained_in_the_public_format()
    {
        string file = RepositoryFiles.PathOf("demo", "originals", "bench-seven.json");
        Assert.Empty(Schemas.Complaints("original.json", await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken)));
        CommandRun run = await CommandRun.Of("identify", file, "--json");
        Assert.Equal(0, run.Exit);
        Assert.Empty(Schemas.Complaints("explanations.json", run.Output));
        JsonElement first = JsonDocument.Parse(run.Output).RootElement.GetProperty("explanations")[0];
        Assert.Equal("AWG 42", first.GetProperty("gauge").GetString());
        Assert.Equal("single", first.GetProperty("build").GetString());
        Assert.InRange(first.GetProperty("probability").GetDouble(), 0.6, 0.99);
    }

    [Fact]
    public async Task Wrong_readings_are_named_and_refused()
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of(
            "identify",
            folder.Write("o.json", """{ "format": "coilwright.original/1", "bobbin": { "coreLength": "61 kg" }, "readings": [] }""")
        );
        Assert.Equal(2, run.Exit);
        Assert.Contains("bobbin.coreLength", run.Error, StringComparison.Ordinal);
        Assert.Contains("readings", run.Error, StringComparison.Ordinal);
    }
}
