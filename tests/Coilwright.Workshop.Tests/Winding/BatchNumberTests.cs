using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;

namespace Coilwright.Workshop.Tests.Winding;

/// <summary>A batch ends at its number; more is said with a reason, and what waited on a tablet is kept and marked.</summary>
public sealed class BatchNumberTests
{
    private static readonly DateTimeOffset s_said = new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);

    private static CancellationToken Cancel => WorkingShop.Cancel;

    [Fact]
    public async Task At_its_number_a_batch_takes_no_more_coils_but_any_reading_of_its_own()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await FullAsync(shop);

        BatchStatus done = await shop.StatusAsync(batch);
        Assert.Equal((true, "3 of 3 done", null), (done.IsDone, done.CountWords, done.NextTag));
        foreach (string tag in (string[])["C-004", "C-031", "X-9"])
        {
            Problem problem = Assert.Single((await shop.Room.RecordCoilAsync(WorkingShop.Entry(batch, tag, "6.18 k"), Cancel)).Problems);
            Assert.Equal("tag", problem.Field);
            Assert.Contains("3 of 3 done", problem.Message, StringComparison.Ordinal);
            Assert.Contains("coilwright batch more H-12", problem.Allowed, StringComparison.Ordinal);
        }

        Assert.Equal(3, (await shop.ReadingsAsync(batch)).Count);
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-002", "6.181 k")); // read again
        Assert.Equal(
            "tag",
            Assert
                .Single(
                    await shop.Run.RecordEventAsync(BatchEventServiceTests.Said(batch, BatchEventKind.Begun) with { Tag = "" }, Cancel),
                    problem => problem.Field == "tag"
                )
                .Field
        );
    }

    [Fact]
    public async Task A_tag_far_beyond_the_number_is_asked_about_before_it_is_reached()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync(quantity: 3);
        Assert.Equal(
            "tag",
            Assert.Single((await shop.Room.RecordCoilAsync(WorkingShop.Entry(batch, "C-030", "6.18 k"), Cancel)).Problems).Field
        ); // C-003 slipped
    }

    [Fact]
    public async Task More_are_wanted_with_a_reason_and_it_can_be_taken_back()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await FullAsync(shop);
        BatchEventEntry more = BatchEventServiceTests.Said(batch, BatchEventKind.MoreWanted) with
        {
            Counter = "2",
            Note = "two were rejected",
        };
        Assert.Equal(["note"], await FieldsAsync(more with { Note = " " }));
        Assert.Equal(["counter"], await FieldsAsync(more with { Counter = "0" }));
        Assert.Equal(["counter"], await FieldsAsync(more with { Counter = "1.5" }));
        Assert.Equal(["counter"], await FieldsAsync(more with { Counter = "9998" })); // with the three there are, more than 10,000
        Assert.Empty(await shop.Run.RecordEventAsync(more, Cancel));
        Assert.Empty(await shop.Run.RecordEventAsync(more, Cancel)); // sent twice

        Assert.Equal(("3 of 5", "C-004"), ((await shop.StatusAsync(batch)).CountWords, (await shop.StatusAsync(batch)).NextTag));
        Assert.Equal("2 more wanted: two were rejected", (await shop.Run.StatusAsync(batch.Id, Cancel))!.History.InForce[^1].Sentence);
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-004", "6.18 k"));
        await shop.Run.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel);
        BatchStatus after = await shop.StatusAsync(batch);
        Assert.Equal(("3 of 3 done, 1 beyond the number", "C-004"), (after.CountWords, Assert.Single(after.Beyond)));

        async Task<string[]> FieldsAsync(BatchEventEntry said) =>
            [.. (await shop.Run.RecordEventAsync(said with { Id = Guid.NewGuid() }, Cancel)).Select(problem => problem.Field)];
    }

    [Fact]
    public async Task What_waited_on_a_tablet_is_kept_and_stands_marked()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await FullAsync(shop);
        LateEntry late = new(s_said, s_said.AddMinutes(20));

        CoilEntryOutcome beyond = await shop.Room.RecordCoilAsync(WorkingShop.Entry(batch, "C-004", "6.18 k"), Cancel, late),
            slip = await shop.Room.RecordCoilAsync(WorkingShop.Entry(batch, "C-005", "abc"), Cancel, late);

        Assert.Empty(beyond.Problems);
        Assert.Empty(slip.Problems);
        BatchStatus standing = await shop.StatusAsync(batch);
        Assert.Equal(["C-004", "C-005"], standing.Beyond.Order());
        Assert.Equal("3 of 3 done, 2 beyond the number", standing.CountWords);
        Assert.Equal("abc", standing.Coils.Single(coil => coil.Tag == "C-005").InForce[0].Typed);
    }

    private static async Task<BatchRecord> FullAsync(WorkingShop shop)
    {
        BatchRecord batch = await shop.BatchAsync(quantity: 3);
        foreach (string tag in (string[])["C-001", "C-002", "C-003"])
        {
            await shop.KeptAsync(WorkingShop.Entry(batch, tag, "6.18 k"));
        }

        Assert.Empty(await shop.Run.RecordEventAsync(BatchEventServiceTests.Said(batch, BatchEventKind.Released), Cancel));
        return batch;
    }
}
