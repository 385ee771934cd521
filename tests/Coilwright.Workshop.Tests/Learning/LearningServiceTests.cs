using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Quantities;
using Coilwright.Physics;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Learning;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Stock;
using Coilwright.Workshop.Tests.Winding;
using MathNet.Numerics.Distributions;
using Microsoft.Data.Sqlite;

namespace Coilwright.Workshop.Tests.Learning;

/// <summary>What a shop's readings teach it: proposed, decided, ended, and never in the way of what was recorded before.</summary>
public sealed class LearningServiceTests
{
    private static CancellationToken Cancel => WorkingShop.Cancel;

    /// <summary>Thirty coils read 1.2 % over their forecast, with a scatter of 0.4 %.</summary>
    [Fact]
    public async Task Thirty_coils_that_read_high_propose_it_and_what_is_accepted_holds_from_then_on()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        RevisionRecord revision = await shop.ReleasedAsync(WorkingShop.Harbour(targets: "{}"));
        BatchRecord batch = await WoundAsync(shop, revision, "H-1", 30, 1.012, "");
        BatchStatus before = await shop.StatusAsync(batch);
        Estimate plain = Forecast(revision, await PartsAsync(shop, ""));

        LearningStatus proposed = await Learning(shop).ProposeAsync("", "Mara", Cancel);
        LearntLine line = Assert.Single(proposed.Waiting!.Set.Lines);
        Assert.Equal((1, "B1", QuantityKey.DcResistance, 30), (proposed.Waiting.Set.Number, line.Name, line.Quantity, line.Coils));
        Assert.Equal(0.012, line.Correction, 0.002);
        Assert.InRange(line.Half, 0.0005, 0.003);
        Assert.False(line.Apart); // one bobbin on wire that was never measured: one number under both names
        LearntMove move = Assert.Single(proposed.Moves);
        Assert.Equal(30, proposed.Hindsight!.Coils);
        Assert.InRange(proposed.Hindsight.Otherwise, 0, 4); // all lay in the plain limits, and 5 % lie outside of the learnt ones
        Assert.Equal(plain, move.Plain);
        Assert.Equal(plain, Forecast(revision, await PartsAsync(shop, ""))); // a proposal changes nothing

        shop.Clock.Advance(TimeSpan.FromHours(1));
        Assert.Empty(await Learning(shop).DecideAsync(1, accept: true, "thirty coils", "Mara", Cancel));
        Estimate learnt = Forecast(revision, await PartsAsync(shop, ""));
        Assert.Equal(Basis.Learnt, learnt.Basis);
        Assert.Equal(1.012, learnt.Value / plain.Value, 0.002);
        Assert.InRange(learnt.High - learnt.Low, 0, (plain.High - plain.Low) / 2);
        Assert.Equal(move.Learnt, learnt);

        BatchStatus after = (await new WindingService(shop.Records, shop.Clock).StatusAsync(batch.Id, Cancel))!;
        Assert.Equal(before.Limits.Resistance, after.Limits.Resistance);
        Assert.Equal(0, after.Limits.Origin!.Calibration);
        Assert.Equal(before.Coils.Select(coil => coil.Verdict.Kind), after.Coils.Select(coil => coil.Verdict.Kind));
        Assert.Equal(plain.Value, (await shop.Run.StatusAsync(batch.Id, Cancel))!.Plan.Forecast.Coils[0].DcResistance.Value);

