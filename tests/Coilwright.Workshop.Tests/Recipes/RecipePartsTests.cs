using System.Text.Json.Nodes;
using Coilwright.Analysis.Forecasts;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Parts;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Tests.Recipes;

/// <summary>Parts that are added to a recipe fit it; parts that are taken away are gone, and nothing else.</summary>
public sealed class RecipePartsTests
{
    public static TheoryData<string, string> Fitting()
    {
        TheoryData<string, string> all = [];
        foreach (string file in (string[])["harbour-bridge", "breakwater-twin", "keel-blade", "sandbar-wide", "lantern-seven"])
        {
            foreach (string part in RecipePart.All.Where(part => part != RecipePart.Poles).Select(part => part.Key))
            {
                all.Add(file, part);
            }
        }

        return all;
    }

    [Theory]
    [MemberData(nameof(Fitting))]
    public void A_part_fits_the_recipe_that_it_is_added_to_and_is_taken_away_again(string file, string key)
    {
        string before = DemoFiles.Recipe(file);
        RecipePart part = RecipePart.Find(key)!;
        (string json, IReadOnlyList<Problem> problems) = RecipeParts.Add(before, part, 0);
        Assert.Empty(problems);
        ReadOutcome<Recipe> read = RecipeReader.Read(json);
        Assert.True(read.Ok, string.Join("; ", read.Problems.Select(problem => $"{problem.Field}: {problem.Message}")));
        Assert.NotNull(ForecastRule.Try(() => Forecaster.Predict(RecipeModelBuilder.ToModel(read.Value!), null)).Value);
        Assert.Contains("added", RecipeParts.Difference(JsonNode.Parse(before)!, JsonNode.Parse(json)!), StringComparison.Ordinal);
        if (part == RecipePart.Step)
        {
            return; // it brings the usual ones along
        }

        int last = JsonNode.Parse(json)![part.List]!.AsArray().Count - 1;
        (string after, IReadOnlyList<Problem> refused) = RecipeParts.TakeAway(json, part.List, last);
        Assert.Empty(refused);
        Assert.Equal("", RecipeParts.Difference(JsonNode.Parse(before)!, JsonNode.Parse(after)!));
    }

    [Fact]
    public void Poles_are_added_to_a_coil_without_any_as_long_as_it_is_high()
    {
        (string bare, _) = RecipeParts.TakeAway(DemoFiles.Recipe("harbour-bridge"), "coils[0].poles", 0);
        (string json, IReadOnlyList<Problem> problems) = RecipeParts.Add(bare, RecipePart.Poles, 0);
        Assert.Empty(problems);
        RecipePole pole = Assert.Single(RecipeReader.Read(json).Value!.Coils[0].Poles);
        Assert.Equal((6, 17e-3), (pole.PositionsM.Count, Math.Round(pole.Length.Si, 6)));
    }

    [Fact]
    public void The_first_step_of_its_own_keeps_the_usual_ones_and_their_holds()
    {
        string before = DemoFiles.Recipe("harbour-bridge");
        IReadOnlyList<StepPlan> usual = RecipeSteps.Of(RecipeReader.Read(before).Value!);
        (string json, _) = RecipeParts.Add(before, RecipePart.Step, 0);
        IReadOnlyList<StepPlan> steps = RecipeSteps.Of(RecipeReader.Read(json).Value!);
        Assert.Equal(usual.Count + 1, steps.Count);
        Assert.Equal(usual.SkipLast(2).Select(Told), steps.SkipLast(3).Select(Told));
        Assert.Equal("inspection", steps[^3].Name);

        static (string, TimeSpan, TimeSpan?, TimeSpan, string) Told(StepPlan step) =>
            (step.Name, step.Least, step.Most, step.HoldAfter, step.HoldReason);
    }

    [Fact]
    public void The_last_coil_stays_and_a_part_that_is_not_there_is_told_in_words()
    {
        string json = DemoFiles.Recipe("harbour-bridge");
        Assert.Contains(
            "at least one coil",
            Assert.Single(RecipeParts.TakeAway(json, "coils", 0).Problems).Message,
            StringComparison.Ordinal
        );
        foreach ((string list, int place) in ((string, int)[])[("magnets", 0), ("coils[3].poles", 0), ("targets", 0), ("coils", 7)])
        {
            (string same, IReadOnlyList<Problem> problems) = RecipeParts.TakeAway(json, list, place);
            Assert.Contains("no more", Assert.Single(problems).Message, StringComparison.Ordinal);
            Assert.Equal(json, same);
        }
    }

    [Fact]
    public void Nothing_is_fitted_to_a_recipe_with_mistakes_or_beyond_what_a_list_holds()
    {
        string wrong = DemoFiles.Recipe("harbour-bridge").Replace("\"turns\": 8000", "\"turns\": \"many\"", StringComparison.Ordinal);
        Assert.Contains(
            "mend its mistakes",
            Assert.Single(RecipeParts.Add(wrong, RecipePart.Cover, 0).Problems).Message,
            StringComparison.Ordinal
        );
        string json = DemoFiles.Recipe("harbour-bridge");
        for (int plate = 0; plate < RecipePart.Plate.Most; plate++)
        {
            json = RecipeParts.Add(json, RecipePart.Plate, 0).Json;
        }

        Assert.Equal("at most 12", Assert.Single(RecipeParts.Add(json, RecipePart.Plate, 0).Problems).Allowed);
    }
}
