using System.Text.Json;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Microsoft.Data.Sqlite;

namespace Coilwright.Workshop.Tests.Winding;

/// <summary>What a batch is judged against is written when it begins: another forecast changes no verdict given.</summary>
public sealed class KeptLimitsTests
{
    private static CancellationToken Cancel => WorkingShop.Cancel;

    /// <summary>Without targets of its own a coil is held against the forecast, so that a better one would move every limit.</summary>
    [Fact]
    public async Task A_better_forecast_changes_no_verdict_of_a_batch_that_was_begun()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await BegunAsync(shop, await shop.ReleasedAsync(WorkingShop.Harbour(targets: "{}")));
        Band before = (await shop.StatusAsync(batch)).Limits.Resistance;
        foreach (
            (string tag, double ohm) in new[] { ("C-001", before.Low * 0.99), ("C-002", before.Nominal), ("C-003", before.High * 1.01) }
        )
        {
            await shop.KeptAsync(Entry(batch, tag, ohm, "2.7 kHz"));
        }

        BatchStatus then = await shop.StatusAsync(batch);
        Assert.Contains(then.Coils, coil => coil.Verdict.Kind != VerdictKind.Pass);
        BatchStatus now = await OtherProgram(shop).StatusAsync(batch.Id, Cancel) ?? throw new InvalidOperationException();
        Assert.Equal(Written(then), Written(now));
        Assert.Equal(before, now.Limits.Resistance);

        RevisionRecord other = await shop.ReleasedAsync(WorkingShop.Harbour(name: "Harbour neck", targets: "{}"));
        BatchRecord next = await BegunAsync(shop, other, "H-13", OtherProgram(shop));
        Band moved = (await shop.StatusAsync(next)).Limits.Resistance;
        Assert.Equal(before.Nominal * 1.05, moved.Nominal, before.Nominal * 1e-6); // the other forecast is one, and holds from here on
    }

    [Fact]
    public async Task Limits_say_from_where_they_are()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await BegunAsync(shop, await shop.ReleasedAsync());
        LimitsOrigin origin = (await shop.StatusAsync(batch)).Limits.Origin!;
        Assert.True(origin.AtBegin);
        Assert.Equal((1, 0, batch.BegunUtc), (origin.RevisionNumber, origin.Calibration, origin.TimeUtc));
        Assert.Matches(@"^limits of revision A, kept since the batch began \(version \d+\.\d+\.\d+\)$", origin.Words);
    }

    /// <summary>As in a shop whose file is older than limits that are kept.</summary>
    [Fact]
    public async Task A_batch_without_limits_gets_them_once_and_says_so()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync(await shop.ReleasedAsync(WorkingShop.Harbour(targets: "{}")));
        Assert.Empty(await shop.Records.Batches.LimitsAsync(batch.Id, Cancel));

        VerdictLimits first = (await shop.StatusAsync(batch)).Limits;
        IReadOnlyList<BatchLimitsRecord> kept = await shop.Records.Batches.LimitsAsync(batch.Id, Cancel);
        Assert.Contains("since the batch was begun before limits were kept", first.Origin!.Words, StringComparison.Ordinal);
        Assert.NotEmpty(kept);

        VerdictLimits second = (await OtherProgram(shop).StatusAsync(batch.Id, Cancel))!.Limits;
        Assert.Equal(first.Resistance, second.Resistance);
        Assert.Equal(first.Expected(1000), second.Expected(1000));
        Assert.Equal(kept, await shop.Records.Batches.LimitsAsync(batch.Id, Cancel));
    }

    [Fact]
    public async Task What_a_good_coil_reads_is_kept_at_every_frequency_that_was_read()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await BegunAsync(shop, await shop.ReleasedAsync(WorkingShop.Harbour(targets: "{}")));
        await shop.KeptAsync(Entry(batch, "C-001", 6180, "2.7 kHz"));
        IReadOnlyList<BatchLimitsRecord> kept = await shop.Records.Batches.LimitsAsync(batch.Id, Cancel);
        Assert.Equal([0, 1000, 2700], kept.Select(row => row.AtHz));
        ExpectedReading expected = (await shop.StatusAsync(batch)).Limits.Expected(2700)!;
        Assert.Equal(VerdictLimits.ForCoil(RecipeReader.Read(WorkingShop.Harbour(targets: "{}")).Value!, 0).Expected(2700), expected);
    }

    [Fact]
    public async Task Nobody_changes_limits_that_are_kept()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        await BegunAsync(shop, await shop.ReleasedAsync());
        SqliteException refused = await Assert.ThrowsAsync<SqliteException>(() =>
            shop.ExecuteAsync("UPDATE BatchLimits SET Program = '9.9.9'")
        );
        Assert.Contains("stay as they were", refused.Message, StringComparison.Ordinal);
        await Assert.ThrowsAsync<SqliteException>(() => shop.ExecuteAsync("DELETE FROM BatchLimits"));
    }

    /// <summary>The page that follows an entry shows the verdict that the entry gave, without judging the coil again.</summary>
    [Fact]
    public async Task A_coil_is_judged_once_for_its_entry_and_the_page_after_it()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await BegunAsync(shop, await shop.ReleasedAsync());
        await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "6.18 k"));
        CoilDossier entered = await shop.KeptAsync(WorkingShop.Entry(batch, "C-002", "6.20 k"));
        BatchStatus page = await shop.StatusAsync(batch);
        Assert.Same(entered, page.Coils.Single(coil => coil.Tag == "C-002"));
        Assert.Equal(["Mara"], entered.People);
        Assert.Equal(6200, entered.OhmAt20C!.Value, 0.5);
    }

    private static async Task<BatchRecord> BegunAsync(
        WorkingShop shop,
        RevisionRecord revision,
        string name = "H-12",
        WindingService? by = null
    )
    {
        BatchRecord batch = new(
            Guid.NewGuid(),
            name,
            revision.RecipeId,
            revision.Number,
            "main",
            24,
            "C-",
            "",
            "",
            "Mara",
            shop.Clock.GetUtcNow()
        );
        Assert.Empty(await (by ?? shop.Room).BeginBatchAsync(batch, Cancel));
        return batch;
    }

    private static CoilEntry Entry(BatchRecord batch, string tag, double ohm, string at) =>
        WorkingShop.Entry(batch, tag, FormattableString.Invariant($"{ohm / 1000:0.0000} k")) with
        {
            Inductance = "2.40 H",
            InductanceAt = at,
        };

    /// <summary>The same shop served by a program whose forecast is 5 % higher.</summary>
    private static WindingService OtherProgram(WorkingShop shop) =>
        new(shop.Records, shop.Clock, new BatchDossiers(shop.Records, shop.Clock, (revision, _) =>
            {
                VerdictLimits own = VerdictLimits.ForCoil(RecipeReader.Read(revision.Json).Value!, 0);
                return own with
                {
                    Resistance = Higher(own.Resistance),
                    Inductance = Higher(own.Inductance!),
                    Expected = hz => own.Expected(hz) is { } read ? read with { InductanceH = read.InductanceH * 1.05 } : null,
                };
            }));

    private static Band Higher(Band band) => band with { Nominal = band.Nominal * 1.05, Low = band.Low * 1.05, High = band.High * 1.05 };

    private static string Written(BatchStatus status) =>
        JsonSerializer.Serialize(status.Coils.Select(coil => new { coil.Tag, coil.Verdict }));
}