        BatchRecord next = await BegunAsync(shop, revision, "H-2", "");
        BatchStatus later = await shop.StatusAsync(next);
        Assert.Equal(1, later.Limits.Origin!.Calibration);
        Assert.Equal(learnt.Value, later.Limits.Resistance.Nominal, 1e-9 * learnt.Value);
        Assert.Equal(learnt.Value, (await shop.Run.StatusAsync(next.Id, Cancel))!.Plan.Forecast.Coils[0].DcResistance.Value);
        Assert.Contains(
            "nothing was read since set 1",
            (await Learning(shop).ProposeAsync("", "Mara", Cancel)).WhyNot,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Coils_that_read_as_forecast_or_nobody_knows_how_warm_propose_nothing()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        RevisionRecord revision = await shop.ReleasedAsync(WorkingShop.Harbour(targets: "{}"));
        Assert.Contains("no coil", (await Learning(shop).ProposeAsync("", "Mara", Cancel)).WhyNot, StringComparison.Ordinal);
        await WoundAsync(shop, revision, "H-1", 20, 1, "");
        await WoundAsync(shop, revision, "H-2", 12, 1.02, "", temperature: "");
        LearningStatus status = await Learning(shop).ProposeAsync("", "Mara", Cancel);
        Assert.Null(status.Waiting);
        Assert.Equal((20, 12), (status.OhmCoils, status.WithoutTemperature));
        Assert.Contains("do not show", status.WhyNot, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lot_not_yet_seen_keeps_the_spread_between_lots_and_says_so()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        await shop.EnsureSpoolAsync("0117");
        await shop.EnsureSpoolAsync("0118");
        RevisionRecord revision = await shop.ReleasedAsync(WorkingShop.Harbour(targets: "{}"));
        await WoundAsync(shop, revision, "H-1", 20, 1.02, "0117");
        await AcceptAsync(shop);
        CoilForecast seen = Coil(revision, await PartsAsync(shop, "0117")),
            other = Coil(revision, await PartsAsync(shop, "0118"));
        Assert.InRange(HalfOf(seen.DcResistance), 0.005, 0.02);
        Assert.InRange(HalfOf(other.DcResistance), 0.04, 0.12);
        Assert.Contains("20 coils of this lot", seen.DcResistance.Derivation.Source, StringComparison.Ordinal);
        Assert.Contains("learnt set 1 of 2026-03-02", seen.DcResistance.Derivation.Source, StringComparison.Ordinal);
        Assert.Contains("spread between lots stays in", other.DcResistance.Derivation.Source, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_measured_spool_tells_the_mean_turn_from_the_ohms_per_metre()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        await shop.EnsureSpoolAsync("0117");
        RevisionRecord revision = await shop.ReleasedAsync(WorkingShop.Harbour(targets: "{}"));
        double ohmPerM = RecipeModelBuilder.ToModel(ReleasedRecipe.Of(revision)).Coils[0].Wire.OhmPerMAt20C * 1.03;
        Assert.Empty(
            await shop.Stock.MeasureAsync(
                Guid.NewGuid(),
                "0117",
                "20 m",
                FormattableString.Invariant($"{20 * ohmPerM:0.0000} Ω"),
                "20 °C",
                "Mara",
                Cancel
            )
        );
        await WoundAsync(shop, revision, "H-1", 30, 1.02, "0117");
        LearntLine line = Assert.Single((await Learning(shop).ProposeAsync("", "Mara", Cancel)).Waiting!.Set.Lines);
        Assert.Equal(0.02, line.Correction, 0.002);
        LearntSet set = (await Learning(shop).ListAsync(Cancel)).Waiting!.Set;
        Analysis.Learning.LearntCorrection wire = set.Resistance.Correction([
            .. set.Resistance.Cells.Single(cell => cell.Coils == 0).Effects,
        ]);
        Assert.Equal(Math.Log(1.03), wire.Mean, 0.005); // as measured; the bobbin has the rest
    }

    [Fact]
    public async Task A_line_that_ended_says_nothing_of_what_comes()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        RevisionRecord revision = await shop.ReleasedAsync(WorkingShop.Harbour(targets: "{}"));
        await WoundAsync(shop, revision, "H-1", 20, 1.012, "");
        await AcceptAsync(shop);
        shop.Clock.Advance(TimeSpan.FromDays(1));
        Estimate plain = Forecast(revision, (await PartsAsync(shop, "")).With(learning: null));
        foreach (string line in (string[])["B1", "w1"])
        {
            Assert.Empty(await Learning(shop).CloseAsync(line, "new bobbin tool and wire since March", "Mara", Cancel));
        }

        shop.Clock.Advance(TimeSpan.FromDays(1));
        Estimate now = Forecast(revision, await PartsAsync(shop, ""));
        Assert.InRange(now.High - now.Low, (plain.High - plain.Low) * 0.7, double.MaxValue);
        Assert.Contains(
            "ended",
            Assert.Single(await Learning(shop).CloseAsync("B1", "again", "Mara", Cancel)).Message,
            StringComparison.Ordinal
        );
        await WoundAsync(shop, revision, "H-2", 20, 0.98, "");
        LearningStatus status = await Learning(shop).ProposeAsync("", "Mara", Cancel);
        Assert.Equal(["B1", "W1", "B2", "W2"], status.Lines.Select(one => one.Name));
        double[] corrections = [.. status.Waiting!.Set.Lines.Select(one => one.Correction).Order()];
        Assert.Equal(2, corrections.Length);
        Assert.Equal(-0.02, corrections[0], 0.003); // 20 coils that scatter by 0.4 % are known to 0.2 %
        Assert.Equal(0.012, corrections[1], 0.003);
    }

    [Fact]
    public async Task Decisions_need_a_reason_and_a_set_that_waits()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        RevisionRecord revision = await shop.ReleasedAsync(WorkingShop.Harbour(targets: "{}"));
        await WoundAsync(shop, revision, "H-1", 20, 1.012, "");
        await Learning(shop).ProposeAsync("", "Mara", Cancel);
        IReadOnlyList<Problem> problems = await Learning(shop).DecideAsync(7, accept: true, " ", "Mara", Cancel);
        Assert.Equal(["reason", "accept"], problems.Select(one => one.Field));
        Assert.Equal(1, (await Learning(shop).ProposeAsync("", "Mara", Cancel)).Waiting!.Set.Number); // the same once more
        await WoundAsync(shop, revision, "H-2", 20, 1.012, "");
        Assert.Equal(2, (await Learning(shop).ProposeAsync("", "Mara", Cancel)).Waiting!.Set.Number);
        Assert.Contains("replaced", Assert.Single(await DecideAsync(1, true)).Message, StringComparison.Ordinal);
        Assert.Empty(await DecideAsync(2, false));
        Assert.Contains("declined", Assert.Single(await DecideAsync(2, true)).Message, StringComparison.Ordinal);
        Assert.Equal(["replaced", "declined"], (await Learning(shop).ListAsync(Cancel)).Sets.Select(one => one.State));
        Assert.Null((await PartsAsync(shop, "")).Learning);
        SqliteException refused = await Assert.ThrowsAsync<SqliteException>(() => shop.ExecuteAsync("UPDATE Learning SET Reason = ''"));
        Assert.Contains("never changed", refused.Message, StringComparison.Ordinal);

        Task<IReadOnlyList<Problem>> DecideAsync(int number, bool accept) =>
            Learning(shop).DecideAsync(number, accept, "because", "Mara", Cancel);
    }

