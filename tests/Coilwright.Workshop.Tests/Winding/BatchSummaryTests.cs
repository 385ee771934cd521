using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Summaries;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Stock;

namespace Coilwright.Workshop.Tests.Winding;

/// <summary>What is kept of a batch in short is what its records say, whatever was entered and whenever it was looked at.</summary>
public sealed class BatchSummaryTests
{
    private static CancellationToken Cancel => WorkingShop.Cancel;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public async Task After_any_history_each_kept_summary_is_the_one_that_its_records_give(int seed)
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync(quantity: 6);
        BatchSummaries summaries = new(shop.Records, shop.Room.Dossiers);
#pragma warning disable CA5394 // a drawn history, not a secret
        Random random = new(seed);
        HashSet<BatchState?> seen = [];
        for (int step = 0; step < 40; step++)
        {
            await ActAsync(shop, batch, random.Next(8), random.Next(1, 8));
            if (random.Next(3) > 0)
            {
                await summaries.CatchUpAsync(BatchSummaries.AtOnce, Cancel);
            }
#pragma warning restore CA5394

            foreach (BatchSummary kept in (await shop.Records.Summaries.AllAsync(Cancel)).Values)
            {
                BatchDossier fresh = await new BatchDossiers(shop.Records, shop.Clock).OfAsync(batch, Cancel);
                Assert.Equivalent(BatchSummary.Of(fresh), kept, strict: true);
                seen.Add(kept.State);
            }
        }

