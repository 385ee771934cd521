using System.Text.Json;

namespace Coilwright.Tests.Commands;

/// <summary>coilwright learn, from the demo's readings to a later forecast.</summary>
public sealed class LearnTests
{
    [Fact]
    public async Task What_was_accepted_moves_later_forecasts_and_nothing_on_record()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db"),
            recipe = RepositoryFiles.PathOf("demo/recipes/harbour-bridge.json");
        Assert.Equal(0, (await CommandRun.Of("demo", "--no-serve", "--shop", shop)).Exit);
        string trace = (await CommandRun.Of("trace", "0117", "--shop", shop, "--json")).Output,
            batch = (await CommandRun.Of("batch", "show", "H-12", "--shop", shop, "--json")).Output,
            plain = (await CommandRun.Of("predict", recipe, "--json")).Output;
        string[] predict = ["predict", recipe, "--shop", shop, "--spool", "0117", "--json"];
        Assert.Equal("forecast", Ohm((await CommandRun.Of(predict)).Output).Basis); // nothing was accepted yet

        CommandRun proposed = await CommandRun.Of("learn", "--propose", "--reason", "after the spring batches", "--shop", shop);
        Assert.Equal((0, ""), (proposed.Exit, proposed.Error));
        Assert.Contains("Proposed set 1", proposed.Output, StringComparison.Ordinal);
        Assert.Equal("forecast", Ohm((await CommandRun.Of(predict)).Output).Basis); // nor by a proposal alone
        Assert.Equal(0, (await CommandRun.Of("learn", "--accept", "1", "--reason", "they agree", "--shop", shop)).Exit);

        (string basis, double value, double low, double high) = Ohm((await CommandRun.Of(predict)).Output);
        (_, double before, double lowBefore, double highBefore) = Ohm(plain);
        Assert.Equal("learnt", basis);
        Assert.True((high - low) / value <= (highBefore - lowBefore) / before / 2, "the interval is at most half of the first");
        Assert.InRange(before, lowBefore, highBefore);
        CommandRun without = await CommandRun.Of("predict", recipe, "--shop", shop, "--without-learning", "--json");
        Assert.Equal(Ohm(plain), Ohm(without.Output));
        Assert.Equal(trace, (await CommandRun.Of("trace", "0117", "--shop", shop, "--json")).Output);
        Assert.Equal(batch, (await CommandRun.Of("batch", "show", "H-12", "--shop", shop, "--json")).Output);
    }

    [Theory]
    [InlineData("say one thing to do", "--propose", "--list")]
    [InlineData("say one thing to do")]
    [InlineData("say why", "--accept", "1")]
    [InlineData("there is no set 7", "--decline", "7", "--reason", "x")]
    [InlineData("there is no line", "--close", "B9", "--reason", "x")]
    [InlineData("a list needs no reason", "--list", "--reason", "x")]
    public async Task What_cannot_be_done_is_said(string said, params string[] words)
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        Assert.Equal(
            0,
            (await CommandRun.Of("recipe", "add", RepositoryFiles.PathOf("demo/recipes/harbour-bridge.json"), "--shop", shop)).Exit
        );
        CommandRun run = await CommandRun.Of(["learn", .. words, "--shop", shop]);
        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.Contains(said, run.Error, StringComparison.Ordinal);
    }

    private static (string Basis, double Value, double Low, double High) Ohm(string json)
    {
        JsonElement ohm = JsonDocument.Parse(json).RootElement.GetProperty("pickup").GetProperty("dcResistance");
        return (
            ohm.GetProperty("basis").GetString()!,
            ohm.GetProperty("value").GetDouble(),
            ohm.GetProperty("low").GetDouble(),
            ohm.GetProperty("high").GetDouble()
        );
    }
}