    private static LearningService Learning(WorkingShop shop) => new(shop.Records, shop.Clock);

    private static async Task AcceptAsync(WorkingShop shop)
    {
        int number = (await Learning(shop).ProposeAsync("", "Mara", Cancel)).Waiting!.Set.Number;
        Assert.Empty(await Learning(shop).DecideAsync(number, accept: true, "many coils", "Mara", Cancel));
    }

    private static Task<KnownParts> PartsAsync(WorkingShop shop, string spool) =>
        LearntParts.AtAsync(shop.Records, shop.Clock.GetUtcNow(), spool, Cancel);

    private static CoilForecast Coil(RevisionRecord revision, KnownParts parts) =>
        Forecaster.Predict(RecipeModelBuilder.ToModel(parts.Fill(ReleasedRecipe.Of(revision))), null).Coils[0];

    private static Estimate Forecast(RevisionRecord revision, KnownParts parts) => Coil(revision, parts).DcResistance.Estimate;

    private static double HalfOf(Figure figure) => (figure.Estimate.High - figure.Estimate.Low) / 2 / figure.Value;

    private static async Task<BatchRecord> BegunAsync(WorkingShop shop, RevisionRecord revision, string name, string spool)
    {
        BatchRecord batch = new(
            Guid.NewGuid(),
            name,
            revision.RecipeId,
            revision.Number,
            "main",
            60,
            name + "-",
            spool,
            "",
            "Mara",
            shop.Clock.GetUtcNow()
        );
        Assert.Empty(await shop.Room.BeginBatchAsync(batch, Cancel));
        return batch;
    }

    /// <summary>A batch of coils that read so many times their plain forecast, give or take 0.4 %.</summary>
    private static async Task<BatchRecord> WoundAsync(
        WorkingShop shop,
        RevisionRecord revision,
        string name,
        int coils,
        double times,
        string spool,
        string temperature = "20 °C"
    )
    {
        BatchRecord batch = await BegunAsync(shop, revision, name, spool);
        double ohm = Forecast(revision, KnownParts.None).Value;
        Random random = new(name.Length + coils);
        for (int coil = 1; coil <= coils; coil++)
        {
            double read = ohm * times * (1 + Normal.Sample(random, 0, 0.004));
            string tag = FormattableString.Invariant($"{name}-{coil:000}");
            await shop.KeptAsync(WorkingShop.Entry(batch, tag, FormattableString.Invariant($"{read / 1000:0.0000} k"), temperature));
        }

        return batch;
    }
}
