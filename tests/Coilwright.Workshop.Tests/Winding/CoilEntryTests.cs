using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Tests.Winding;

public sealed class CoilEntryTests
{
    private static CancellationToken Cancel => WorkingShop.Cancel;

    [Theory] // the story's figures, against a recipe of 6.18 kΩ ± 4 %: 5.933 to 6.427 kΩ
    [InlineData("6.30 k", "35 °C", 5949, VerdictKind.Pass)]
    [InlineData("8.314 kΩ", "30", 8000, VerdictKind.Reject)]
    [InlineData("6k30", "95 F", 5949, VerdictKind.Pass)] // 95 °F is 35 °C
    public async Task Story_2_ohms_are_compared_at_20_degrees(string ohms, string temperature, double at20C, VerdictKind kind)
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        CoilDossier coil = await shop.KeptAsync(WorkingShop.Entry(await shop.BatchAsync(), "C-001", ohms, temperature));
        Assert.Equal(kind, coil.Verdict.Kind);
        Assert.Equal(at20C, coil.Verdict.DcResistanceAt20C!.Value.Value, 0.5); // half of the last printed digit
    }

    [Theory]
    [InlineData("6.20 k", VerdictKind.Pass)] // inside even with 2 % either way
    [InlineData("6.40 k", VerdictKind.Hold)] // inside as it stands, outside if it was warm or cold
    [InlineData("6.50 k", VerdictKind.Hold)] // outside as it stands
    [InlineData("6.60 k", VerdictKind.Hold)] // outside at any room's temperature: fresh from the winder, most likely, and to be read again
    [InlineData("7.30 k", VerdictKind.Reject)] // outside whatever the temperature
    [InlineData("5.80 k", VerdictKind.Reject)]
    public async Task Story_2_without_a_temperature_the_value_is_kept_and_marked(string ohms, VerdictKind kind)
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilDossier coil = await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", ohms, ""));
        Assert.Equal(kind, coil.Verdict.Kind);
        Assert.Contains(coil.Verdict.Reasons, reason => reason.Contains("not recorded, so ±2 %", StringComparison.Ordinal));
        Assert.Null(Assert.Single(await shop.ReadingsAsync(batch)).TemperatureC);
        Assert.Equal(0.02, coil.Verdict.DcResistanceAt20C!.Value.High / coil.Verdict.DcResistanceAt20C.Value.Value - 1, 1e-9);
    }

    [Fact]
    public async Task Story_2_room_temperature_is_entered_once_and_holds_for_two_hours()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        Assert.Empty(await shop.Room.SetRoomTemperatureAsync("35 °C", "Mara", Cancel));
        Assert.Equal(
            5949,
            (await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.30 k", ""))).Verdict.DcResistanceAt20C!.Value.Value,
            0.5
        );

        shop.Clock.Advance(TimeSpan.FromMinutes(119));
        Assert.Equal(35, (await shop.StatusAsync(batch)).RoomC!.TemperatureC);
        shop.Clock.Advance(TimeSpan.FromMinutes(2));

        Assert.Null((await shop.StatusAsync(batch)).RoomC);
        Assert.Null((await shop.KeptAsync(WorkingShop.Entry(batch, "C-002", "6.30 k", ""))).InForce[0].TemperatureC);
    }

    [Theory]
    [InlineData("61")]
    [InlineData("-11 °C")]
    [InlineData("warm")]
    [InlineData("")]
    public async Task A_room_nobody_could_wind_in_is_asked_about(string typed)
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        Problem problem = Assert.Single(await shop.Room.SetRoomTemperatureAsync(typed, "Mara", Cancel));
        Assert.Equal(("room", "-10 °C to 60 °C"), (problem.Field, problem.Allowed));
        Assert.Null(await shop.Records.Room.LatestAsync(Cancel));
    }

    [Theory]
    [InlineData("-6.3 k")]
    [InlineData("-5")]
    [InlineData("1e9")]
    [InlineData("90 MΩ")]
    [InlineData("7..4k")]
    [InlineData("abc")]
    [InlineData("six")]
    public async Task What_no_coil_reads_is_refused_beside_its_field_and_makes_no_coil(string typed)
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        Problem problem = Assert.Single((await shop.Room.RecordCoilAsync(WorkingShop.Entry(batch, "C-001", typed), Cancel)).Problems);
        Assert.Equal(("resistance", typed), (problem.Field, problem.Understood));
        Assert.Contains("open", problem.Allowed, StringComparison.Ordinal);
        Assert.Empty(await shop.ReadingsAsync(batch));
        Assert.Equal("C-001", (await shop.StatusAsync(batch)).NextTag);
    }

    [Theory]
    [InlineData("-6.3 k")]
    [InlineData("six")]
    public async Task The_same_that_waited_on_a_tablet_is_kept_as_typed_flagged_and_held(string typed)
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        Workshop.Pieces.LateEntry late = new(shop.Clock.GetUtcNow().AddMinutes(-9), shop.Clock.GetUtcNow());
        CoilDossier coil = (await shop.Room.RecordCoilAsync(WorkingShop.Entry(batch, "C-001", typed), Cancel, late)).Coil!;
        ReadingRecord kept = Assert.Single(await shop.ReadingsAsync(batch));
        Assert.Equal(typed, kept.Typed);
        Assert.NotEqual("", kept.Flag);
        Assert.Equal(VerdictKind.Hold, coil.Verdict.Kind);
        Assert.Null(coil.Verdict.DcResistanceAt20C);
        Assert.Contains(typed, string.Join(' ', coil.Verdict.Reasons), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("7,432", 7432.0)]
    [InlineData("7.432 Ω", 7432.0)]
    [InlineData("7.432 k", 7432.0)]
    [InlineData("56.200", 56.2)] // a meter's own line: no coil of this recipe reads 56 kΩ either
    public async Task Ohms_are_thousands_where_a_coil_of_this_recipe_can_only_read_thousands(string typed, double ohm)
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", typed));
        ReadingRecord kept = Assert.Single(await shop.ReadingsAsync(batch));
        Assert.Equal((typed, ohm, ""), (kept.Typed, kept.Si!.Value, kept.Flag));
    }

    [Fact]
    public async Task What_can_mean_two_things_is_asked_before_anything_is_stored()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilEntryOutcome outcome = await shop.Room.RecordCoilAsync(
            WorkingShop.Entry(batch, "C-001", "6.18 k") with
            {
                Inductance = "2,400 mH",
            },
            Cancel
        );
        Problem problem = Assert.Single(outcome.Problems);
        Assert.Contains("2.400 mH or 2400 mH", problem.Message, StringComparison.Ordinal);
        Assert.Empty(await shop.ReadingsAsync(batch));
    }

    [Theory]
    [InlineData("abc", "", "", "temperature")]
    [InlineData("400 °C", "", "", "temperature")]
    [InlineData("", "many", "", "turns")]
    [InlineData("", "", "loud", "inductance")]
    public async Task A_companion_of_a_reading_that_is_no_value_is_refused_beside_its_field(
        string temperature,
        string turns,
        string inductance,
        string field
    )
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilEntry entry = WorkingShop.Entry(batch, "C-001", "6.18 k", temperature) with { Turns = turns, Inductance = inductance };
        Problem problem = Assert.Single((await shop.Room.RecordCoilAsync(entry, Cancel)).Problems);
        Assert.Equal((field, temperature + turns + inductance), (problem.Field, problem.Understood));
        Assert.Empty(await shop.ReadingsAsync(batch));
    }

    [Theory]
    [InlineData("open")]
    [InlineData("OL")]
    [InlineData("9.9E37")] // what a meter sends for over range
    public async Task An_open_coil_is_rejected_with_what_to_check_first(string typed)
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        CoilDossier coil = await shop.KeptAsync(WorkingShop.Entry(await shop.BatchAsync(), "C-001", typed));
        Assert.Equal((VerdictKind.Reject, "open", "open"), (coil.Verdict.Kind, coil.InForce[0].Flag, coil.Verdict.Causes[0].Name));
        Assert.Null(coil.InForce[0].Si);
    }

    [Fact]
    public async Task Kilo_ohms_typed_without_their_k_are_asked_about_not_rejected()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        CoilDossier coil = await shop.KeptAsync(WorkingShop.Entry(await shop.BatchAsync(), "C-001", "6.18"));
        Assert.Equal((VerdictKind.Hold, 6.18), (coil.Verdict.Kind, coil.InForce[0].Si!.Value));
        Assert.Contains("6.18k", coil.Verdict.Reasons[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_echo_says_what_was_understood()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilEntryOutcome outcome = await shop.Room.RecordCoilAsync(
            WorkingShop.Entry(batch, "C-001", "7k43", "23.5") with
            {
                Inductance = "2.41",
            },
            Cancel
        );
        Assert.Equal("7.43 kΩ at 23.5 °C → 7.329 kΩ at 20 °C; 2.41 H at 1.00 kHz", outcome.Echo); // 7430 / (1 + 0.00393 × 3.5)
        Assert.Equal(
            "7.43 kΩ, temperature not recorded, so ±2 %",
            (await shop.Room.RecordCoilAsync(WorkingShop.Entry(batch, "C-002", "7430 ", "") with { Resistance = "7.43k" }, Cancel)).Echo
        );
    }

    [Fact]
    public async Task A_request_that_names_no_batch_no_coil_or_no_value_is_refused_with_every_problem()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilEntry good = WorkingShop.Entry(batch, "C-001", "6.18 k");
        Assert.Equal(["batch"], await FieldsAsync(good with { BatchId = Guid.NewGuid() }));
        Assert.Equal(["tag", "resistance"], await FieldsAsync(good with { Tag = " ", Resistance = "" }));
        Assert.Equal(["reason", "supersedes"], await FieldsAsync(good with { Supersedes = Guid.NewGuid() }));
        Assert.Empty(await shop.ReadingsAsync(batch));

        async Task<string[]> FieldsAsync(CoilEntry entry) =>
            [.. (await shop.Room.RecordCoilAsync(entry, Cancel)).Problems.Select(problem => problem.Field)];
    }

    [Fact]
    public async Task Inductance_outside_its_target_does_not_pass_a_coil_whose_ohms_are_right()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilDossier good = await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.18 k") with { Inductance = "2.41 H" });
        CoilDossier low = await shop.KeptAsync(WorkingShop.Entry(batch, "C-002", "6.05 k") with { Inductance = "1.6 H" });
        CoilDossier elsewhere = await shop.KeptAsync(
            WorkingShop.Entry(batch, "C-003", "6.18 k") with
            {
                Inductance = "2.6 H",
                InductanceAt = "120 Hz",
            }
        );
        Assert.Equal((VerdictKind.Pass, VerdictKind.Hold, VerdictKind.Pass), (good.Verdict.Kind, low.Verdict.Kind, elsewhere.Verdict.Kind));
        Assert.True(low.Verdict.ReadAgain);
        // less than the coil has without its cores, and 2 % of its turns shorted would take 4 %
        Assert.Equal("meter-error", low.Verdict.Causes[0].Name);
        // the target holds at 1 kHz
        Assert.Contains(elsewhere.Verdict.Reasons, reason => reason.Contains("not compared", StringComparison.Ordinal));
    }
}
