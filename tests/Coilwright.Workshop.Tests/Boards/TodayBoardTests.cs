using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Boards;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Stock;
using Coilwright.Workshop.Tests.Winding;

namespace Coilwright.Workshop.Tests.Boards;

/// <summary>What needs a person about batches and wire, a line for each kind and none where nothing is the matter.</summary>
public sealed class TodayBoardTests
{
    private static CancellationToken Cancel => WorkingShop.Cancel;

    [Fact]
    public async Task A_steady_batch_needs_nobody_and_a_finished_one_does_not_run()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync(quantity: 3);
        await ReadAsync(shop, batch, "6.18 k", "6.19 k");
        TodayBoard under = await TodayAsync(shop);
        Assert.Empty(under.Needed);
        RunningBatch running = Assert.Single(under.Running);
        Assert.Equal(("2 pass", "C-003"), (running.VerdictWords, running.Run.Status.NextTag));

        await shop.KeptAsync(WorkingShop.Entry(batch, "C-003", "6.18 k"));
        Assert.Empty((await TodayAsync(shop)).Running);
    }

    [Fact]
    public async Task A_coil_on_hold_waits_with_its_reason_until_it_is_read_again_or_goes_into_a_piece()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.45 k", temperature: ""));
        await ReadAsync(shop, batch, "6.18 k", "6.19 k");
        TodayLine line = Assert.Single((await TodayAsync(shop)).Needed);
        Assert.Equal((TodayMark.Hold, "H-12, coil C-001"), (line.Mark, line.About));
        Assert.StartsWith("6.450 kΩ, temperature not recorded", line.Words, StringComparison.Ordinal);
        Assert.Equal((WorkPlace.Enter, "C-001", batch.Id), (line.Do.Place, line.Do.Name, line.Do.BatchId));

        Assert.Empty((await TodayAsync(shop, used: [(batch.Id, "C-001")])).Needed);
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.19 k"));
        Assert.DoesNotContain((await TodayAsync(shop)).Needed, one =>
            one.Mark == TodayMark.Hold && one.Words.Contains("temperature", StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task Several_coils_on_hold_of_one_batch_are_one_line()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        for (int at = 1; at <= 4; at++)
        {
            await shop.KeptAsync(WorkingShop.Entry(batch, BatchTags.Of(batch, at), "6.45 k", temperature: ""));
        }

        await ReadAsync(shop, batch, "6.18 k", "6.18 k");
        TodayLine line = Assert.Single((await TodayAsync(shop)).Needed, one => one.Mark == TodayMark.Hold);
        Assert.Equal(
            ("H-12", "4 coils are on hold: C-001, C-002, C-003, C-004.", WorkPlace.Batch),
            (line.About, line.Words, line.Do.Place)
        );
    }

    [Fact]
    public async Task Two_rejects_in_a_row_stop_a_run_and_one_does_not()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await ReadAsync(shop, batch, "6.18 k", "6.19 k", "6.9 k");
        Assert.DoesNotContain((await TodayAsync(shop)).Needed, line => line.Mark == TodayMark.Stop);
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-004", "6.92 k"));
        TodayLine line = Assert.Single((await TodayAsync(shop)).Needed, line => line.Mark == TodayMark.Stop);
        Assert.Equal("H-12", line.About);
        Assert.StartsWith("2 rejected in a row, C-003 to C-004.", line.Words, StringComparison.Ordinal);
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-005", "6.18 k"));
        Assert.DoesNotContain((await TodayAsync(shop)).Needed, one => one.Mark == TodayMark.Stop);
    }

    [Fact]
    public async Task A_signal_stands_until_somebody_says_what_was_found_and_a_later_one_stands_anew()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync(quantity: 60);
        for (int at = 1; at <= 20; at++)
        {
            await shop.KeptAsync(WorkingShop.Entry(batch, BatchTags.Of(batch, at), at % 2 == 0 ? "6.17 k" : "6.19 k"));
        }

        Assert.Empty((await TodayAsync(shop)).Needed);
        BatchEventEntry answer = BatchEventServiceTests.Said(batch, BatchEventKind.SignalAnswered) with { Note = "new spool, measured" };
        Assert.Equal("batch", Assert.Single(await shop.Run.RecordEventAsync(answer, Cancel)).Field); // nothing to answer

        await shop.KeptAsync(WorkingShop.Entry(batch, "C-021", "6.33 k"));
        TodayLine line = Assert.Single((await TodayAsync(shop)).Needed);
        Assert.Equal((TodayMark.Drift, "H-12", WorkPlace.Batch), (line.Mark, line.About, line.Do.Place));
        Assert.StartsWith("The run drifts at C-021: 1 point beyond 3 sigma. Check first:", line.Words, StringComparison.Ordinal);

        Assert.Equal("note", Assert.Single(await shop.Run.RecordEventAsync(answer with { Note = " " }, Cancel)).Field);
        Assert.Empty(await shop.Run.RecordEventAsync(answer, Cancel));
        Assert.Empty(await shop.Run.RecordEventAsync(answer, Cancel)); // sent twice
        Assert.Empty((await TodayAsync(shop)).Needed);
        BatchEvent kept = Assert.Single(await shop.Records.Batches.EventsAsync(batch.Id, Cancel));
        Assert.Equal("signal at C-021 looked into: new spool, measured", kept.Sentence);

        await shop.KeptAsync(WorkingShop.Entry(batch, "C-022", "6.34 k"));
        Assert.Contains("C-022", Assert.Single((await TodayAsync(shop)).Needed).Words, StringComparison.Ordinal);
        Assert.Empty(await shop.Run.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel));
        Assert.Equal(["C-021", "C-022"], (await RunAsync(shop, batch)).OpenSignals.Select(signal => signal.Tag).Distinct());
    }

    [Fact]
    public async Task A_broken_wire_waits_until_it_is_spliced_ended_low_or_scrapped()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await BatchEventServiceTests.SayAsync(shop, batch, BatchEventKind.Begun);
        Assert.Empty((await TodayAsync(shop)).Needed);
        await BatchEventServiceTests.SayAsync(shop, batch, BatchEventKind.Broken, counter: "6100");
        TodayLine line = Assert.Single((await TodayAsync(shop)).Needed);
        Assert.Equal(
            (TodayMark.Broke, "H-12, coil C-001", WorkPlace.Winder, "Winder 2"),
            (line.Mark, line.About, line.Do.Place, line.Do.Name)
        );
        Assert.Contains("at 6,100 turns on Winder 2", line.Words, StringComparison.Ordinal);
        await BatchEventServiceTests.SayAsync(shop, batch, BatchEventKind.Spliced);
        Assert.Empty((await TodayAsync(shop)).Needed);
    }

    [Fact]
    public async Task The_first_piece_waits_for_its_release()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.18 k"));
        TodayLine line = Assert.Single((await TodayAsync(shop)).Needed);
        Assert.Equal(
            (TodayMark.First, "H-12, coil C-001", "The first piece reads pass. The series waits for its release."),
            (line.Mark, line.About, line.Words)
        );
        await BatchEventServiceTests.SayAsync(shop, batch, BatchEventKind.Released);
        Assert.Empty((await TodayAsync(shop)).Needed);
    }

    [Fact]
    public async Task A_spool_is_held_against_all_batches_that_are_wound_from_it()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync(quantity: 12);
        await ReadAsync(shop, batch, "6.18 k", "6.19 k");
        await shop.EnsureSpoolAsync("0117");
        Assert.Empty((await TodayAsync(shop)).Needed); // not weighed: nothing is known, so nothing is told

        double coilM = (await RunAsync(shop, batch)).Plan.WireM(8000);
        SpoolStatus spool = Assert.Single(await shop.Stock.ShelfAsync(Cancel));
        Assert.Empty((await TodayAsync(shop, spools: [Holding(spool, 11 * coilM)])).Needed);
        TodayLine line = Assert.Single((await TodayAsync(shop, spools: [Holding(spool, 7 * coilM)])).Needed);
        Assert.Equal((TodayMark.Short, "Spool 0117", WorkPlace.Spools), (line.Mark, line.About, line.Do.Place));
        Assert.StartsWith("It does not finish the coils still to be wound: 10 of H-12.", line.Words, StringComparison.Ordinal);

        BatchRecord second = batch with { Id = Guid.NewGuid(), Name = "H-13", TagPrefix = "D-", Quantity = 4 };
        await shop.Records.Batches.AddAsync(second, Cancel);
        TodayLine both = Assert.Single((await TodayAsync(shop, spools: [Holding(spool, 11 * coilM)])).Needed);
        Assert.Contains("10 of H-12 and 4 of H-13", both.Words, StringComparison.Ordinal);
    }

    private static SpoolStatus Holding(SpoolStatus spool, double metres) =>
        spool with
        {
            RemainingM = Physics.Estimate.Within(metres, 0.001, Physics.Basis.Measured),
        };

    private static async Task ReadAsync(WorkingShop shop, BatchRecord batch, params string[] ohms)
    {
        int before = (await shop.StatusAsync(batch)).Coils.Count;
        for (int at = 0; at < ohms.Length; at++)
        {
            await shop.KeptAsync(WorkingShop.Entry(batch, BatchTags.Of(batch, before + at + 1), ohms[at]));
        }
    }

    private static async Task<BatchProgress> RunAsync(WorkingShop shop, BatchRecord batch) =>
        (await shop.Run.StatusAsync(batch.Id, Cancel))!;

    private static async Task<TodayBoard> TodayAsync(
        WorkingShop shop,
        IReadOnlyList<(Guid, string)>? used = null,
        IReadOnlyList<SpoolStatus>? spools = null
    )
    {
        PieceService shelf = new(shop.Records, shop.Clock);
        ClockBoard clocks = await ClockBoard.ReadAsync(shop.Records.Steps, shelf, new PottingService(shop.Records, shelf), Cancel);
        return TodayBoard.Of(
            (await shop.Run.StatusesAsync(await shop.Records.Batches.AllAsync(Cancel), Cancel)).Readable(),
            (used ?? []).ToHashSet(),
            spools ?? await shop.Stock.ShelfAsync(Cancel),
            clocks
        );
    }
}
