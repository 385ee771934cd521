using System.Text.Json;
using Coilwright.Analysis.Solving;
using Coilwright.Formats.Forecasts;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Solving;

namespace Coilwright.Workshop.Tests.Solving;

/// <summary>A search that is stopped answers from what it has looked at.</summary>
public sealed class StoppedSearchTests
{
    [Fact]
    public void What_was_found_before_the_stop_is_told_and_marked()
    {
        Recipe recipe = RecipeReader.Read(File.ReadAllText(RepositoryPath.Of("demo/recipes/sandbar-wide.json"))).Value!;
        List<Problem> problems = [];
        LoadCircuit load = new();
        Objective want = ObjectiveParser.Read(
            "want",
            "dcResistance=6.2kΩ",
            RecipeSolver.Known(recipe, load, TestContext.Current.CancellationToken),
            problems
        )!;
        SolveQuestion question = new()
        {
            Wants = [want],
            Vary = DesignVariableParser.Read("vary", "turns,windingHeight,coreWidth", problems),
            Load = load,
            Threads = 1,
        };
        Assert.Empty(problems);

        using CancellationTokenSource stop = new();
        Solutions answer = RecipeSolver.Solve(recipe, question, new StopAfterFirst(stop), stop.Token).Value!;

        Assert.True(answer.Stopped);
        Assert.InRange(answer.Ranked.Count, 1, 3);
        using JsonDocument json = JsonDocument.Parse(SolutionsJson.Write(answer));
        Assert.True(json.RootElement.GetProperty("stopped").GetBoolean());
    }

    [Fact]
    public void Stopped_before_anything_was_found_there_is_no_answer()
    {
        Recipe recipe = RecipeReader.Read(File.ReadAllText(RepositoryPath.Of("demo/recipes/sandbar-wide.json"))).Value!;
        List<Problem> problems = [];
        LoadCircuit load = new();
        Objective want = ObjectiveParser.Read(
            "want",
            "dcResistance=6.2kΩ",
            RecipeSolver.Known(recipe, load, TestContext.Current.CancellationToken),
            problems
        )!;
        SolveQuestion question = new()
        {
            Wants = [want],
            Vary = DesignVariableParser.Read("vary", "turns", problems),
            Load = load,
        };
        Assert.ThrowsAny<OperationCanceledException>(() =>
            RecipeSolver.Solve(recipe, question, cancel: new CancellationToken(canceled: true))
        );
    }

    private sealed class StopAfterFirst(CancellationTokenSource stop) : IProgress<double>
    {
        public void Report(double value) => stop.Cancel();
    }
}
