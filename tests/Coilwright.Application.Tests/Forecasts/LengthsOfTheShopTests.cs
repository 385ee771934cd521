using System.Text.Json.Nodes;
using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Quantities;
using Coilwright.Application.Comparisons;
using Coilwright.Application.Forecasts;
using Coilwright.Application.Shops;
using Coilwright.Physics;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Application.Tests.Forecasts;

/// <summary>A shop that says how well it knows its lengths gets one interval for a recipe, wherever it asks.</summary>
public sealed class LengthsOfTheShopTests
{
    private const string Rules = """{ "format": "coilwright.rules/1", "sizes": { "common": "0.2 mm", "clearance": "0.3 mm" } }""";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Recipe_comparison_plan_and_limits_of_a_batch_agree()
    {
        string folder = Directory.CreateTempSubdirectory("coilwright-lengths-").FullName;
        await using (OpenedShop shop = await OpenedShop.CreateAsync(Path.Combine(folder, "shop.db"), "Quay", TimeProvider.System, Cancel))
        {
            RevisionRecord revision = await ReleasedAsync(shop);
            Estimate before = await PageAsync(shop, revision);
            double limitBefore = await LimitAsync(shop, revision, "B-1");
            Assert.Empty(await shop.Services.Pieces.Shelf.Rules.KeepAsync(Guid.NewGuid(), Rules, "Joss", Cancel));

            Estimate page = await PageAsync(shop, revision);
            // half of what these lengths add to this recipe's interval (4.9 %), so that rules without effect are seen
            Assert.True(page.High - page.Low > 1.02 * (before.High - before.Low), $"{page} is hardly wider than {before}");
            KnownParts parts = await shop.Services.Recipes.KnownPartsAsync(Cancel);
            ComparedDesign compared = shop.Use<ComparedDesigns>().Of(revision, parts).Design!;
            Assert.Equal(page, InductanceOf(compared.Solved!));
            Assert.Equal(page, CoilPlan.Of(revision, "main", parts).Forecast.Pickup.Inductance.Estimate);
            Assert.True(await LimitAsync(shop, revision, "B-2") > limitBefore * 1.001, "a new batch keeps the limits of old rules");
            Assert.Equal(limitBefore, await LimitAsync(shop, revision, "B-1"), 1e-12); // what was begun stays as it was begun
        }

        Directory.Delete(folder, recursive: true);
    }

    private static async Task<RevisionRecord> ReleasedAsync(OpenedShop shop)
    {
        string json = await File.ReadAllTextAsync(Path.Combine(DemoShop.Root, "demo", "recipes", "harbour-bridge.json"), Cancel);
        Guid id = Guid.NewGuid();
        JsonObject recipe = JsonNode.Parse(json)!.AsObject();
        recipe.Remove("targets"); // a coil without them is held against the forecast
        Assert.Empty((await shop.Services.Recipes.SaveAsync(id, recipe.ToJsonString(), "", "Joss", 0, Cancel)).Problems);
        return (await shop.Services.Recipes.ReleaseAsync(id, 1, "Joss", Cancel)).Revision!;
    }

    /// <summary>Inductance as the comparison states it.</summary>
    private static Estimate InductanceOf(SolvedPickup solved) =>
        PickupComparison.Between(solved, solved).Single(line => line.Name == QuantityKey.Inductance).First!.Value;

    /// <summary>Inductance as the recipe's page shows it, without a load.</summary>
    private static async Task<Estimate> PageAsync(OpenedShop shop, RevisionRecord revision) =>
        shop.Use<ForecastRecipe>()
            .Forecast(revision.Json, null, await shop.Services.Recipes.KnownPartsAsync(Cancel))
            .Prediction!.Pickup.Inductance.Estimate;

    /// <summary>Highest inductance that a coil of a batch may read; the batch begins when it is asked for first.</summary>
    private static async Task<double> LimitAsync(OpenedShop shop, RevisionRecord revision, string name)
    {
        BatchRecord? batch = (await shop.Services.Records.Batches.AllAsync(Cancel)).FirstOrDefault(one => one.Name == name);
        if (batch is null)
        {
            batch = new(Guid.NewGuid(), name, revision.RecipeId, 1, "main", 4, name + "-", "", "", "Mara", TimeProvider.System.GetUtcNow());
            Assert.Empty(await shop.Services.Winding.BeginBatchAsync(batch, Cancel));
        }

        return (await shop.Services.Winding.StatusAsync(batch.Id, Cancel))!.Limits.Inductance!.High;
    }
}
