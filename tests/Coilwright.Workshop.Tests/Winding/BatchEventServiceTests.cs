using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Workshop.Tests.Winding;

/// <summary>Break, pause, resume and release at the winder.</summary>
public sealed class BatchEventServiceTests
{
    private const string Gear =
        """{ "format": "coilwright.machine/1", "name": "Winder 2", "kind": "hand-guided", "counter": { "turns": """
        + """100.6, "counted": 100 } }""";

    private static CancellationToken Cancel => WorkingShop.Cancel;

    /// <summary>
    /// 6,100 of 8,000: share 0.7625; wire lost about a quarter kilometre short of 870 m; inductance 0.7625² = 0.58; 6,100 ÷ 1,200 rpm = 5.1
    /// min.
    /// </summary>
    [Fact]
    public async Task A_break_at_6100_of_8000_says_what_each_choice_costs()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await SayAsync(shop, batch, BatchEventKind.Begun);
        await SayAsync(shop, batch, BatchEventKind.Broken, counter: "6100");

        BatchProgress run = (await shop.Run.StatusAsync(batch.Id, Cancel))!;
        CoilOnSpindle coil = Assert.Single(run.History.OnSpindles);
        IReadOnlyList<BreakChoice> choices = BreakChoice.At(run.Plan, run.Plan.SetUp, coil.Turns!.Value);

