using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Winding;

public sealed class WindingServiceTests
{
    private static CancellationToken Cancel => WorkingShop.Cancel;

    [Fact]
    public async Task Story_4_the_next_tag_is_proposed_from_first_to_last()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync(quantity: 4);
        List<string?> proposed = [(await shop.StatusAsync(batch)).NextTag];
        while (proposed[^1] is { } tag)
        {
            CoilEntryOutcome outcome = await shop.Room.RecordCoilAsync(WorkingShop.Entry(batch, tag, "6.18 k"), Cancel);
            proposed.Add(outcome.NextTag);
        }

        Assert.Equal(["C-001", "C-002", "C-003", "C-004", null], proposed);
    }

    [Fact]
    public async Task Skipped_tags_are_proposed_at_the_end_and_a_tag_is_tidied()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync(quantity: 3);
        Assert.Equal("C-002", (await shop.KeptAsync(WorkingShop.Entry(batch, " c-2 ", "6.18 k"))).Tag);
        Assert.Equal("C-003", (await shop.StatusAsync(batch)).NextTag);
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-003", "6.18 k"));
        Assert.Equal("C-001", (await shop.StatusAsync(batch)).NextTag);
    }

    [Fact]
    public async Task An_entry_sent_twice_is_kept_once_even_when_the_room_has_changed()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilEntry entry = WorkingShop.Entry(batch, "C-001", "6.30 k", "") with { Inductance = "2.41 H" };
        CoilEntryOutcome first = await shop.Room.RecordCoilAsync(entry, Cancel);
        await shop.Room.SetRoomTemperatureAsync("30", "Mara", Cancel);
        CoilEntryOutcome second = await shop.Room.RecordCoilAsync(entry, Cancel);
        Assert.Equal((false, true), (first.Duplicate, second.Duplicate));
        Assert.Equal((first.Echo, first.NextTag), (second.Echo, second.NextTag));
        Assert.Equal(2, (await shop.ReadingsAsync(batch)).Count); // ohms and henries, once each
        Assert.Equal(
            "id",
            Assert.Single((await shop.Room.RecordCoilAsync(entry with { Resistance = "6.31 k", Inductance = "" }, Cancel)).Problems).Field
        );
    }

    [Fact]
    public async Task An_id_that_comes_again_with_anything_else_in_it_is_refused_and_nothing_is_stored()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilEntry entry = WorkingShop.Entry(batch, "C-001", "6.30 k", "25 °C") with { Inductance = "2.41 H", Turns = "8000" };
        await shop.KeptAsync(entry);
        CoilEntry[] others =
        [
            entry with
            {
                Temperature = "35 °C",
            },
            entry with
            {
                Resistance = "6.31 k",
            },
            entry with
            {
                Inductance = "2.14 H",
            },
            entry with
            {
                InductanceAt = "120 Hz",
            },
            entry with
            {
                Turns = "7000",
            },
            entry with
            {
                Tag = "C-002",
            },
            entry with
            {
                Person = "Ines",
            },
            entry with
            {
                Inductance = "",
            },
        ];
        foreach (CoilEntry other in others)
        {
            CoilEntryOutcome outcome = await shop.Room.RecordCoilAsync(other, Cancel);
            Assert.True(outcome.IsConflict, $"{other}");
        }

        Assert.True((await shop.Room.RecordCoilAsync(entry, Cancel)).Duplicate);
        Assert.True((await shop.Room.UndoLastAsync(batch.Id, entry.Id, "Mara", Cancel)).IsConflict); // an undo needs an id of its own
        Assert.Equal(2, (await shop.ReadingsAsync(batch)).Count);
    }

    [Fact]
    public async Task Sent_eight_times_at_once_it_is_still_kept_once()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilEntry entry = WorkingShop.Entry(batch, "C-001", "6.18 k");
        CoilEntryOutcome[] outcomes = await Task.WhenAll(
            Enumerable.Range(0, 8).Select(_ => Task.Run(() => shop.Room.RecordCoilAsync(entry, Cancel), Cancel))
        );
        Assert.All(outcomes, outcome => Assert.Empty(outcome.Problems));
        Assert.Single(outcomes, outcome => !outcome.Duplicate);
        Assert.Single(await shop.ReadingsAsync(batch));
    }

    [Theory]
    [InlineData("6.18 k", "6.40 k", VerdictKind.Hold)]
    [InlineData("6.18 k", "open", VerdictKind.Hold)]
    [InlineData("6.180 k", "6.185 k", VerdictKind.Pass)] // 0.08 % apart
    [InlineData("6.180 k", "6.195 k", VerdictKind.Hold)] // 0.24 %
    public async Task Two_browsers_on_one_coil_overwrite_nothing(string one, string other, VerdictKind kind)
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await Task.WhenAll(
            shop.Room.RecordCoilAsync(WorkingShop.Entry(batch, "C-001", one), Cancel),
            shop.Room.RecordCoilAsync(WorkingShop.Entry(batch, "C-001", other), Cancel)
        );
        CoilDossier coil = Assert.Single((await shop.StatusAsync(batch)).Coils);
        Assert.Equal(
            new[] { one, other }.Order(StringComparer.Ordinal),
            coil.InForce.Select(reading => reading.Typed).Order(StringComparer.Ordinal)
        );
        Assert.Equal(kind, coil.Verdict.Kind);
        Assert.Equal(kind == VerdictKind.Hold, string.Join(' ', coil.Verdict.Reasons).Contains("disagree", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_chain_of_corrections_leaves_the_last_in_force_and_every_one_on_record()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilEntry first = WorkingShop.Entry(batch, "C-001", "7.18 k") with { Inductance = "2.41 H" };
        CoilEntry second = WorkingShop.Entry(batch, "C-001", "6.81 k") with { Supersedes = first.Id, Reason = "misread" };
        CoilEntry third = WorkingShop.Entry(batch, "C-001", "6.18 k") with
        {
            Supersedes = second.Id,
            Reason = "figures swapped",
            Inductance = "2.40 H",
        };
        await shop.KeptAsync(first);
        await shop.KeptAsync(second);
        CoilDossier coil = await shop.KeptAsync(third);

        Assert.Equal(["6.18 k", "2.40 H"], coil.InForce.Select(reading => reading.Typed));
        Assert.Equal(["7.18 k", "2.41 H", "6.81 k"], coil.Superseded.Select(reading => reading.Typed));
        Assert.Equal(VerdictKind.Pass, coil.Verdict.Kind);
        CoilEntryOutcome late = await shop.Room.RecordCoilAsync(
            WorkingShop.Entry(batch, "C-001", "6.20 k") with
            {
                Supersedes = first.Id,
                Reason = "me too",
            },
            Cancel
        );
        Assert.Equal("supersedes", Assert.Single(late.Problems).Field);
        Assert.Equal(
            "reason",
            Assert
                .Single(
                    (
                        await shop.Room.RecordCoilAsync(WorkingShop.Entry(batch, "C-001", "6.20 k") with { Supersedes = third.Id }, Cancel)
                    ).Problems
                )
                .Field
        );
        Assert.Equal(5, (await shop.ReadingsAsync(batch)).Count);
    }

    [Fact]
    public async Task Undo_takes_the_last_entry_away_whole_and_proposes_its_tag_again()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.18 k"));
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-002", "9.99 k") with { Inductance = "2.41 H" });
        Guid undo = Guid.NewGuid();
        CoilEntryOutcome undone = await shop.Room.UndoLastAsync(batch.Id, undo, "Mara", Cancel),
            again = await shop.Room.UndoLastAsync(batch.Id, undo, "Mara", Cancel);

        Assert.Equal((false, true, "C-002"), (undone.Duplicate, again.Duplicate, undone.NextTag));
        BatchStatus standing = await shop.StatusAsync(batch);
        Assert.Equal(("C-001", "C-002"), (Assert.Single(standing.Coils).Tag, standing.NextTag));
        Assert.Equal(5, (await shop.ReadingsAsync(batch)).Count); // three readings and two withdrawals: nothing is erased
        CoilDossier redone = await shop.KeptAsync(WorkingShop.Entry(batch, "C-002", "6.19 k"));
        Assert.Equal((1, 2), (redone.InForce.Count, redone.Superseded.Count));
    }

    [Fact]
    public async Task Undo_of_a_correction_puts_the_reading_before_back_in_force()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilEntry first = WorkingShop.Entry(batch, "C-001", "6.18 k");
        await shop.KeptAsync(first);
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "9.99 k") with { Supersedes = first.Id, Reason = "slip" });
        CoilDossier coil = (await shop.Room.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel)).Coil!;
        Assert.Equal(("6.18 k", VerdictKind.Pass), (Assert.Single(coil.InForce).Typed, coil.Verdict.Kind));
        // a second undo takes the entry itself away
        Assert.Null((await shop.Room.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel)).Coil);
        Assert.Equal("batch", Assert.Single((await shop.Room.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel)).Problems).Field);
    }

    [Fact]
    public async Task A_batch_needs_a_released_revision_one_of_its_coils_and_one_to_ten_thousand_coils()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        RevisionRecord released = await shop.ReleasedAsync();
        await shop.Book.SaveAsync(released.RecipeId, WorkingShop.Harbour(8050), "hotter", "Joss", 1, Cancel);
        BatchRecord good = new(Guid.NewGuid(), "H-1", released.RecipeId, 1, "main", 10_000, "C-", "", "", "Mara", shop.Clock.GetUtcNow());
        Assert.Equal(["quantity"], await FieldsAsync(good with { Quantity = 0 }));
        Assert.Equal(["quantity"], await FieldsAsync(good with { Quantity = 10_001 }));
        Assert.Equal(["revision"], await FieldsAsync(good with { RevisionNumber = 2 })); // a draft
        Assert.Equal(["name", "coil"], await FieldsAsync(good with { Name = "", CoilName = "mane" }));
        Assert.Equal(["revision"], await FieldsAsync(good with { RecipeId = Guid.NewGuid() }));
        Assert.Empty(await shop.Records.Batches.AllAsync(Cancel));
        Assert.Empty(await FieldsAsync(good));
        Assert.Null(await shop.Room.StatusAsync(Guid.NewGuid(), Cancel));

        async Task<string[]> FieldsAsync(BatchRecord batch) =>
            [.. (await shop.Room.BeginBatchAsync(batch, Cancel)).Select(problem => problem.Field)];
    }

    [Fact]
    public async Task A_recipe_without_a_target_is_judged_by_its_forecast()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync(await shop.ReleasedAsync(WorkingShop.Harbour(targets: "{}")));
        CoilDossier good = await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.2 k")),
            far = await shop.KeptAsync(WorkingShop.Entry(batch, "C-002", "3.1 k"));
        Assert.Equal((VerdictKind.Pass, VerdictKind.Reject), (good.Verdict.Kind, far.Verdict.Kind));
        Assert.Contains("forecast", good.Verdict.Reasons[0], StringComparison.Ordinal);
    }
}
