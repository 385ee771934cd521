using Coilwright.Workshop.Batches;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Stock;
using Coilwright.Workshop.Tests.Pieces;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Tests.Winding;

/// <summary>From which spool a coil was wound has one answer, and nothing that is entered later moves it.</summary>
public sealed class CoilOriginTests
{
    private static CancellationToken Cancel => WorkingShop.Cancel;

    [Theory]
    [InlineData("", 2, 0, true)] // nobody said: the same coil, and marked
    [InlineData("same", 2, 0, false)]
    [InlineData("new", 1, 1, false)]
    public async Task A_tag_entered_again_after_its_undo_keeps_its_first_spool_unless_somebody_said_it_is_a_new_coil(
        string answer,
        int fromA,
        int fromB,
        bool marked
    )
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await UndoneAfterAnotherSpoolAsync(shop);
        SpoolQuestion question = Assert.Single((await shop.StatusAsync(batch)).Questions);
        Assert.Equal(("C-002", "A1", "B1"), (question.Tag, question.SameSpool, question.NewSpool));

        CoilDossier coil = await shop.KeptAsync(WorkingShop.Entry(batch, "C-002", "6.19 k") with { Coil = answer });

        Assert.Equal((fromA, fromB), (await UsesAsync(shop, "A1"), await UsesAsync(shop, "B1")));
        Assert.Equal(fromB == 1 ? "B1" : "A1", coil.Origin.Spool);
        Assert.Equal(marked, coil.Origin.Doubt.Contains("B1", StringComparison.Ordinal));
        ControlChartService wall = new(shop.Records, shop.Machines, shop.Room.Dossiers);
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-003", "6.20 k"));
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-004", "6.20 k"));
        Assert.Equal(fromB == 1 ? 3 : 2, (await wall.ShowAsync(new ChartSettingsForm { Spool = "B1" }, Cancel)).ControlChart!.Points.Count);
        Assert.Empty((await shop.StatusAsync(batch)).Questions);
    }

    [Fact]
    public async Task The_trace_of_a_piece_and_of_a_spool_say_the_same()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        foreach (string label in new[] { "0117", "0200" })
        {
            Assert.Empty(await shop.Shop.Stock.TakeInAsync(Spool(label), "", "", Cancel));
        }

        await shop.Shop.KeptAsync(WorkingShop.Entry(shop.Slugs, "BS-005", "4.00 k"));
        await TakeAsync(shop.Shop, shop.Slugs, "0200");
        await UndoAsync(shop.Shop, shop.Slugs);
        await shop.Shop.KeptAsync(WorkingShop.Entry(shop.Slugs, "BS-005", "4.01 k"));
        await shop.Shop.KeptAsync(WorkingShop.Entry(shop.Screws, "BC-005", "4.01 k"));
        string serial = (await shop.MakeAsync(5)).Serial;

        TracedCoil slug = (await shop.Trace.PieceAsync(serial, Cancel))!.Coils.Single(coil => coil.Tag == "BS-005");
        Assert.Equal("0117", slug.Spool);
        Assert.Contains("0200", slug.SpoolDoubt, StringComparison.Ordinal);
        Assert.Equal(serial, Assert.Single(Assert.Single(await shop.Trace.FindAsync("0117", Cancel)).Pieces).Serial);
        Assert.Empty(Assert.Single(await shop.Trace.FindAsync("0200", Cancel)).Pieces);
    }

    [Fact]
    public async Task A_correction_of_the_ohms_or_of_the_tag_moves_no_coil_to_another_spool()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await BatchAsync(shop);
        CoilEntry first = WorkingShop.Entry(batch, "C-001", "6.81 k"),
            second = WorkingShop.Entry(batch, "C-002", "6.18 k");
        await shop.KeptAsync(first);
        await shop.KeptAsync(second);
        await TakeAsync(shop, batch, "B1");
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.18 k") with { Supersedes = first.Id, Reason = "misread" });
        await CorrectionTests.CorrectedAsync(
            shop,
            new CoilCorrection
            {
                Id = Guid.NewGuid(),
                BatchId = batch.Id,
                Tag = "C-002",
                NewTag = "C-007",
                Reason = "wrong tag",
            }
        );

        BatchStatus standing = await shop.StatusAsync(batch);
        Assert.Equal([("C-001", "A1"), ("C-007", "A1")], standing.Coils.Select(coil => (coil.Tag, coil.Origin.Spool)));
        Assert.All(standing.Coils, coil => Assert.Equal("", coil.Origin.Doubt));
        Assert.Equal((2, 0), (await UsesAsync(shop, "A1"), await UsesAsync(shop, "B1")));
    }

    [Fact]
    public async Task A_coil_that_was_begun_anew_under_the_tag_is_a_new_one_and_nothing_is_asked()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await UndoneAfterAnotherSpoolAsync(shop);
        await BatchEventServiceTests.SayAsync(shop, batch, BatchEventKind.Released);
        await BatchEventServiceTests.SayAsync(shop, batch, BatchEventKind.Begun, tag: "C-002");
        shop.Clock.Advance(TimeSpan.FromMinutes(5));
        Assert.Empty((await shop.StatusAsync(batch)).Questions);
        CoilDossier coil = await shop.KeptAsync(WorkingShop.Entry(batch, "C-002", "6.19 k"));
        Assert.Equal(("B1", ""), (coil.Origin.Spool, coil.Origin.Doubt));
    }

    [Fact]
    public async Task On_the_same_spool_nothing_is_asked_and_an_answer_that_is_none_is_refused()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await BatchAsync(shop);
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.18 k"));
        await UndoAsync(shop, batch);
        Assert.Empty((await shop.StatusAsync(batch)).Questions);
        CoilEntryOutcome refused = await shop.Room.RecordCoilAsync(
            WorkingShop.Entry(batch, "C-001", "6.18 k") with
            {
                Coil = "perhaps",
            },
            Cancel
        );
        Assert.Equal("coil", Assert.Single(refused.Problems).Field);
        Assert.Equal("", (await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.18 k"))).Origin.Doubt);
    }

    private static async Task<BatchRecord> BatchAsync(WorkingShop shop)
    {
        foreach (string label in new[] { "A1", "B1" })
        {
            Assert.Empty(await shop.Stock.TakeInAsync(Spool(label), "", "", Cancel));
        }

        RevisionRecord revision = await shop.ReleasedAsync();
        BatchRecord batch = new(
            Guid.NewGuid(),
            "H-12",
            revision.RecipeId,
            revision.Number,
            "main",
            24,
            "C-",
            "A1",
            "Winder 2",
            "Mara",
            shop.Clock.GetUtcNow()
        );
        Assert.True(await shop.Records.Batches.AddAsync(batch, Cancel));
        return batch;
    }

    private static async Task<BatchRecord> UndoneAfterAnotherSpoolAsync(WorkingShop shop)
    {
        BatchRecord batch = await BatchAsync(shop);
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.18 k"));
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-002", "6.18 k"));
        await TakeAsync(shop, batch, "B1");
        await UndoAsync(shop, batch);
        return batch;
    }

    private static async Task UndoAsync(WorkingShop shop, BatchRecord batch)
    {
        Assert.Empty((await shop.Room.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel)).Problems);
        shop.Clock.Advance(TimeSpan.FromSeconds(30));
    }

    private static async Task TakeAsync(WorkingShop shop, BatchRecord batch, string label)
    {
        Assert.Empty(
            await shop.Run.RecordEventAsync(
                BatchEventServiceTests.Said(batch, BatchEventKind.SpoolTaken) with
                {
                    Spool = label,
                    Choice = "hold-turns",
                },
                Cancel
            )
        );
        shop.Clock.Advance(TimeSpan.FromSeconds(30));
    }

    private static SpoolRecord Spool(string label) =>
        new()
        {
            Id = Guid.NewGuid(),
            Label = label,
            Gauge = "42",
            Insulation = "plain-enamel",
            Build = "single",
            TimeUtc = default,
        };

    private static async Task<int> UsesAsync(WorkingShop shop, string label) => (await shop.Stock.StatusAsync(label, Cancel))!.Uses.Count;
}
