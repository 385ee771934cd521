using System.Text.Json.Nodes;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Circuits;
using Coilwright.Workshop.Recipes.Starting;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Tests.Winding;

namespace Coilwright.Workshop.Tests.Recipes;

/// <summary>Whoever begins from a shape begins from a recipe that is right as it stands.</summary>
public sealed class StartingRecipeTests
{
    private static CancellationToken Cancel => WorkingShop.Cancel;

    public static TheoryData<string> Keys => [.. StartingRecipes.All.Select(one => one.Key)];

    [Fact]
    public void There_are_nine_each_with_a_name_of_its_own_and_no_source_claimed()
    {
        Assert.Equal(9, StartingRecipes.All.Count);
        Assert.Equal(9, StartingRecipes.All.Select(one => one.Title).Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.All(StartingRecipes.All, one => Assert.Contains("common practice, no source", one.Recipe.Notes, StringComparison.Ordinal));
        Assert.All(StartingRecipes.All, one => Assert.Same(one, StartingRecipes.Of(JsonNode.Parse(one.Json)!)));
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void Each_reads_as_a_file_without_a_problem_and_may_be_released(string key)
    {
        StartingRecipe shape = StartingRecipes.Find(key)!;
        Assert.Empty(RecipeReader.ReadFile(shape.Json).Problems);
        Assert.Empty(ForecastRule.Check(shape.Recipe));
        Assert.Empty(BeforeWindingOf(shape));
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void Each_forecasts_a_peak_and_its_winding_fits_with_all_its_uncertainty(string key)
    {
        PickupModel model = RecipeModelBuilder.ToModel(StartingRecipes.Find(key)!.Recipe);
        Prediction forecast = Forecaster.Predict(model, UsualLoad.All[0].Load, cancel: Cancel);
        Assert.DoesNotContain(forecast.Warnings, warning => warning.MeansItDoesNotFit);
        Assert.All(forecast.Warnings, warning => Assert.Equal("magnets", warning.Field)); // how well the loss of bars is known
        double peakHz = forecast.Pickup.LoadedResonance!.Frequency.Value;
        Assert.InRange(peakHz, 800, 20_000);
        Assert.All(forecast.Coils.Zip(model.Coils), pair =>
        {
            Assert.True(pair.First.Build.Estimate.High < pair.Second.Bobbin.MaxBuildM, $"{key}: {pair.First.Name} may touch");
            Assert.InRange(pair.First.Fill!.Value, 0.2, 0.7);
        });
    }

    [Fact]
    public async Task A_shape_becomes_a_draft_of_its_own_name_once_however_often_it_is_sent()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        NewRecipe begun = new(shop.Book, shop.Records.Recipes);
        Guid id = Guid.NewGuid();
        RecipeOutcome first = await begun.FromShapeAsync(id, "blade", " Skerry ", "Joss", Cancel),
            again = await begun.FromShapeAsync(id, "blade", "Skerry", "Joss", Cancel);
        Assert.Empty(first.Problems);
        Assert.Equal(("Skerry", RevisionState.Draft, 1), (first.Revision!.RecipeName, first.Revision.State, first.Revision.Number));
        Assert.Equal(first.Revision, again.Revision);
        Assert.Single(await shop.Records.Recipes.RevisionsAsync(id, Cancel));

        Assert.Equal("name", Assert.Single((await begun.FromShapeAsync(Guid.NewGuid(), "blade", "skerry", "", Cancel)).Problems).Field);
        Assert.Equal("name", Assert.Single((await begun.FromShapeAsync(Guid.NewGuid(), "blade", " ", "", Cancel)).Problems).Field);
        Assert.Equal("shape", Assert.Single((await begun.FromShapeAsync(Guid.NewGuid(), "round", "Cairn", "", Cancel)).Problems).Field);
    }

    [Fact]
    public async Task A_copy_has_everything_of_the_newest_revision_but_the_name_and_leaves_it_alone()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        RevisionRecord original = await shop.ReleasedAsync(revisions: 2);
        NewRecipe begun = new(shop.Book, shop.Records.Recipes);
        RecipeOutcome copy = await begun.FromCopyAsync(Guid.NewGuid(), original.RecipeId, "Harbour neck", "Mara", Cancel);
        Assert.Empty(copy.Problems);
        Assert.Equal((1, "A", RevisionState.Draft), (copy.Revision!.Number, copy.Revision.Letter, copy.Revision.State));
        JsonNode theirs = JsonNode.Parse(copy.Revision.Json)!,
            ours = JsonNode.Parse(original.Json)!;
        ours["name"] = "Harbour neck";
        Assert.True(JsonNode.DeepEquals(ours, theirs));
        Assert.Equal(2, (await shop.Records.Recipes.RevisionsAsync(original.RecipeId, Cancel)).Count);
        Assert.Equal("copy", Assert.Single((await begun.FromCopyAsync(Guid.NewGuid(), Guid.NewGuid(), "X", "", Cancel)).Problems).Field);
    }

    private static IReadOnlyList<Problem> BeforeWindingOf(StartingRecipe shape) =>
        Workshop.Batches.BeforeWinding.Warnings(
            new RevisionRecord(Guid.NewGuid(), shape.Title, 1, shape.Json, RevisionState.Released, "", "", DateTimeOffset.UnixEpoch),
            shape.Recipe,
            KnownParts.None
        );
}
