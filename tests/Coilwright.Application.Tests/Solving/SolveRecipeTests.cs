using Coilwright.Application.Solving;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Circuits;
using Coilwright.Workshop.Solving;

namespace Coilwright.Application.Tests.Solving;

public sealed class SolveRecipeTests
{
    private static readonly Recipe s_recipe = RecipeReader
        .Read(File.ReadAllText(Path.Combine(DemoShop.Root, "demo", "recipes", "harbour-bridge.json")))
        .Value!;

    [Theory]
    [InlineData("--", "--want", "--vary", "--points")]
    [InlineData("", "want", "vary", "points")]
    public void What_is_wrong_is_told_at_once_by_the_names_that_the_person_typed(string mark, params string[] fields)
    {
        SolveRequest asked = new([], null, UsualLoad.Player.Load) { Points = 1, Mark = mark };

        ReadOutcome<Solutions> outcome = new SolveRecipe().Solve(s_recipe, asked, progress: null, TestContext.Current.CancellationToken);

        Assert.Null(outcome.Value);
        Assert.Equal(fields, outcome.Problems.Select(problem => problem.Field));
        Assert.Contains($"{fields[0]} dcResistance", outcome.Problems[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_number_of_recipes_on_the_front_is_the_one_asked_for()
    {
        SolveRequest asked = new(["dcResistance=6.5kΩ"], "turns=4000..9000", UsualLoad.Player.Load)
        {
            Points = 3,
            Front = "output,-wireMass",
        };

        ReadOutcome<Solutions> outcome = new SolveRecipe().Solve(s_recipe, asked, progress: null, TestContext.Current.CancellationToken);

        Assert.InRange(outcome.Value!.Front.Count, 1, 3);
    }
}