        Assert.Contains(BatchState.UnderWay, seen);
        Assert.Equal(
            1,
            (await summaries.CatchUpAsync(BatchSummaries.AtOnce, Cancel)).Missing + (await shop.Records.Summaries.AllAsync(Cancel)).Count
        );
    }

    [Fact]
    public async Task Every_record_of_a_batch_takes_its_summary_away_with_it()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        BatchSummaries summaries = new(shop.Records, shop.Room.Dossiers);
        for (int act = 0; act < 4; act++)
        {
            await summaries.CatchUpAsync(BatchSummaries.AtOnce, Cancel);
            Assert.Equal(0, await shop.Records.Summaries.MissingCountAsync(Cancel));
            await ActAsync(shop, batch, act, 1);
            Assert.Equal(1, await shop.Records.Summaries.MissingCountAsync(Cancel));
        }
    }

    [Fact]
    public async Task A_summary_of_records_that_have_grown_is_not_kept_and_one_of_another_version_counts_as_missing()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        BatchDossier before = await shop.Room.Dossiers.OfAsync(batch, Cancel);
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.20 k"));
        Assert.False(await shop.Records.Summaries.TryKeepAsync(BatchSummary.Of(before), 0, 0, Cancel));
        Assert.Equal(1, await shop.Records.Summaries.MissingCountAsync(Cancel));

        BatchSummaries summaries = new(shop.Records, shop.Room.Dossiers);
        Assert.Equal((1, 0), await summaries.CatchUpAsync(BatchSummaries.AtOnce, Cancel));
        Assert.Equal(1, (await shop.Records.Summaries.CountsAsync(Cancel))[BatchState.UnderWay]);
        await shop.ExecuteAsync("UPDATE BatchSummaries SET Program = 'older'");
        Assert.Empty(await shop.Records.Summaries.CountsAsync(Cancel));
        Assert.Equal((1, 0), await summaries.CatchUpAsync(BatchSummaries.AtOnce, Cancel));
    }

    [Fact]
    public async Task Of_many_batches_a_page_makes_the_newest_and_says_how_many_it_has_not_looked_through()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord first = await shop.BatchAsync(quantity: 1);
        await shop.KeptAsync(WorkingShop.Entry(first, "C-001", "6.18 k"));
        for (int number = 1; number <= BatchSummaries.AtOnce + 45; number++)
        {
            await shop.Records.Batches.AddAsync(
                first with
                {
                    Id = Guid.NewGuid(),
                    Name = FormattableString.Invariant($"N-{number}"),
                    BegunUtc = first.BegunUtc.AddMinutes(number),
                },
                Cancel
            );
        }

        BatchSummaries summaries = new(shop.Records, shop.Room.Dossiers);
        (IReadOnlyList<BatchRecord> open, int notYet) = await summaries.OpenAsync(Cancel);
        Assert.Equal((2 * BatchSummaries.AtOnce, 6), (open.Count, notYet)); // made now, and looked at though not made
        Assert.DoesNotContain(first, open);
        Assert.Equal("N-85", open[^1].Name);
        (open, notYet) = await summaries.OpenAsync(Cancel);
        (open, notYet) = await summaries.OpenAsync(Cancel);
        Assert.Equal((BatchSummaries.AtOnce + 45, 0), (open.Count, notYet)); // all but the one that is done
        Assert.Equal(first, Assert.Single(await shop.Records.Summaries.InStateAsync(BatchState.Done, 0, 10, Cancel)).Batch);
    }

    [Fact]
    public async Task The_shelf_in_short_has_the_wire_of_the_shelf_coil_by_coil_also_after_a_weighing_in_mid_batch()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        await shop.EnsureSpoolAsync("0117");
        BatchRecord batch = await shop.BatchAsync();
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.20 k"));
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-002", "6.21 k"));
        Assert.Empty(await shop.Stock.WeighAsync(Guid.NewGuid(), "0117", "900 g", "Mara", Cancel));
        shop.Clock.Advance(TimeSpan.FromMinutes(1));
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-003", "6.22 k"));
        await new BatchSummaries(shop.Records, shop.Room.Dossiers).CatchUpAsync(BatchSummaries.AtOnce, Cancel);
        SpoolStatus inShort = Assert.Single(await shop.Stock.ShelfAsync(Cancel)),
            byCoil = Assert.Single(await shop.Stock.ShelfByCoilAsync(Cancel)),
            alone = Assert.Single(await shop.Stock.ShelfAsync(["0117"], Cancel));
        Assert.Equal(3, inShort.Uses.Count); // the weighing lies between them
        Assert.Equal(byCoil.Uses, alone.Uses);
        Assert.Equal((byCoil.RemainingM, byCoil.UsedM, 3), (inShort.RemainingM, inShort.UsedM, inShort.Coils));

        Assert.Empty(await shop.Stock.WeighAsync(Guid.NewGuid(), "0117", "890 g", "Mara", Cancel));
        inShort = Assert.Single(await shop.Stock.ShelfAsync(Cancel));
        Assert.Equal((3, 1), (inShort.Coils, inShort.Uses.Count));
        Assert.Equal(byCoil.UsedM, inShort.UsedM, 1e-9 * byCoil.UsedM);
    }

    /// <summary>One thing that people do to a batch; what is refused changes nothing.</summary>
    private static async Task ActAsync(WorkingShop shop, BatchRecord batch, int act, int coil)
    {
        string tag = FormattableString.Invariant($"C-{coil:000}");
        switch (act)
        {
            case 1:
                await shop.Room.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel);
                break;
            case 2:
                await shop.Run.RecordEventAsync(
                    Event(batch, BatchEventKind.MoreWanted) with
                    {
                        Counter = "1",
                        Note = "one for the wall",
                    },
                    Cancel
                );
                break;
            case 3:
                await shop.Run.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel);
                break;
            case 4:
                await shop.Run.RecordEventAsync(Event(batch, BatchEventKind.Scrapped) with { Tag = tag, Note = "dropped" }, Cancel);
                break;
            default:
                string ohms = FormattableString.Invariant($"{6.0 + 0.1 * ((coil * act) % 5)} k");
                await shop.Room.RecordCoilAsync(WorkingShop.Entry(batch, tag, ohms), Cancel);
                break;
        }

        shop.Clock.Advance(TimeSpan.FromSeconds(30));
    }

    private static BatchEventEntry Event(BatchRecord batch, BatchEventKind kind) =>
        new()
        {
            Id = Guid.NewGuid(),
            BatchId = batch.Id,
            Kind = kind,
            Person = "Mara",
        };
}
