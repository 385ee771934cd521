using Coilwright.Workshop.Batches;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Tests.Pieces;

namespace Coilwright.Workshop.Tests.Winding;

/// <summary>What was read of a coil can be put right, and stays on record.</summary>
public sealed class CorrectionTests
{
    private static CancellationToken Cancel => WorkingShop.Cancel;

    [Fact]
    public async Task Ohms_inductance_temperature_and_turns_are_corrected_at_once_and_the_old_readings_stay_with_reason_and_person()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilDossier coil = await shop.KeptAsync(
            WorkingShop.Entry(batch, "C-001", "6.81 k", "25 °C") with
            {
                Inductance = "2.14 H",
                Turns = "7000",
            }
        );
        CoilCorrection correction = Of(batch, coil, written =>
            written.At.Length > 0
                ? written with
                {
                    Value = "2.41 H",
                    At = "120 Hz",
                }
                : written with
                {
                    Value = "6.18 k",
                    Temperature = "20",
                    Turns = "8000",
                }
        );

        CoilEntryOutcome looked = await shop.Room.LookAtCorrectionAsync(correction, Cancel);
        Assert.Equal(2, (await shop.ReadingsAsync(batch)).Count); // looking stores nothing
        CoilDossier after = await CorrectedAsync(shop, correction);

