using System.Text.Json;

namespace Coilwright.Tests.Commands;

/// <summary>coilwright plan.</summary>
public sealed class PlanTests
{
    private const string Impossible = """
        { "format": "coilwright.jobs/1",
          "stations": [ { "name": "Winder", "hours": [ { "from": "0 h", "to": "1 h", "every": "24 h" } ] },
                        { "name": "Pot", "hours": [ { "from": "4 h", "to": "5 h", "every": "24 h" } ] } ],
          "jobs": [ { "name": "B-9", "steps": [ { "name": "wind", "on": [ { "station": "Winder", "time": "10 min" } ], "maxGap": "1 h" },
                                                { "name": "pot", "on": [ { "station": "Pot", "time": "10 min" } ] } ] } ] }
        """;

    public static TheoryData<string> Demo =>
        [.. Directory.GetFiles(RepositoryFiles.PathOf("demo/plans")).Select(path => Path.GetFileName(path))];

    [Theory]
    [MemberData(nameof(Demo))]
    public async Task Every_example_is_planned_in_words_and_in_the_public_format(string name)
    {
        string file = RepositoryFiles.PathOf("demo/plans/" + name);
        Assert.Empty(Schemas.Complaints("jobs.json", await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken)));
        (CommandRun words, CommandRun json) = (await CommandRun.Of("plan", file), await CommandRun.Of("plan", file, "--json"));
        Assert.Equal((0, 0, ""), (words.Exit, json.Exit, words.Error + json.Error));
        Assert.Empty(Schemas.Complaints("plan.json", json.Output));
        Assert.True(JsonDocument.Parse(json.Output).RootElement.GetProperty("optimal").GetBoolean());
        Assert.Contains("no plan is better", words.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_old_winder_is_shared_in_the_order_of_least_set_ups()
    {
        JsonElement plan = JsonDocument
            .Parse((await CommandRun.Of("plan", RepositoryFiles.PathOf("demo/plans/one-old-winder.json"), "--json")).Output)
            .RootElement;

        // 190 min of winding; of the six orders Breakwater, Harbour, Sandbar needs 10 and 20 min of set-ups, the others more
        Assert.Equal((190 + 30) * 60, plan.GetProperty("makespan").GetProperty("value").GetDouble());
        Assert.Equal(
            ["Breakwater", "Harbour", "Sandbar"],
            plan.GetProperty("steps").EnumerateArray().Select(step => step.GetProperty("job").GetString())
        );
    }

    [Fact]
    public async Task What_makes_a_job_late_is_said()
    {
        CommandRun run = await CommandRun.Of("plan", RepositoryFiles.PathOf("demo/plans/monday.json"));
        Assert.Matches("B-2[1-4] is late by .*: .*(busy until|closed|never waits)", run.Output);
    }

    [Fact]
    public async Task A_list_that_cannot_be_planned_says_why_and_ends_with_1()
    {
        using TestFolder folder = new();
        string file = folder.Write("impossible.json", Impossible);
        (CommandRun words, CommandRun json) = (await CommandRun.Of("plan", file), await CommandRun.Of("plan", file, "--json"));
        Assert.Equal((1, 1), (words.Exit, json.Exit));
        Assert.Contains("B-9 cannot be done even alone", words.Output, StringComparison.Ordinal);
        Assert.Empty(Schemas.Complaints("plan.json", json.Output));
    }

    [Theory]
    [InlineData("0")]
    [InlineData("1e9")]
    public async Task A_time_out_of_range_is_refused_by_its_option(string seconds)
    {
        CommandRun run = await CommandRun.Of("plan", RepositoryFiles.PathOf("demo/plans/monday.json"), "--seconds", seconds);
        Assert.Equal(2, run.Exit);
        Assert.Contains("--seconds: outside what is possible here; allowed: 0.1 to 86400", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_problem_is_listed_and_refused()
    {
        using TestFolder folder = new();
        string file = folder.Write(
            "bad.json",
            """
            { "format": "coilwright.jobs/1", "stations": [ { "name": "W" } ],
              "jobs": [ { "name": "B", "due": "1 d", "release": "2 d", "steps": [
                { "name": "wind", "on": [ { "station": "V", "time": "0 s" } ] } ] } ] }
            """
        );
        CommandRun run = await CommandRun.Of("plan", file);
        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.Contains("3 problems", run.Error, StringComparison.Ordinal);
    }
}
