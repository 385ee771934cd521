using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Tests.Winding;

/// <summary>A name points at one thing: batches have names of their own, and their spools and winders are on record.</summary>
public sealed class BatchNamesTests
{
    private const string Winder = """{ "format": "coilwright.machine/1", "name": "Winder 2", "kind": "hand-guided" }""";

    private static CancellationToken Cancel => WorkingShop.Cancel;

    [Theory]
    [InlineData("H-12")]
    [InlineData(" h-12 ")]
    [InlineData("H-12\t")]
    public async Task A_second_batch_of_a_name_is_refused(string name)
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        RevisionRecord revision = await shop.ReleasedAsync();
        BatchRecord first = Batch(revision, "H-12"),
            second = Batch(revision, name);
        Assert.Empty(await shop.Room.BeginBatchAsync(first, Cancel));
        Assert.Empty(await shop.Room.BeginBatchAsync(first, Cancel)); // sent twice

        Problem problem = Assert.Single(await shop.Room.BeginBatchAsync(second, Cancel));

        Assert.Equal("name", problem.Field);
        Assert.Contains("begun", problem.Message, StringComparison.Ordinal);
        Assert.False(await shop.Records.Batches.AddAsync(second, Cancel)); // nor past the rule, by two at one moment
        Assert.Single(await shop.Records.Batches.AllAsync(Cancel));
        // a stroke stands between batch and tag
        Assert.Equal("name", Assert.Single(await shop.Room.BeginBatchAsync(Batch(revision, "H/13"), Cancel)).Field);
    }

    [Fact]
    public async Task Unknown_spools_and_winders_are_refused_with_the_near_names_and_known_ones_are_written_as_on_record()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        RevisionRecord revision = await shop.ReleasedAsync();
        Assert.Empty(await shop.Machines.KeepAsync(Guid.NewGuid(), Winder, "Joss", Cancel));
        await shop.EnsureSpoolAsync("0117");
        await shop.EnsureSpoolAsync("0121");

        IReadOnlyList<Problem> problems = await shop.Room.BeginBatchAsync(
            Batch(revision, "H-1") with
            {
                Spool = "0118",
                Machine = "Winder 77",
            },
            Cancel
        );

        Assert.Equal(["spool", "machine"], problems.Select(problem => problem.Field));
        Assert.StartsWith("0117, 0121", problems[0].Allowed, StringComparison.Ordinal);
        Assert.StartsWith("Winder 2", problems[1].Allowed, StringComparison.Ordinal);
        Assert.Empty(await shop.Records.Batches.AllAsync(Cancel));
        Assert.Empty(await shop.Room.BeginBatchAsync(Batch(revision, "H-1") with { Spool = " 0117", Machine = "winder 2" }, Cancel));
        BatchRecord kept = Assert.Single(await shop.Records.Batches.AllAsync(Cancel));
        Assert.Equal(("0117", "Winder 2"), (kept.Spool, kept.Machine));
        Assert.Equal(
            "spool",
            Assert
                .Single(
                    await shop.Run.RecordEventAsync(
                        BatchEventServiceTests.Said(kept, BatchEventKind.SpoolTaken) with
                        {
                            Spool = "9999",
                            Choice = "hold-turns",
                        },
                        Cancel
                    )
                )
                .Field
        );
        Assert.Equal(
            "machine",
            Assert
                .Single(
                    await shop.Run.RecordEventAsync(
                        BatchEventServiceTests.Said(kept, BatchEventKind.Begun) with
                        {
                            Machine = "Winder 77",
                        },
                        Cancel
                    )
                )
                .Field
        );
        Assert.Empty(
            await shop.Run.RecordEventAsync(
                BatchEventServiceTests.Said(kept, BatchEventKind.SpoolTaken) with
                {
                    Spool = "0121",
                    Choice = "hold-turns",
                },
                Cancel
            )
        );
    }

    [Fact]
    public async Task A_winder_is_added_by_its_name_and_once()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        Assert.Empty(await shop.Machines.AddAsync(Guid.NewGuid(), "Winder 3", "Joss", Cancel));
        Assert.Equal("winderName", Assert.Single(await shop.Machines.AddAsync(Guid.NewGuid(), "winder  3", "Joss", Cancel)).Field);
        Assert.Equal("winderName", Assert.Single(await shop.Machines.AddAsync(Guid.NewGuid(), " ", "Joss", Cancel)).Field);
        Assert.Null(Assert.Single(await shop.Machines.ListAsync(Cancel)).Counter);
    }

    /// <summary>A file from before names were one of a kind: both batches work on, and both are found.</summary>
    [Fact]
    public async Task A_shop_that_holds_two_batches_of_a_name_keeps_both()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord first = await shop.BatchAsync(),
            second = await TwinAsync(shop, first);
        await shop.ReopenAsync();
        await shop.KeptAsync(WorkingShop.Entry(first, "C-001", "6.18 k"));
        await shop.KeptAsync(WorkingShop.Entry(second, "C-001", "6.20 k"));
        Assert.Empty(await shop.Run.RecordEventAsync(BatchEventServiceTests.Said(second, BatchEventKind.Released), Cancel));

        TraceService trace = new(shop.Records, new Workshop.Pieces.PieceService(shop.Records, shop.Clock), shop.Room.Dossiers);
        IReadOnlyList<TraceHit> batches = await trace.FindAsync("h-12", Cancel),
            coils = await trace.FindAsync("H-12/C-001", Cancel),
            tags = await trace.FindAsync("C-001", Cancel);

        Guid[] both = [.. new[] { first.Id, second.Id }.Order()];
        Assert.Equal(both, batches.Where(hit => hit.Kind == "batch").Select(hit => hit.Id!.Value).Order());
        Assert.Equal(both, coils.Select(hit => hit.Id!.Value).Order());
        Assert.Equal(both, tags.Select(hit => hit.Id!.Value).Order());
        Assert.All(tags, hit => Assert.Contains("Harbour bridge A", hit.Words, StringComparison.Ordinal));
        Assert.Null(new SearchAnswer("C-001", tags, [], 0).Only);
    }

    private static async Task<BatchRecord> TwinAsync(WorkingShop shop, BatchRecord first)
    {
        BatchRecord other = first with { Id = Guid.NewGuid(), Name = "H-12 twin" };
        Assert.True(await shop.Records.Batches.AddAsync(other, Cancel));
        await shop.ExecuteAsync("DROP TRIGGER IF EXISTS Batches_no_update; UPDATE Batches SET Name = 'H-12' WHERE Name = 'H-12 twin'");
        return (await shop.Records.Batches.FindAsync(other.Id, Cancel))!;
    }

    private static BatchRecord Batch(RevisionRecord revision, string name) =>
        new(Guid.NewGuid(), name, revision.RecipeId, revision.Number, "main", 24, "C-", "", "", "Mara", default);
}