        Assert.Equal((SpindleState.Broken, 6100), (coil.State, coil.Turns!.Value));
        BreakChoice scrap = choices.Single(one => one.Kind == BatchEventKind.Scrapped),
            low = choices.Single(one => one.Kind == BatchEventKind.FinishedLow);
        Assert.Equal(305, scrap.LostS!.Value, 0.5);
        Assert.InRange(scrap.LostWireKg, 0.022, 0.027); // 0.76 of about 33 g, less since the inner turns are the short ones
        Assert.Equal(0.5814, low.InductanceFactor, 0.0001);
        Assert.InRange(low.OhmAt20C!.Value / run.Plan.SetUp.At20C.Expected.Value, 0.72, 0.7625);
    }

    [Fact]
    public async Task After_a_power_cut_the_batch_is_where_it_was()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        await shop.Machines.KeepAsync(Guid.NewGuid(), Gear, "Mara", Cancel);
        BatchRecord batch = await shop.BatchAsync();
        await SayAsync(shop, batch, BatchEventKind.Begun, tag: "C-023");
        await SayAsync(shop, batch, BatchEventKind.Paused, counter: "3000");

        await shop.ReopenAsync();

        CoilOnSpindle coil = Assert.Single((await shop.Run.StatusAsync(batch.Id, Cancel))!.History.OnSpindles);
        Assert.Equal(
            ("C-023", SpindleState.Paused, 3000, 3018),
            (coil.Tag, coil.State, coil.Counter!.Value, Math.Round(coil.Turns!.Value, 6))
        ); // 3,000 counts × 1.006
    }

    [Fact]
    public async Task The_series_waits_for_its_first_piece()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await SayAsync(shop, batch, BatchEventKind.Begun);
        // nothing read yet
        Assert.Equal("batch", Assert.Single(await shop.Run.RecordEventAsync(Said(batch, BatchEventKind.Released), Cancel)).Field);
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.9 k")); // rejected: above 6.43
        Assert.Contains(await shop.Run.RecordEventAsync(Said(batch, BatchEventKind.Begun), Cancel), problem =>
            problem.Message.Contains("first piece", StringComparison.Ordinal)
        );
        Assert.Equal("note", Assert.Single(await shop.Run.RecordEventAsync(Said(batch, BatchEventKind.Released), Cancel)).Field);
        Assert.Empty(await shop.Run.RecordEventAsync(Said(batch, BatchEventKind.Released) with { Note = "meter was off" }, Cancel));
        Assert.Empty(await shop.Run.RecordEventAsync(Said(batch, BatchEventKind.Begun), Cancel));
        Assert.Equal("C-002", Assert.Single((await shop.Run.StatusAsync(batch.Id, Cancel))!.History.OnSpindles).Tag);
    }

    [Fact]
    public async Task Two_winders_on_one_batch_get_coils_of_their_own()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await ReleasedAsync(shop, batch);
        await shop.Machines.KeepAsync(Guid.NewGuid(), Gear.Replace("Winder 2", "Winder 1", StringComparison.Ordinal), "Mara", Cancel);
        await SayAsync(shop, batch, BatchEventKind.Begun, machine: "Winder 1");
        await SayAsync(shop, batch, BatchEventKind.Begun, machine: "Winder 2");
        IReadOnlyList<Problem> third = await shop.Run.RecordEventAsync(
            Said(batch, BatchEventKind.Begun) with
            {
                Machine = "Winder 1",
            },
            Cancel
        );
        IReadOnlyList<Problem> which = await shop.Run.RecordEventAsync(Said(batch, BatchEventKind.Paused) with { Counter = "100" }, Cancel);

        BatchProgress run = (await shop.Run.StatusAsync(batch.Id, Cancel))!;
        Assert.Equal([("C-002", "Winder 1"), ("C-003", "Winder 2")], run.History.OnSpindles.Select(coil => (coil.Tag, coil.Machine)));
        Assert.Equal("C-004", run.NextToBegin);
        Assert.Equal("machine", Assert.Single(third).Field);
        Assert.Equal("tag", Assert.Single(which).Field);
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-003", "6.2 k"));
        // read, so off its spindle
        Assert.Equal("C-002", Assert.Single((await shop.Run.StatusAsync(batch.Id, Cancel))!.History.OnSpindles).Tag);
    }

    [Fact]
    public async Task An_event_sent_twice_is_kept_once_and_the_last_can_be_undone()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await SayAsync(shop, batch, BatchEventKind.Begun);
        BatchEventEntry broke = Said(batch, BatchEventKind.Broken) with { Counter = "6100" };
        Assert.Empty(await shop.Run.RecordEventAsync(broke, Cancel));
        Assert.Empty(await shop.Run.RecordEventAsync(broke, Cancel));
        Guid undo = Guid.NewGuid();
        await shop.Run.UndoLastAsync(batch.Id, undo, "Mara", Cancel);
        await shop.Run.UndoLastAsync(batch.Id, undo, "Mara", Cancel); // sent twice, undone once

        Assert.Equal(3, (await shop.Records.Batches.EventsAsync(batch.Id, Cancel)).Count);
        Assert.Equal(SpindleState.Winding, Assert.Single((await shop.Run.StatusAsync(batch.Id, Cancel))!.History.OnSpindles).State);
    }

    [Fact]
    public async Task A_counter_beyond_the_coil_and_a_splice_without_a_break_are_refused()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await SayAsync(shop, batch, BatchEventKind.Begun);
        Assert.Equal(
            "counter",
            Assert.Single(await shop.Run.RecordEventAsync(Said(batch, BatchEventKind.Broken) with { Counter = "61000" }, Cancel)).Field
        );
        Assert.Equal("counter", Assert.Single(await shop.Run.RecordEventAsync(Said(batch, BatchEventKind.Paused), Cancel)).Field);
        Assert.Equal("tag", Assert.Single(await shop.Run.RecordEventAsync(Said(batch, BatchEventKind.Spliced), Cancel)).Field);
    }

    [Fact]
    public void Wire_of_all_turns_is_the_forecast_and_turns_of_wire_are_its_inverse()
    {
        CoilPlan plan = CoilPlan.Of(
            new(Guid.NewGuid(), "H", 1, WorkingShop.Harbour(), Workshop.Recipes.RevisionState.Released, "", "", default),
            "main",
            Workshop.Recipes.KnownParts.None
        );
        CoilSetUp setUp = plan.SetUp;
        Assert.Equal(setUp.WireLength.Value, plan.WireM(8000), 1e-9);
        Gen.Double[10, 9000].ForAll(turns => Assert.Equal(turns, plan.TurnsOf(plan.WireM(turns)), 1e-6));
        double inner = 2 * (61e-3 - 6.2e-3) + Math.PI * 6.2e-3; // the former's own perimeter
        Assert.Equal(inner, plan.WireM(0.001) / 0.001, inner * 0.01);
    }

    [Fact]
    public async Task An_event_that_comes_again_with_another_counter_is_refused_in_words()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await SayAsync(shop, batch, BatchEventKind.Begun);
        BatchEventEntry paused = Said(batch, BatchEventKind.Paused) with { Counter = "3000" };
        Assert.Empty(await shop.Run.RecordEventAsync(paused, Cancel));
        Assert.Empty(await shop.Run.RecordEventAsync(paused, Cancel));
        Assert.Equal("id", Assert.Single(await shop.Run.RecordEventAsync(paused with { Counter = "3500" }, Cancel)).Field);
        Assert.Equal("id", Assert.Single(await shop.Run.UndoLastAsync(batch.Id, paused.Id, "Mara", Cancel)).Field);
        Assert.Equal(2, (await shop.Records.Batches.EventsAsync(batch.Id, Cancel)).Count);
    }

    internal static BatchEventEntry Said(BatchRecord batch, BatchEventKind kind) =>
        new()
        {
            Id = Guid.NewGuid(),
            BatchId = batch.Id,
            Kind = kind,
            Person = "Mara",
        };

    internal static async Task SayAsync(
        WorkingShop shop,
        BatchRecord batch,
        BatchEventKind kind,
        string tag = "",
        string counter = "",
        string machine = ""
    )
    {
        Assert.Empty(await shop.Run.RecordEventAsync(Said(batch, kind) with { Tag = tag, Counter = counter, Machine = machine }, Cancel));
        shop.Clock.Advance(TimeSpan.FromSeconds(30));
    }

    internal static async Task ReleasedAsync(WorkingShop shop, BatchRecord batch)
    {
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.2 k"));
        await SayAsync(shop, batch, BatchEventKind.Released);
    }
}
