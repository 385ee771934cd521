using Coilwright.Application.Comparisons;
using Coilwright.Application.Forecasts;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Circuits;

namespace Coilwright.Application.Tests.Comparisons;

public sealed class CompareRecipesTests
{
    private const string Load = """{ "format": "coilwright.load/1", "cable": { "capacitance": "500 pF" } }""";

    private static readonly RevisionRecord[] s_recipes = [Revision("harbour-bridge"), Revision("sandbar-wide")];

    [Fact]
    public void Each_design_is_computed_on_each_load_that_was_ticked_by_its_key()
    {
        CompareRecipes compare = new(new ComparedDesigns(new SolvedDesigns()));
        CompareQuestion asked = new(
            [s_recipes[1].RecipeId, null, s_recipes[0].RecipeId],
            2,
            Load,
            ["long-cable", "no such load"],
            true,
            ""
        );

        RecipeComparison found = compare.Compare(asked, s_recipes, KnownParts.None);

        Assert.Empty(found.Problems);
        Assert.Equal([$"{s_recipes[0].RecipeName} A", $"{s_recipes[1].RecipeName} A"], found.Designs.Select(design => design.Name));
        Assert.Equal(
            ["this load", "this load", "unloaded", "unloaded", "Long cable", "Long cable"],
            found.Curves.Select(curve => curve.LoadName)
        );
        Assert.Equal(500e-12, found.Curves[0].Load.CableCapacitanceF, 1e-18);
        Assert.NotEmpty(found.RecipeDifferences);
    }

    [Fact]
    public void What_was_solved_for_one_page_is_not_shared_with_another_host()
    {
        Recipe recipe = RecipeReader.Read(s_recipes[0].Json).Value!;
        SolvedDesigns one = new(),
            other = new();

        Assert.Same(one.Of(recipe), one.Of(recipe));
        Assert.NotSame(one.Of(recipe), other.Of(recipe));
    }

    [Fact]
    public void Mistakes_of_the_load_and_of_the_curve_are_told_together()
    {
        CompareRecipes compare = new(new ComparedDesigns(new SolvedDesigns()));
        CompareQuestion asked = new([s_recipes[0].RecipeId], 0, """{ "format": "coilwright.load/1", "cable": 7 }""", [], false, "no table");

        RecipeComparison found = compare.Compare(asked, s_recipes, KnownParts.None);

        Assert.Empty(found.Curves);
        Assert.Contains(found.Problems, problem => problem.Field.StartsWith("load.cable", StringComparison.Ordinal));
        Assert.Contains(found.Problems, problem => problem.Field.StartsWith("measured curve, ", StringComparison.Ordinal));
    }

    [Fact]
    public void The_player_s_load_is_known_without_its_name() => Assert.Contains(UsualLoad.Player, UsualLoad.All);

    private static RevisionRecord Revision(string name)
    {
        string json = File.ReadAllText(Path.Combine(DemoShop.Root, "demo", "recipes", name + ".json"));
        return new RevisionRecord(
            Guid.NewGuid(),
            RecipeReader.Read(json).Value!.Name,
            1,
            json,
            RevisionState.Released,
            "",
            "Joss",
            DateTimeOffset.UnixEpoch
        );
    }
}
