using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Tests.Winding;

/// <summary>Two benches never give two coils one tag unasked; a tag that a person types is that coil's, read once more.</summary>
public sealed class TakenTagTests
{
    private static CancellationToken Cancel => WorkingShop.Cancel;

    [Fact]
    public async Task A_proposed_tag_that_another_bench_has_used_is_asked_about_and_nothing_is_stored()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await shop.KeptAsync(Proposed(batch, "C-001", "6.20 k"));

        CoilEntryOutcome second = await shop.Room.RecordCoilAsync(Proposed(batch, "C-001", "6.25 k"), Cancel);
        Problem taken = Assert.Single(second.Problems);
        Assert.Equal(("tag", "C-001"), (taken.Field, taken.Understood));
        Assert.Equal(["C-002"], taken.Readings);
        Assert.Single(await shop.ReadingsAsync(batch));

        await shop.KeptAsync(Proposed(batch, "C-002", "6.25 k"));
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.21 k", "20 °C")); // typed: the same coil, read again
        Assert.Equal(["C-001", "C-002"], (await shop.StatusAsync(batch)).Coils.Select(coil => coil.Tag).Order());
        Assert.Equal(3, (await shop.ReadingsAsync(batch)).Count);
    }

    [Fact]
    public async Task Sent_twice_it_is_the_same_entry_and_an_undone_tag_is_free_again()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilEntry entry = Proposed(batch, "C-001", "6.20 k");
        await shop.KeptAsync(entry);
        Assert.True((await shop.Room.RecordCoilAsync(entry, Cancel)).Duplicate);
        Assert.Empty((await shop.Room.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel)).Problems);
        await shop.KeptAsync(Proposed(batch, "C-001", "6.22 k"));
    }

    [Fact]
    public async Task Eight_benches_at_one_moment_get_eight_tags()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilEntryOutcome[] first = await Task.WhenAll(
            Enumerable.Range(0, 8).Select(_ => shop.Room.RecordCoilAsync(Proposed(batch, "C-001", "6.20 k"), Cancel))
        );

        Assert.Single(first, outcome => outcome.Problems.Count == 0);
        Assert.All(first.Where(outcome => outcome.Problems.Count > 0), outcome =>
            Assert.Equal(["C-002"], Assert.Single(outcome.Problems).Readings)
        );
        Assert.Single(await shop.ReadingsAsync(batch));
    }

    private static CoilEntry Proposed(BatchRecord batch, string tag, string ohms) =>
        WorkingShop.Entry(batch, tag, ohms, "20 °C") with
        {
            Proposed = true,
        };
}
