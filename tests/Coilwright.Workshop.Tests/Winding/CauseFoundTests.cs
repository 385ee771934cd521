using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Tests.Winding;

/// <summary>What a coil really had is recorded once, can be taken back, and moves the causes of the shop's next coils.</summary>
public sealed class CauseFoundTests
{
    private static CancellationToken Cancel => WorkingShop.Cancel;

    [Fact]
    public async Task It_is_kept_by_key_or_label_stands_in_the_history_and_counts_once()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.40 k"));
        BatchEventEntry said = Found(batch, "c-001", "Bad joint");
        Assert.Empty(await shop.Run.RecordEventAsync(said, Cancel));
        Assert.Empty(await shop.Run.RecordEventAsync(said, Cancel)); // sent twice
        Assert.NotEmpty(await shop.Run.RecordEventAsync(said with { Choice = "thin wire" }, Cancel)); // the same id says something else

        CauseFound kept = Assert.Single(await shop.Records.Batches.CausesFoundAsync(Cancel));
        Assert.Equal(("C-001", "high-resistance-joint"), (kept.Tag, kept.Cause));
        Assert.Equal("C-001 really had bad joint", (await shop.Run.StatusAsync(batch.Id, Cancel))!.History.InForce.Single().Sentence);
    }

    [Theory]
    [InlineData("C-001", "gremlins", "choice")]
    [InlineData("C-001", "", "choice")]
    [InlineData("C-009", "bad joint", "tag")]
    public async Task What_is_no_cause_or_no_coil_is_refused_with_what_is_allowed(string tag, string cause, string field)
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.40 k"));
        Problem problem = Assert.Single(await shop.Run.RecordEventAsync(Found(batch, tag, cause), Cancel));
        Assert.Equal(field, problem.Field);
        Assert.True(field == "tag" || problem.Allowed!.Contains("shorted turns", StringComparison.Ordinal));
        Assert.Empty(await shop.Records.Batches.CausesFoundAsync(Cancel));
    }

    [Fact]
    public async Task Ten_mended_joints_make_a_joint_likelier_in_another_batch_and_an_undo_takes_one_back()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord first = await shop.BatchAsync();
        for (int n = 1; n <= 12; n++)
        {
            await shop.KeptAsync(WorkingShop.Entry(first, $"C-{n:000}", n == 12 ? "6.40 k" : "6.18 k"));
        }

        double before = await JointAsync(shop, first);
        for (int n = 1; n <= 10; n++)
        {
            Assert.Empty(await shop.Run.RecordEventAsync(Found(first, $"C-{n:000}", "bad joint"), Cancel));
        }

        double after = await JointAsync(shop, first);
        Assert.True(after > 1.5 * before, $"{before} before, {after} after");
        Assert.Empty(await shop.Run.UndoLastAsync(first.Id, Guid.NewGuid(), "Mara", Cancel));
        double undone = await JointAsync(shop, first);
        Assert.True(undone < after && undone > before, $"{before}, {undone}, {after}");
        Assert.Equal(9, (await shop.Records.Batches.CausesFoundAsync(Cancel)).Count);
    }

    private static async Task<double> JointAsync(WorkingShop shop, BatchRecord batch) =>
        (await shop.StatusAsync(batch)).Coils[^1].Verdict.Causes.First(cause => cause.Name == "high-resistance-joint").Probability;

    private static BatchEventEntry Found(BatchRecord batch, string tag, string cause) =>
        new()
        {
            Id = Guid.NewGuid(),
            BatchId = batch.Id,
            Kind = BatchEventKind.CauseFound,
            Tag = tag,
            Choice = cause,
            Person = "Mara",
        };
}
