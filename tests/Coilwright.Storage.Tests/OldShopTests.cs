#pragma warning disable CA2100 // every statement below is a constant of the tests
using System.Globalization;
using Coilwright.Storage.Records;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Microsoft.Data.Sqlite;

namespace Coilwright.Storage.Tests;

/// <summary>Shop files of every older version, opened by this one.</summary>
public sealed class OldShopTests
{
    /// <summary>Kinds that came later, which an older shop cannot hold.</summary>
    private static readonly string[] s_later = [nameof(Reserved), nameof(CauseFound), nameof(SignalAnswered), nameof(Closed)];

    private static CancellationToken Cancel => TempShop.Cancel;

    public static TheoryData<int> WithPieces => [.. OldShop.WithPieces];

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(9)]
    public async Task A_shop_of_every_version_is_brought_up_to_date_and_keeps_its_records(int version)
    {
        await using TempShop temp = await TempShop.StartAsync();
        string path = temp.PathOf("old.db");
        await OldShop.WriteAsync(version, path, Cancel);
        Assert.Equal(version, await NumberAsync(path, "PRAGMA user_version"));
        string[] tables = ["Revisions", "Batches", "Readings", .. version >= 2 ? ["BatchEvents", "Spools"] : Array.Empty<string>()];
        tables = [.. tables, .. version >= 3 ? ["Pieces", "PieceParts", "PieceEvents", "Baskets"] : Array.Empty<string>()];
        long[] before = await Task.WhenAll(tables.Select(table => NumberAsync(path, "SELECT count(*) FROM " + table)));
        Assert.All(before, count => Assert.NotEqual(0, count));

        await using (ShopRecords shop = await ShopFile.OpenAsync(path, Cancel))
        {
            Assert.Equal(2, (await shop.Batches.AllAsync(Cancel)).Count);
        }

        Assert.Equal(ShopFile.SchemaVersion, await NumberAsync(path, "PRAGMA user_version"));
        Assert.Equal(before, await Task.WhenAll(tables.Select(table => NumberAsync(path, "SELECT count(*) FROM " + table))));
        Assert.Equal(0, await NumberAsync(path, "SELECT count(*) FROM pragma_foreign_key_check"));
        foreach (string frozen in (string[])["BatchEvents", "PieceEvents", "PieceReadings"])
        {
            foreach (string act in (string[])["no_update", "no_delete"])
            {
                Assert.Equal(1, await NumberAsync(path, $"SELECT count(*) FROM sqlite_master WHERE name = '{frozen}_{act}'"));
            }
        }
    }

    [Theory]
    [MemberData(nameof(WithPieces))]
    public async Task What_stood_in_shared_columns_and_lines_of_text_is_said_by_each_kind(int version)
    {
        await using TempShop temp = await TempShop.StartAsync();
        string path = temp.PathOf("old.db");
        await OldShop.WriteAsync(version, path, Cancel);
        await using ShopRecords shop = await ShopFile.OpenAsync(path, Cancel);
        IReadOnlyList<PieceRecord> pieces = await shop.Pieces.NewestAsync(10, Cancel);
        IReadOnlyList<PieceEvent> events = await shop.Pieces.EventsAsync([.. pieces.Select(piece => piece.Id)], Cancel);

        Assert.Equal(
            PieceEvent.Kinds.Except(s_later).Order(StringComparer.Ordinal),
            events.Select(one => one.Kind).Distinct().Order(StringComparer.Ordinal)
        );
        JoinedSet joined = events.OfType<JoinedSet>().First(one => one.OffsetDb > 0);
        Assert.Equal(
            ("Lantern 3", "bridge", 0.2, "0.2 dB", "the customer heard \"these\" two; and liked them"),
            (joined.Name, joined.Place, joined.OffsetDb, joined.OffsetTyped, joined.Why)
        );
        Assert.All(events.OfType<LeftSet>(), left => Assert.Equal(("Lantern 4", "scratched: deep"), (left.Name, left.Reason)));
        Assert.Equal(
            new ChargeAsSaid(new MagnetLevel(null, 0.09050000000000001, 0.0012), "905 G", "\"long\" coil"), // to the last bit
            events.OfType<StepEnded>().Single(one => one.Charge?.Level.FieldT is not null).Charge
        );
        Assert.Equal(
            (new ChargeAsSaid(new MagnetLevel(0.85), "85 %", "coil, reversed"), "too hot in the bridge"),
            events.OfType<MagnetsCharged>().Select(one => (one.Charge, one.Why)).Single()
        );
        Tested failed = events.OfType<Tested>().Single(one => !one.Passed);
        Assert.Equal("fail: resistance too low (thick wire, or a short in the leads)", failed.Verdict);
        Assert.Equal("fail: a scratch; small", string.Join("; ", failed.Outcomes.TakeLast(2)));
        Assert.Equal(
            ("BS-003", "BS-005", "shorted: it read low"),
            events.OfType<PartOut>().Select(o => (o.OutTag, o.InTag, o.Reason)).Single()
        );
        Assert.Equal("lead loose; solder cold", events.OfType<Examined>().Single().Flaws);
        Assert.Equal(("warranty", "It hums no more.\nRegards"), events.OfType<Repaired>().Select(one => (one.Cost, one.Answer)).Single());
        Assert.All(events.OfType<TimeMended>(), mended =>
            Assert.Equal(
                (new DateTimeOffset(2026, 3, 2, 9, 51, 0, TimeSpan.Zero), "the wall clock: five minutes slow"),
                (mended.RightUtc, mended.Reason)
            )
        );
        Assert.Contains(26.5, events.OfType<ToldLate>().Select(one => one.Times.Waited.TotalMinutes));
        IReadOnlyList<PieceReadingRecord> readings = await shop.Pieces.ReadingsAsync([.. pieces.Select(piece => piece.Id)], Cancel);
        Assert.DoesNotContain(readings, reading => reading.Quantity is "charge" or "chargeField" or "setOffset");
        Assert.NotEmpty(readings);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(6)]
    [InlineData(7)]
    public async Task Events_of_a_batch_say_what_they_said(int version)
    {
        await using TempShop temp = await TempShop.StartAsync();
        string path = temp.PathOf("old.db");
        await OldShop.WriteAsync(version, path, Cancel);
        await using ShopRecords shop = await ShopFile.OpenAsync(path, Cancel);
        BatchRecord batch = (await shop.Batches.AllAsync(Cancel)).Single(one => one.Name == "B-8");
        IReadOnlyList<BatchEvent> events = await shop.Batches.EventsAsync(batch.Id, Cancel);

        Assert.Equal(
            [
                "series released: looks even",
                "spool 0122, hold turns",
                "BC-005 begun on Winder 2",
                "BC-005 paused at 1,200",
                "BC-005 resumed",
                "BC-005 broke at 2,300",
                "BC-005 spliced",
                "BC-005 broke at 3,301",
                "BC-005 ended low",
                "4 more wanted: two for the shelf; two lost",
                "undone",
                "3 more wanted: three for the shelf",
                "BC-005 scrapped",
            ],
            events.Select(one => one.Sentence)
        );
        Assert.Equal(
            BatchEvent.Kinds.Except(s_later).Order(StringComparer.Ordinal),
            events.Select(one => one.Kind).Distinct().Order(StringComparer.Ordinal)
        );
        Assert.Equal(batch.Quantity + 3, BatchNumber.Wanted(batch, BatchEventLog.Holding(events)));
        FinishedLow low = events.OfType<FinishedLow>().Single();
        Assert.Equal((3320.303, "low, for the prototype", "Winder 2", "Mara"), (low.Turns, low.Note, low.Machine, low.Person));
        Assert.Equal((3300.5, 3320.303), events.OfType<Broken>().Select(one => (one.Counter, one.Turns)).Last());
        Assert.Single(await shop.Batches.WithSpoolAsync("0122", Cancel));
    }

    private static async Task<long> NumberAsync(string path, string sql)
    {
        await using SqliteConnection connection = new($"Data Source={path};Pooling=False");
        await connection.OpenAsync(Cancel);
        await using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        return Convert.ToInt64(await command.ExecuteScalarAsync(Cancel), CultureInfo.InvariantCulture);
    }
}
