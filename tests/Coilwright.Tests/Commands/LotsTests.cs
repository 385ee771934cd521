using System.Text.Json;

namespace Coilwright.Tests.Commands;

/// <summary>coilwright lots.</summary>
public sealed class LotsTests
{
    public static TheoryData<string> Demo =>
        [.. Directory.GetFiles(RepositoryFiles.PathOf("demo/lots")).Select(path => Path.GetFileName(path))];

    [Theory]
    [MemberData(nameof(Demo))]
    public async Task Every_example_is_answered_in_words_and_in_the_public_format(string name)
    {
        string file = RepositoryFiles.PathOf("demo/lots/" + name);
        Assert.Empty(Schemas.Complaints("demand.json", await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken)));
        (CommandRun words, CommandRun json) = (await CommandRun.Of("lots", file), await CommandRun.Of("lots", file, "--json"));
        Assert.Equal((0, 0, ""), (words.Exit, json.Exit, words.Error + json.Error));
        Assert.Empty(Schemas.Complaints("lots.json", json.Output));
        string method = JsonDocument.Parse(json.Output).RootElement.GetProperty("method").GetString()!;
        Assert.Contains("How: " + method, words.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_smallest_lot_is_told_in_years_of_cover()
    {
        string file = RepositoryFiles.PathOf("demo/lots/slate-granulate.json");
        CommandRun words = await CommandRun.Of("lots", file);
        Assert.Contains("Minimum lot 30, use 0.25 a year: 120 years of cover", words.Output, StringComparison.Ordinal);
        JsonElement answer = JsonDocument.Parse((await CommandRun.Of("lots", file, "--json")).Output).RootElement;
        Assert.Equal((30, 120), (answer.GetProperty("lot").GetDouble(), answer.GetProperty("coverYears").GetDouble()));
    }

    [Fact]
    public async Task Orders_by_period_come_with_their_cost()
    {
        using TestFolder folder = new();
        string file = folder.Write(
            "four.json",
            """
            { "format": "coilwright.demand/1", "kind": "dynamic", "periods": [90, 120, 80, 70],
              "orderCost": 500, "holdingPerPeriod": 2 }
            """
        );
        JsonElement answer = JsonDocument.Parse((await CommandRun.Of("lots", file, "--json")).Output).RootElement;
        Assert.Equal([210, 0, 150, 0], answer.GetProperty("orders").EnumerateArray().Select(order => order.GetDouble()));
        Assert.Equal(1380, answer.GetProperty("cost").GetDouble()); // 2 orders, 120 and 70 units kept for a period
    }

    [Fact]
    public async Task Every_problem_is_listed_and_refused()
    {
        using TestFolder folder = new();
        string file = folder.Write(
            "bad.json",
            """{ "format": "coilwright.demand/1", "kind": "once", "overage": 0, "distribution": { "normal": [1] } }"""
        );
        CommandRun run = await CommandRun.Of("lots", file);
        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.Contains("3 problems", run.Error, StringComparison.Ordinal);
    }
}
