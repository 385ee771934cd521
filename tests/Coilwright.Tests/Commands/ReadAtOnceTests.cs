using System.Text.RegularExpressions;

namespace Coilwright.Tests.Commands;

/// <summary>Several terminals read into one batch at one moment: each coil gets a tag of its own.</summary>
public sealed class ReadAtOnceTests
{
    [Fact]
    public async Task Eight_reads_at_once_are_eight_coils()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db"),
            recipe = RepositoryFiles.PathOf("demo", "recipes", "harbour-bridge.json");
        await CommandRun.Of("recipe", "add", recipe, "--shop", shop);
        await CommandRun.Of("recipe", "release", "Harbour bridge", "--shop", shop);
        await CommandRun.Of("batch", "start", "Harbour bridge", "--name", "C3", "--quantity", "10", "--shop", shop);

        CommandRun[] runs = await Task.WhenAll(
            Enumerable.Range(0, 8).Select(_ => CommandRun.Of("read", "C3", "6180", "--room", "20C", "--shop", shop))
        );

        Assert.All(runs, run => Assert.Equal((0, ""), (run.Exit, run.Error)));
        Assert.Equal(
            Enumerable.Range(1, 8).Select(number => $"C-00{number}"),
            runs.Select(run => Regex.Match(run.Output, @"^(C-\d+):", RegexOptions.Multiline).Groups[1].Value).Order(StringComparer.Ordinal)
        );
    }
}
