using Coilwright.Browser.Tests.Ground;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>
/// A batch on a recipe that is refused today is shown with what is stored, and leads to the recipe; nothing is wider than the window.
/// </summary>
public sealed class UnreadablePagesTests(Chromium chromium)
{
    [Theory]
    [InlineData(810, 1080)]
    [InlineData(390, 844)]
    public async Task A_refused_recipe_and_its_batch_are_told_and_fit(int width, int height)
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        BatchRecord batch = await PlantAsync(shop);
        IPage page = await chromium.PageAsync(shop.Url, width, height);
        await page.GotoAsync("/recipes");
        await Expect(page.GetByRole(AriaRole.Row).Filter(new() { HasText = "Long screw" })).ToContainTextAsync("cannot be wound");
        await Expect(page.GetByRole(AriaRole.Listitem).Filter(new() { HasText = "Long screw, revision A" }))
            .ToContainTextAsync("stored as 0");
        await ScreenTests.CheckAsync(page, "recipes-refused", width);
        await page.GotoAsync($"/batches/{batch.Id}");
        await Expect(page.GetByRole(AriaRole.Row).Filter(new() { HasText = "C-001" })).ToContainTextAsync("6.21 k");
        await ScreenTests.CheckAsync(page, "batch-refused", width);
        await page.GetByRole(AriaRole.Link, new() { Name = "Open the recipe" }).ClickAsync();
        await Expect(page.GetByLabel("Turns", new() { Exact = true })).ToHaveValueAsync("0");
        await ScreenTests.CheckAsync(page, "recipe-refused", width);
    }

    /// <summary>A released recipe of no turns with a batch and a coil, written past the checks.</summary>
    private static async Task<BatchRecord> PlantAsync(HostedShop shop)
    {
        string json = (await File.ReadAllTextAsync(Ground.Demo.Recipe(Ground.Demo.TallSingleCoil)))
            .Replace("\"turns\": 8000", "\"turns\": 0", StringComparison.Ordinal)
            .Replace("Harbour bridge", "Long screw", StringComparison.Ordinal);
        RevisionRecord revision = new(Guid.NewGuid(), "Long screw", 1, json, RevisionState.Released, "", "Joss", shop.Clock.GetUtcNow());
        Assert.True(await shop.Services.Records.Recipes.SaveRevisionAsync(revision, 0, CancellationToken.None));
        BatchRecord batch = new(
            Guid.NewGuid(),
            "PX",
            revision.RecipeId,
            1,
            "main",
            4,
            "C-",
            "0117",
            "Winder 2",
            "Mara",
            shop.Clock.GetUtcNow()
        );
        await shop.Services.Records.Batches.AddAsync(batch, CancellationToken.None);
        ReadingRecord reading = new()
        {
            Id = Guid.NewGuid(),
            BatchId = batch.Id,
            Tag = "C-001",
            Quantity = "dcResistance",
            Typed = "6.21 k",
            Unit = "Ω",
            Si = 6210,
            TemperatureC = 23.5,
            Person = "Mara",
            TimeUtc = shop.Clock.GetUtcNow(),
        };
        await shop.Services.Records.Readings.AddAsync([reading], CancellationToken.None);
        return batch;
    }
}
