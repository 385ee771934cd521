using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Boards;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Tests.Winding;

/// <summary>A batch ends before its number, with a reason; it asks for nothing any more until it is reopened.</summary>
public sealed class ClosedBatchTests
{
    private static CancellationToken Cancel => WorkingShop.Cancel;

    [Fact]
    public async Task A_closed_batch_asks_for_no_coil_and_says_why()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await BegunAsync(shop);
        Assert.Single((await TodayAsync(shop)).Running);
        Assert.Empty(await shop.Run.RecordEventAsync(Close(batch), Cancel));

        await shop.ReopenAsync(); // as after a power cut
        BatchStatus closed = await shop.StatusAsync(batch);
        Assert.Equal(
            (BatchState.Closed, "2 of 5, closed: the order was cancelled", null, false),
            (closed.State, closed.CountWords, closed.NextTag, closed.IsDone)
        );
        Assert.Equal("closed with 2 of 5 coils: the order was cancelled", closed.Closing!.Sentence);
        Assert.Null((await shop.Run.StatusAsync(batch.Id, Cancel))!.NextToBegin);
        Assert.Empty((await TodayAsync(shop)).Running);
    }

    [Fact]
    public async Task Late_readings_and_events_are_refused_and_a_correction_is_taken()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await BegunAsync(shop);
        Assert.Empty(await shop.Run.RecordEventAsync(Close(batch), Cancel));
        LateEntry late = new(shop.Clock.GetUtcNow().AddMinutes(-20), shop.Clock.GetUtcNow());
        foreach (LateEntry? made in (LateEntry?[])[null, late])
        {
            CoilEntryOutcome refused = await shop.Room.RecordCoilAsync(WorkingShop.Entry(batch, "C-003", "6.18 k"), Cancel, made);
            Problem problem = Assert.Single(refused.Problems);
            Assert.Contains("closed with 2 of 5 coils: the order was cancelled", problem.Message, StringComparison.Ordinal);
            Assert.Contains("coilwright batch reopen H-12", problem.Allowed, StringComparison.Ordinal);
        }

        Assert.Contains(
            "closed with 2 of 5",
            Assert.Single(await shop.Run.RecordEventAsync(BatchEventServiceTests.Said(batch, BatchEventKind.Begun), Cancel)).Message,
            StringComparison.Ordinal
        );
        Guid wrong = (await shop.StatusAsync(batch)).Coils[0].InForce[0].Id;
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.181 k") with { Supersedes = wrong, Reason = "misread" });
        Assert.Equal(2, (await shop.StatusAsync(batch)).Coils.Count);
    }

    [Fact]
    public async Task Reopened_it_goes_on_where_it_stood_whatever_was_said_since()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await BegunAsync(shop);
        Assert.Equal("batch", Assert.Single(await shop.Run.ReopenAsync(batch.Id, Guid.NewGuid(), "Joss", Cancel)).Field);
        Assert.Empty(await shop.Run.RecordEventAsync(Close(batch), Cancel));
        BatchEventEntry taught = BatchEventServiceTests.Said(batch, BatchEventKind.CauseFound) with { Tag = "C-001", Choice = "none" };
        Assert.Empty(await shop.Run.RecordEventAsync(taught, Cancel));
        Guid id = Guid.NewGuid();
        for (int sent = 0; sent < 2; sent++) // sent twice it is kept once
        {
            Assert.Empty(await shop.Run.ReopenAsync(batch.Id, id, "Joss", Cancel));
        }

        Assert.Equal(("C-003", "2 of 5"), ((await shop.StatusAsync(batch)).NextTag, (await shop.StatusAsync(batch)).CountWords));
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-003", "6.18 k"));
    }

    [Fact]
    public async Task It_is_closed_once_with_a_reason_and_with_nothing_on_its_spindles()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await BegunAsync(shop);
        Assert.Equal("note", Assert.Single(await shop.Run.RecordEventAsync(Close(batch) with { Note = " " }, Cancel)).Field);
        Assert.Empty(await shop.Run.RecordEventAsync(BatchEventServiceTests.Said(batch, BatchEventKind.Released), Cancel));
        Assert.Empty(await shop.Run.RecordEventAsync(BatchEventServiceTests.Said(batch, BatchEventKind.Begun), Cancel));
        Problem spindle = Assert.Single(await shop.Run.RecordEventAsync(Close(batch), Cancel));
        Assert.Contains("C-003 on a spindle", spindle.Message, StringComparison.Ordinal);
        Assert.Empty(await shop.Run.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel));

        BatchEventEntry close = Close(batch);
        Assert.Empty(await shop.Run.RecordEventAsync(close, Cancel));
        Assert.Empty(await shop.Run.RecordEventAsync(close, Cancel)); // sent twice
        Assert.Single(await shop.Run.RecordEventAsync(Close(batch), Cancel));
        Assert.Empty(await shop.Run.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel)); // as any other event
        Assert.Equal(BatchState.UnderWay, (await shop.StatusAsync(batch)).State);
    }

    [Fact]
    public async Task A_batch_that_is_done_has_nothing_to_close()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync(quantity: 1);
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.18 k"));
        Assert.Contains(
            "nothing to close",
            Assert.Single(await shop.Run.RecordEventAsync(Close(batch), Cancel)).Message,
            StringComparison.Ordinal
        );
        Assert.Equal(BatchState.Done, (await shop.StatusAsync(batch)).State);
    }

    private static BatchEventEntry Close(BatchRecord batch) =>
        BatchEventServiceTests.Said(batch, BatchEventKind.Closed) with
        {
            Note = "the order was cancelled",
        };

    private static async Task<BatchRecord> BegunAsync(WorkingShop shop)
    {
        BatchRecord batch = await shop.BatchAsync(quantity: 5);
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.18 k"));
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-002", "6.19 k"));
        return batch;
    }

    private static async Task<TodayBoard> TodayAsync(WorkingShop shop)
    {
        PieceService shelf = new(shop.Records, shop.Clock);
        ClockBoard clocks = await ClockBoard.ReadAsync(shop.Records.Steps, shelf, new PottingService(shop.Records, shelf), Cancel);
        return TodayBoard.Of(
            (await shop.Run.StatusesAsync(await shop.Records.Batches.AllAsync(Cancel), Cancel)).Readable(),
            new HashSet<(Guid, string)>(),
            await shop.Stock.ShelfAsync(Cancel),
            clocks
        );
    }
}
