using Coilwright.Physics;
using Coilwright.Physics.Winding;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Recipes;

public class RecipeReaderTests
{
    /// <summary>Every demo recipe and load is read without a problem.</summary>
    [Theory]
    [MemberData(nameof(DemoFiles.Recipes), MemberType = typeof(DemoFiles))]
    public void Demo_recipes_are_read_without_a_problem(string name)
    {
        ReadOutcome<Recipe> outcome = RecipeReader.Read(DemoFiles.Recipe(name));
        Assert.True(outcome.Ok, Told(outcome.Problems));
        Assert.NotEmpty(outcome.Value!.Targets);
    }

    [Fact]
    public void The_example_is_understood_field_by_field()
    {
        string json = DemoFiles.Recipe("harbour-bridge");
        Recipe recipe = RecipeReader.Read(json).Value!;
        Assert.Equal("Harbour bridge", recipe.Name);
        Assert.Equal(json, recipe.Json);
        RecipeCoil coil = Assert.Single(recipe.Coils);
        Assert.Equal(0.0062, coil.Bobbin.CoreWidth.Si);
        Assert.Equal(0.0031, coil.Bobbin.EndRadius.Si);
        Assert.Equal(8000, coil.Winding.Turns);
        Assert.Equal(WindingDirection.CounterClockwise, coil.Winding.Direction);
        Assert.Equal(0.1372931, coil.Winding.Tension!.Value.Si, 1e-12);
        RecipePole pole = Assert.Single(coil.Poles);
        Assert.Equal([-0.026, -0.0156, -0.0052, 0.0052, 0.0156, 0.026], pole.PositionsM.Select(x => Math.Round(x, 9)));
        Assert.Equal(6, pole.TopsM.Count);
        Assert.Equal(1, pole.NorthUp);
        Target ohms = recipe.Targets["dcResistance"];
        Assert.Equal(0.04, ohms.Tolerance, 1e-15);
        Assert.Equal(1000, recipe.Targets["inductance"].AtHz);
        Assert.Equal(Connection.Series, recipe.Connection);
        Assert.Equal(["demo", "narrow tall single coil"], recipe.Tags);
    }

    [Fact]
    public void The_end_radius_is_half_the_width_unless_given()
    {
        Recipe recipe = Read(DemoFiles.Recipe("harbour-bridge").Replace("\"endRadius\": \"3.1 mm\", ", "", StringComparison.Ordinal));
        Assert.Equal(0.0031, recipe.Coils[0].Bobbin.EndRadius.Si);
    }

    [Fact]
    public void A_recipe_with_ten_mistakes_lists_exactly_those_ten()
    {
        string json = DemoFiles
            .Recipe("harbour-bridge")
            .Replace("\"windingHeight\": \"11 mm\"", "\"windingHeight\": 11", StringComparison.Ordinal)
            .Replace("\"maxBuild\": \"4.3 mm\"", "\"maxBuild\": \"4.3 stone\"", StringComparison.Ordinal)
            .Replace("\"endRadius\": \"3.1 mm\"", "\"endRadius\": \"3.9 mm\"", StringComparison.Ordinal)
            .Replace("\"AWG 42\"", "\"AWG 420\"", StringComparison.Ordinal)
            .Replace("\"plain-enamel\"", "\"plain-enamle\"", StringComparison.Ordinal)
            .Replace("\"turns\": 8000", "\"turns\": 800000", StringComparison.Ordinal)
            .Replace("\"direction\"", "\"dirrection\"", StringComparison.Ordinal)
            .Replace("\"diameter\": \"4.75 mm\"", "\"diameter\": \"7 mm\"", StringComparison.Ordinal)
            .Replace("\"clearance\": \"2.5 mm\"", "\"clearance\": \"-2.5 mm\"", StringComparison.Ordinal)
            .Replace("\"tolerance\": \"6 %\", ", "", StringComparison.Ordinal);
        ReadOutcome<Recipe> outcome = RecipeReader.Read(json);
        Assert.Null(outcome.Value);
        string[] expected =
        [
            "coils[0].bobbin.endRadius",
            "coils[0].bobbin.maxBuild",
            "coils[0].bobbin.windingHeight",
            "coils[0].poles[0].diameter",
            "coils[0].winding.dirrection",
            "coils[0].winding.turns",
            "coils[0].wire.gauge",
            "coils[0].wire.insulation",
            "strings.clearance",
            "targets.inductance.tolerance",
        ];
        Assert.Equal(expected, outcome.Problems.Select(problem => problem.Field).Order(StringComparer.Ordinal));
        Assert.All(outcome.Problems.Where(problem => !problem.Field.EndsWith("tolerance", StringComparison.Ordinal)), problem =>
            Assert.False(string.IsNullOrEmpty(problem.Understood))
        );
        Assert.All(outcome.Problems.Where(problem => !problem.Field.EndsWith("tolerance", StringComparison.Ordinal)), problem =>
            Assert.False(string.IsNullOrEmpty(problem.Allowed))
        );
    }

