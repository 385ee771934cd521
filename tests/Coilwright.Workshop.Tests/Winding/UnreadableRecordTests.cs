using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Stock;

namespace Coilwright.Workshop.Tests.Winding;

/// <summary>Records that an earlier program let through and this one cannot show, planted past the checks.</summary>
public sealed class UnreadableRecordTests
{
    private static CancellationToken Cancel => WorkingShop.Cancel;

    [Fact]
    public async Task A_batch_on_a_recipe_that_is_refused_today_stands_in_the_list_with_what_to_do()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord good = await shop.BatchAsync(),
            bad = await PlantedAsync(shop);

        IReadOnlyList<RecordStatus<BatchStatus>> batches = await shop.Room.StatusesAsync(Cancel);
        UnreadableRecord fault = Assert.Single(batches.Unreadable());
        Assert.Equal(good.Name, Assert.Single(batches.Readable()).Batch.Name);
        Assert.Equal("Batch PX", fault.Name);
        Assert.Contains(
            "does not pass the checks of a recipe any more: coil 1, winding, turns, stored as 0: outside what is possible "
                + "here (allowed: 1 to 100000)",
            fault.Why,
            StringComparison.Ordinal
        );
        Assert.Contains("open the recipe, mend the value, save it as the next revision", fault.ToDo, StringComparison.Ordinal);
        Assert.Equal(
            fault,
            Assert.Single((await shop.Run.StatusesAsync(await shop.Records.Batches.AllAsync(Cancel), Cancel)).Unreadable())
        );
        UnreadableRecordException alone = await Assert.ThrowsAsync<UnreadableRecordException>(() => shop.Room.StatusAsync(bad.Id, Cancel));
        Assert.Equal(fault.ToDo, alone.ToDo);
    }

    [Fact]
    public async Task A_spool_says_that_the_coils_of_such_a_batch_are_not_taken_off()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        await PlantedAsync(shop);
        Assert.Empty(
            await shop.Stock.TakeInAsync(
                new SpoolRecord
                {
                    Id = Guid.NewGuid(),
                    Label = "0117",
                    Gauge = "AWG 42",
                    Insulation = "plain-enamel",
                    Build = "single",
                    TimeUtc = shop.Clock.GetUtcNow(),
                },
                "500 g",
                "100 g",
                Cancel
            )
        );
        Assert.Contains(
            "the coils of PX are not taken off, since that batch cannot be shown",
            Assert.Single(await shop.Stock.ShelfAsync(Cancel)).RemainingWords,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Whatever_a_record_throws_is_a_reason_and_a_file_that_fails_is_not()
    {
        RecordStatus<string> fails = await RecordStatus.ReadAsync<string>("Piece 1", () =>
            throw new ArgumentOutOfRangeException("column", -32321.9, "column must lie in [0, 1].")
        );
        Assert.Null(fails.Value);
        Assert.StartsWith("this program fails on it (ArgumentOutOfRangeException", fails.Fault!.Why, StringComparison.Ordinal);
        await Assert.ThrowsAsync<IOException>(() => RecordStatus.ReadAsync<string>("Piece 1", () => throw new IOException("disk full")));
    }

    [Fact]
    public async Task A_recipe_that_cannot_be_forecast_is_not_released()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        Guid id = Guid.NewGuid();
        Assert.Empty((await shop.Book.SaveAsync(id, WorkingShop.Harbour(), "", "Joss", 0, Cancel)).Problems);
        RecipeService book = new(shop.Records.Recipes, shop.Clock, _ =>
            throw new ArgumentOutOfRangeException("column", -32321.9, "column must lie in [0, 1].")
        );
        Problem refused = Assert.Single((await book.ReleaseAsync(id, 1, "Joss", Cancel)).Problems);
        Assert.StartsWith("this recipe cannot be forecast", refused.Message, StringComparison.Ordinal);
        Assert.Equal(RevisionState.Draft, (await shop.Records.Recipes.FindRevisionAsync(id, 1, Cancel))!.State);
        Assert.Empty((await shop.Book.ReleaseAsync(id, 1, "Joss", Cancel)).Problems);
    }

    [Fact]
    public async Task No_batch_is_begun_on_a_released_recipe_that_today_is_refused()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord bad = await PlantedAsync(shop);
        Assert.Contains(await shop.Room.BeginBatchAsync(bad with { Id = Guid.NewGuid(), Name = "PY" }, Cancel), problem =>
            problem.Field == "coils[0].winding.turns"
        );
    }

    /// <summary>A batch on a released recipe of no turns, written past the checks.</summary>
    private static async Task<BatchRecord> PlantedAsync(WorkingShop shop)
    {
        RevisionRecord revision = new(
            Guid.NewGuid(),
            "Long screw",
            1,
            WorkingShop.Harbour(turns: 0, name: "Long screw"),
            RevisionState.Released,
            "",
            "Joss",
            shop.Clock.GetUtcNow()
        );
        Assert.True(await shop.Records.Recipes.SaveRevisionAsync(revision, 0, Cancel));
        BatchRecord batch = new(Guid.NewGuid(), "PX", revision.RecipeId, 1, "main", 10, "P-", "0117", "", "Mara", shop.Clock.GetUtcNow());
        await shop.Records.Batches.AddAsync(batch, Cancel);
        return batch;
    }
}