        Assert.Equal("6.18 kΩ at 20.0 °C → 6.180 kΩ at 20 °C; 2.41 H at 120 Hz", looked.Echo);
        Assert.Equal(VerdictKind.Pass, after.Verdict.Kind);
        Assert.Equal((6180, 20, 8000), (after.InForce[0].Si!.Value, after.InForce[0].TemperatureC!.Value, after.InForce[0].Turns!.Value));
        Assert.Equal((2.41, 120), (after.InForce[1].Si!.Value, after.InForce[1].AtHz!.Value));
        Assert.Equal(["6.81 k", "2.14 H"], after.Superseded.Select(reading => reading.Typed));
        Assert.All(after.InForce, reading => Assert.Equal(("figures swapped", "Ines"), (reading.Reason, reading.Person)));
        Assert.Equal(coil.InForce.Select(reading => (Guid?)reading.Id), after.InForce.Select(reading => reading.Supersedes));
    }

    [Fact]
    public async Task Sent_twice_it_corrects_once_and_with_other_figures_under_the_same_id_it_is_refused()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilDossier coil = await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.81 k"));
        CoilCorrection correction = Of(batch, coil, written => written with { Value = "6.18 k" });
        CoilEntryOutcome first = await shop.Room.CorrectCoilAsync(correction, Cancel),
            again = await shop.Room.CorrectCoilAsync(correction, Cancel);
        shop.Clock.Advance(TimeSpan.FromMinutes(1));
        CoilEntryOutcome other = await shop.Room.CorrectCoilAsync(
            correction with
            {
                Readings = [correction.Readings[0] with { Value = "6.17 k" }],
            },
            Cancel
        );

        Assert.Equal((false, true), (first.Duplicate, again.Duplicate));
        Assert.True(other.IsConflict);
        Assert.Equal(2, (await shop.ReadingsAsync(batch)).Count);
    }

    [Fact]
    public async Task Undo_takes_a_correction_back_whole()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilDossier coil = await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.18 k") with { Inductance = "2.41 H" });
        await CorrectedAsync(shop, Of(batch, coil, written => written) with { NewTag = "C-009" });
        await shop.Room.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel);
        CoilDossier back = Assert.Single((await shop.StatusAsync(batch)).Coils);
        Assert.Equal(("C-001", 2), (back.Tag, back.InForce.Count));
    }

    [Fact]
    public async Task Undo_of_a_correction_that_took_a_reading_away_brings_it_back_once()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilDossier coil = await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.18 k") with { Inductance = "2.41 H" });
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-002", "6.19 k"));
        CoilDossier less = await CorrectedAsync(
            shop,
            Of(batch, coil, written => written.Value == "2.41 H" ? written with { Value = "" } : written)
        );
        Assert.Equal("6.18 k", Assert.Single(less.InForce).Typed);
        Assert.Equal("the correction of C-001", (await shop.StatusAsync(batch)).UndoWords);

        Guid undo = Guid.NewGuid();
        CoilEntryOutcome undone = await shop.Room.UndoLastAsync(batch.Id, undo, "Mara", Cancel),
            again = await shop.Room.UndoLastAsync(batch.Id, undo, "Mara", Cancel);
        Assert.Equal((false, true, "C-001"), (undone.Duplicate, again.Duplicate, again.Coil!.Tag));
        Assert.Equal(["2.41 H", "6.18 k"], undone.Coil!.InForce.Select(reading => reading.Typed).Order(StringComparer.Ordinal));
        Assert.Equal(5, (await shop.ReadingsAsync(batch)).Count); // three readings, what took one away, what brought it back
        Assert.Equal(2, (await shop.StatusAsync(batch)).Coils.Count);

        await shop.Room.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel); // then the coil that was entered before the correction
        Assert.Equal("C-001", Assert.Single((await shop.StatusAsync(batch)).Coils).Tag);
        Assert.Equal("C-001", (await shop.StatusAsync(batch)).UndoWords);
        await shop.Room.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel); // and the whole first entry, what was brought back with it
        Assert.Empty((await shop.StatusAsync(batch)).Coils);
    }

    [Fact]
    public async Task Undo_takes_back_whole_what_changes_one_reading_and_takes_others_away()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.18 k") with { Inductance = "2.41 H" });
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.81 k"));
        CoilDossier coil = await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.20 k"));
        await CorrectedAsync(
            shop,
            Of(batch, coil, written => written with { Value = written.Value == "6.20 k" ? "6.21 k" : "" }) with
            {
                NewTag = "C-009",
            }
        );
        CoilDossier back = (await shop.Room.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel)).Coil!;
        Assert.Equal("C-001", back.Tag);
        Assert.Equal(["2.41 H", "6.18 k", "6.20 k", "6.81 k"], back.InForce.Select(reading => reading.Typed).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task One_undo_after_another_walks_back_through_every_correction()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilDossier coil = await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.18 k"));
        coil = await CorrectedAsync(shop, Of(batch, coil, written => written with { Value = "6.19 k" }));
        await CorrectedAsync(shop, Of(batch, coil, written => written with { Value = "6.20 k" }));
        Assert.Equal(
            "6.19 k",
            Assert.Single((await shop.Room.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel)).Coil!.InForce).Typed
        );
        Assert.Equal(
            "6.18 k",
            Assert.Single((await shop.Room.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel)).Coil!.InForce).Typed
        );
        Assert.Null((await shop.Room.UndoLastAsync(batch.Id, Guid.NewGuid(), "Mara", Cancel)).Coil);
    }

    /// <summary>Sent to the undo by mistake, the id of a correction is a conflict, also of one that took a reading away.</summary>
    [Fact]
    public async Task The_id_of_a_correction_is_no_undo()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilDossier coil = await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.18 k") with { Inductance = "2.41 H" });
        CoilCorrection correction = Of(batch, coil, written => written.Value == "2.41 H" ? written with { Value = "" } : written);
        await CorrectedAsync(shop, correction);
        Assert.True((await shop.Room.UndoLastAsync(batch.Id, correction.Id, "Mara", Cancel)).IsConflict);
    }

    [Fact]
    public async Task A_tag_is_corrected_for_the_whole_coil_and_its_place_in_the_run_stays()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilDossier first = await shop.KeptAsync(WorkingShop.Entry(batch, "C-003", "6.18 k") with { Inductance = "2.41 H" });
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-002", "6.19 k"));
        CoilDossier after = await CorrectedAsync(shop, Of(batch, first, written => written) with { NewTag = "c-1" });

        Assert.Equal(("C-001", 2, 2), (after.Tag, after.InForce.Count, after.Superseded.Count));
        Assert.Equal(["C-001", "C-002"], (await shop.StatusAsync(batch)).Coils.Select(coil => coil.Tag));
        ControlChart wall = (
            await new ControlChartService(shop.Records, shop.Machines, shop.Room.Dossiers).ShowAsync(new ChartSettingsForm(), Cancel)
        ).ControlChart!;
        Assert.Equal(["C-001", "C-002"], wall.Points.Select(point => point.Tag)); // on the charts too
    }

    [Fact]
    public async Task A_tag_that_is_there_already_or_in_a_piece_is_refused_in_words()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        CoilDossier coil = (await shop.Shop.StatusAsync(shop.Slugs)).Coils[0];
        string taken = Assert
            .Single(
                (
                    await shop.Shop.Room.CorrectCoilAsync(Of(shop.Slugs, coil, written => written) with { NewTag = "BS-002" }, Cancel)
                ).Problems
            )
            .Message;
        Assert.Contains("BS-002 is there already (3.98 k). Is it the same coil", taken, StringComparison.Ordinal);
        string serial = (await shop.MakeAsync(1)).Serial;
        string built = Assert
            .Single(
                (
                    await shop.Shop.Room.CorrectCoilAsync(Of(shop.Slugs, coil, written => written) with { NewTag = "BS-009" }, Cancel)
                ).Problems
            )
            .Message;
        Assert.Contains(serial, built, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_two_readings_that_disagree_the_wrong_one_is_corrected_or_taken_away()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.18 k"));
        CoilDossier held = await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.81 k"));
        Assert.Equal(VerdictKind.Hold, held.Verdict.Kind);
        CoilCorrection empty = Of(batch, held, written => written with { Value = "" });
        Assert.Contains((await shop.Room.CorrectCoilAsync(empty, Cancel)).Problems, problem =>
            problem.Message.Contains("one reading at least", StringComparison.Ordinal)
        );
        CoilDossier after = await CorrectedAsync(
            shop,
            Of(batch, held, written => written.Value == "6.81 k" ? written with { Value = "" } : written)
        );
        Assert.Equal((VerdictKind.Pass, 1, 1), (after.Verdict.Kind, after.InForce.Count, after.Superseded.Count));
    }

    [Fact]
    public async Task Every_slip_in_a_correction_is_told_at_once_and_nothing_is_stored()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilDossier coil = await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.81 k"));
        Assert.Equal(
            ["resistance", "reason"],
            await FieldsAsync(Of(batch, coil, written => written with { Value = "six" }) with { Reason = " " })
        );
        Assert.Equal(["resistance"], await FieldsAsync(Of(batch, coil, written => written with { Temperature = "400 °C" })));
        Assert.Equal(["reading"], await FieldsAsync(Of(batch, coil, written => written))); // nothing was changed
        Assert.Equal(["tag"], await FieldsAsync(Of(batch, coil, written => written) with { Tag = "C-009" }));
        Assert.Single(await shop.ReadingsAsync(batch));

        async Task<string[]> FieldsAsync(CoilCorrection correction) =>
            [.. (await shop.Room.CorrectCoilAsync(correction, Cancel)).Problems.Select(problem => problem.Field)];
    }

    [Fact]
    public async Task A_reading_that_somebody_corrected_meanwhile_is_not_corrected_over()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilDossier coil = await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.81 k"));
        await CorrectedAsync(shop, Of(batch, coil, written => written with { Value = "6.18 k" }));
        CoilEntryOutcome late = await shop.Room.CorrectCoilAsync(Of(batch, coil, written => written with { Value = "6.20 k" }), Cancel);
        Assert.Contains(late.Problems, problem => problem.Message.Contains("meanwhile", StringComparison.Ordinal));
    }

    internal static async Task<CoilDossier> CorrectedAsync(WorkingShop shop, CoilCorrection correction)
    {
        CoilEntryOutcome outcome = await shop.Room.CorrectCoilAsync(correction, Cancel);
        Assert.Empty(outcome.Problems);
        shop.Clock.Advance(TimeSpan.FromSeconds(30));
        return outcome.Coil!;
    }

    private static CoilCorrection Of(BatchRecord batch, CoilDossier coil, Func<ReadingAsWritten, ReadingAsWritten> change) =>
        new()
        {
            Id = Guid.NewGuid(),
            BatchId = batch.Id,
            Tag = coil.Tag,
            Readings = [.. coil.InForce.Select(ReadingAsWritten.Of).Select(change)],
            Reason = "figures swapped",
            Person = "Ines",
        };
}