    [Theory]
    [InlineData("\"turns\"", "\"turn\"", "coils[0].winding.turn", "\"turns\"")]
    [InlineData("\"pitch\"", "\"pich\"", "coils[0].winding.pich", "\"pitch\"")]
    [InlineData("\"coreLength\"", "\"corelength\"", "coils[0].bobbin.corelength", "\"coreLength\"")]
    [InlineData("\"magnetised\"", "\"magnetized\"", "coils[0].poles[0].magnetized", "\"magnetised\"")]
    [InlineData("\"scaleLength\"", "\"scale_length\"", "strings.scale_length", "\"scaleLength\"")]
    [InlineData("\"potting\"", "\"poting\"", "poting", "\"potting\"")]
    [InlineData("\"nominal\": \"2.5 H\"", "\"nominl\": \"2.5 H\"", "targets.inductance.nominl", "\"nominal\"")]
    public void An_unknown_field_is_refused_with_the_nearest_name(string name, string mistyped, string path, string nearest)
    {
        ReadOutcome<Recipe> outcome = RecipeReader.Read(
            DemoFiles.Recipe("harbour-bridge").Replace(name, mistyped, StringComparison.Ordinal)
        );
        Problem problem = Assert.Single(outcome.Problems);
        Assert.Equal(path, problem.Field);
        Assert.Contains(nearest, problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"format\": \"coilwright.recipe/1\"", "\"format\": \"coilwright.recipe/2\"", "format", "newer")]
    [InlineData("\"format\": \"coilwright.recipe/1\"", "\"format\": \"coilwright.load/1\"", "format", "another kind")]
    [InlineData("\"turns\": 8000", "\"turns\": 8000, \"turns\": 8001", "coils[0].winding.turns", "twice")]
    [InlineData("\"turns\": 8000", "\"turns\": \"8000\"", "coils[0].winding.turns", "not a number")]
    [InlineData("\"turns\": 8000", "\"turns\": 0", "coils[0].winding.turns", "outside")]
    [InlineData("\"coreWidth\": \"6.2 mm\"", "\"coreWidth\": \"0 mm\"", "coils[0].bobbin.coreWidth", "outside")]
    [InlineData("\"spacing\": \"10.4 mm\", \"top\"", "\"spacing\": \"4.7 mm\", \"top\"", "coils[0].poles[0]", "into each other")]
    [InlineData("\"spacing\": \"10.4 mm\", \"top\"", "\"spacing\": \"12 mm\", \"top\"", "coils[0].poles[0].positions", "into the winding")]
    [InlineData("\"top\": \"9 mm\"", "\"tops\": [\"9 mm\", \"8 mm\"]", "coils[0].poles[0].tops", "as many tops")]
    [InlineData("\"material\": \"alnico-5\"", "\"material\": \"alnico5\"", "coils[0].poles[0].material", "\"alnico-5\"")]
    [InlineData(
        "\"material\": \"alnico-5\"",
        "\"material\": \"alnico-5\", \"relativePermeability\": 0.5",
        "coils[0].poles[0].relativePermeability",
        "outside"
    )]
    [InlineData("\"position\": { \"y\": \"0 mm\" }", "\"position\": [0, 0]", "coils[0].position", "group of fields")]
    [InlineData("\"connection\": \"series\"", "\"connection\": \"serial\"", "connection", "\"series\"")]
    [InlineData(
        "\"magnets\": []",
        "\"magnets\": [ { \"shape\": \"bar\", \"material\": \"alnico-5\", \"size\": [\"60 mm\", \"6 mm\", \"3 mm\"], \"centre\": [\"0 "
            + "mm\", \"0 mm\", \"-12 mm\"] } ]",
        "magnets[0].magnetised",
        "missing"
    )]
    [InlineData(
        "\"magnets\": []",
        "\"magnets\": [ { \"shape\": \"bar\", \"material\": \"alnico-5\", \"size\": [\"60 mm\", \"6 mm\", \"3 mm\"], \"centre\": [\"0 "
            + "mm\", \"0 mm\", \"-7 mm\"], \"magnetised\": \"y\" } ]",
        "magnets[0]",
        "same place"
    )]
    [InlineData(
        "\"magnets\": []",
        "\"magnets\": [ { \"shape\": \"bar\", \"material\": \"alnico-5\", \"size\": [\"60 mm\", \"6 mm\", \"3 mm\"], \"centre\": [\"0 "
            + "mm\", \"5.5 mm\", \"0 mm\"], \"magnetised\": \"y\" } ]",
        "magnets[0]",
        "in the winding"
    )]
    [InlineData(
        "\"metalwork\": []",
        "\"metalwork\": [ { \"shape\": \"cover\", \"material\": \"nickel-silver\", \"thickness\": \"0.5 mm\", \"length\": \"80 mm\", "
            + "\"width\": \"20 mm\", \"top\": \"12 mm\", \"bottom\": \"-6 mm\" } ]",
        "metalwork[0].top",
        "strings"
    )]
    public void One_mistake_gives_one_problem_at_its_place(string right, string wrong, string path, string message)
    {
        string json = DemoFiles.Recipe("harbour-bridge");
        Assert.Contains(right, json, StringComparison.Ordinal);
        ReadOutcome<Recipe> outcome = RecipeReader.Read(json.Replace(right, wrong, StringComparison.Ordinal));
        Problem problem = Assert.Single(outcome.Problems);
        Assert.Equal(path, problem.Field);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_broken_file_tells_line_and_place()
    {
        Problem problem = Assert.Single(RecipeReader.Read("{\n  \"format\": \"coilwright.recipe/1\",\n  \"name\": oops }").Problems);
        Assert.Contains("line 3, place 11", problem.Message, StringComparison.Ordinal);
        Assert.Single(RecipeReader.Read("").Problems);
        Assert.Single(RecipeReader.Read("[]").Problems);
        Assert.Single(RecipeReader.Read(new string('[', 100_000)).Problems);
        Assert.Single(RecipeReader.Read("{\"name\": \"\\ud800\"}").Problems);
    }

    [Fact]
    public void Notes_and_tags_of_any_shape_are_the_shops_own()
    {
        string json = DemoFiles
            .Recipe("harbour-bridge")
            .Replace("\"magnets\": []", "\"magnets\": [], \"notes\": { \"colour\": [\"slate\", 3] }", StringComparison.Ordinal);
        Assert.Contains("slate", Read(json).Json, StringComparison.Ordinal);
    }

    private static Recipe Read(string json)
    {
        ReadOutcome<Recipe> outcome = RecipeReader.Read(json);
        Assert.True(outcome.Ok, Told(outcome.Problems));
        return outcome.Value!;
    }

    private static string Told(IEnumerable<Problem> problems) => string.Join("\n", problems);
}
