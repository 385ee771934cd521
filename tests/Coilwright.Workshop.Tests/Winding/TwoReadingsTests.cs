using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Interpretations;
using Coilwright.Workshop.Pieces;

namespace Coilwright.Workshop.Tests.Winding;

/// <summary>
/// A figure that can mean two things is stored never, at once or late: both readings come back, and each is read as itself.
/// </summary>
public sealed class TwoReadingsTests
{
    private static CancellationToken Cancel => WorkingShop.Cancel;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Ohms_with_two_readings_are_asked_about_and_the_chosen_one_is_stored(bool isLate)
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        LateEntry? late = isLate ? new LateEntry(shop.Clock.GetUtcNow().AddMinutes(-9), shop.Clock.GetUtcNow()) : null;
        CoilEntry entry = WorkingShop.Entry(batch, "C-001", "62,100");
        CoilEntryOutcome asked = await shop.Room.RecordCoilAsync(entry, Cancel, late);
        Problem problem = Assert.Single(asked.Problems);
        Assert.Equal("resistance", problem.Field);
        Assert.Equal(["62.100 Ω", "62100 Ω"], problem.Readings);
        Assert.Empty(await shop.ReadingsAsync(batch));

        foreach (
            (string tag, string chosen, double ohm) in new[]
            {
                ("C-001", problem.Readings![1], 62_100.0),
                ("C-002", problem.Readings[0], 62.1),
            }
        )
        {
            Assert.Empty(
                (await shop.Room.RecordCoilAsync(entry with { Id = Guid.NewGuid(), Tag = tag, Resistance = chosen }, Cancel, late)).Problems
            );
            Assert.Equal(ohm, (await shop.ReadingsAsync(batch))[^1].Si!.Value, 1e-9);
        }
    }

    [Fact]
    public async Task What_goes_with_a_late_reading_is_asked_about_too_and_a_slip_is_still_kept_and_marked()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        LateEntry late = new(shop.Clock.GetUtcNow().AddMinutes(-9), shop.Clock.GetUtcNow());
        CoilEntry entry = WorkingShop.Entry(batch, "C-001", "6.18 k") with { Inductance = "2.4 H", InductanceAt = "1,200 Hz" };
        Problem problem = Assert.Single((await shop.Room.RecordCoilAsync(entry, Cancel, late)).Problems);
        Assert.Equal("inductanceAt", problem.Field);
        Assert.Equal(["1.200 Hz", "1200 Hz"], problem.Readings);
        Assert.Empty(await shop.ReadingsAsync(batch));
        Assert.Empty((await shop.Room.RecordCoilAsync(entry with { InductanceAt = "often" }, Cancel, late)).Problems);
        Assert.Contains("not understood", (await shop.ReadingsAsync(batch))[^1].Flag, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("6,210")]
    [InlineData("6.210")]
    [InlineData("62,100")]
    [InlineData("700,500")]
    [InlineData("6,21k")]
    [InlineData("open")]
    [InlineData("abc")]
    public async Task The_page_says_of_a_coils_ohms_what_is_stored(string typed)
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        Interpretation said = FieldInterpreter.Read("entry.resistance", typed, (await shop.StatusAsync(batch)).Limits.Resistance.Nominal);
        CoilEntryOutcome kept = await shop.Room.RecordCoilAsync(WorkingShop.Entry(batch, "C-001", typed), Cancel);
        Assert.Equal(said.Readings, kept.Problems.SelectMany(problem => problem.Readings ?? []));
        bool isUnderstood = said.Echo.Length > 0 && said.Readings.Count == 0;
        Assert.Equal(isUnderstood, kept.Problems.Count == 0);
        if (isUnderstood)
        {
            Assert.Contains(kept.Echo.Split(" at ")[0], said.Echo, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_correction_with_two_readings_changes_nothing_until_one_is_chosen()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.18 k"));
        Guid reading = (await shop.ReadingsAsync(batch))[0].Id;
        CoilCorrection correction = new()
        {
            Id = Guid.NewGuid(),
            BatchId = batch.Id,
            Tag = "C-001",
            Reason = "misread",
            Readings = [new ReadingAsWritten(reading, "62,100", "20 °C", "", "")],
        };
        Assert.Contains(
            "62.100 Ω or 62100 Ω",
            Assert.Single((await shop.Room.CorrectCoilAsync(correction, Cancel)).Problems).Message,
            StringComparison.Ordinal
        );
        Assert.Single(await shop.ReadingsAsync(batch));
        CoilCorrection chosen = correction with { Readings = [new ReadingAsWritten(reading, "62100 Ω", "20 °C", "", "")] };
        Assert.Empty((await shop.Room.CorrectCoilAsync(chosen, Cancel)).Problems);
        Assert.Equal(62_100, (await shop.ReadingsAsync(batch))[^1].Si!.Value, 1e-9);
    }
}
