using Coilwright.Storage.Model;
using Coilwright.Storage.Records;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Stock;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Coilwright.Storage.Tests;

public class ShopRecordsTests
{
    private static CancellationToken Cancel => TempShop.Cancel;

    private protected virtual Task<TempShop> StartAsync() => TempShop.StartAsync();

    /// <summary>A statement as the database wants it.</summary>
    private protected virtual string Sql(string sql) => sql;

    /// <summary>True for what the database's own guards say.</summary>
    private protected virtual bool IsGuard(Exception refused) => refused is SqliteException { SqliteErrorCode: 19 }; // SQLITE_CONSTRAINT

    [Fact]
    public async Task What_is_stored_comes_back_the_same_after_closing()
    {
        await using TempShop temp = await StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        ReadingRecord first = TempShop.Reading(batch) with { Si = 0.1 + 0.2, Typed = "7,43 kΩ ∞ \"'", Flag = "", AtHz = 1e3 };
        ReadingRecord second = TempShop.Reading(batch, typed: "open", ohm: null) with
        {
            Flag = "open",
            TemperatureC = null,
            Turns = null,
            Supersedes = first.Id,
            Reason = "wrong lead",
            TimeUtc = TempShop.Noon.ToOffset(TimeSpan.FromHours(5)),
        };
        Assert.Equal(AddReading.Added, await temp.Shop.Readings.AddAsync([first, second], Cancel));
        RoomTemperature room = new(23.5, "23.5 °C", "Mara", TempShop.Noon);
        await temp.Shop.Room.AddAsync(room with { TemperatureC = 19 }, Cancel);
        await temp.Shop.Room.AddAsync(room, Cancel);

        await temp.ReopenAsync();

        Assert.Equal([first, second], await temp.Shop.Readings.OfBatchAsync(batch.Id, Cancel));
        Assert.Equal(batch, await temp.Shop.Batches.FindAsync(batch.Id, Cancel));
        Assert.Equal(
            TempShop.Revision(batch.RecipeId, 1, RevisionState.Released),
            await temp.Shop.Recipes.FindRevisionAsync(batch.RecipeId, 1, Cancel)
        );
        Assert.Equal(room, await temp.Shop.Room.LatestAsync(Cancel));
    }

    [Fact]
    public async Task A_reading_sent_twice_is_kept_once_and_another_under_its_id_is_refused()
    {
        await using TempShop temp = await StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        ReadingRecord reading = TempShop.Reading(batch);
        ShopRecords records = temp.Shop;
        Assert.Equal(AddReading.Added, await records.Readings.AddAsync(reading, Cancel));
        Assert.Equal(
            AddReading.AlreadyThere,
            await records.Readings.AddAsync(reading with { TimeUtc = TempShop.Noon.AddMinutes(3), TemperatureC = 24 }, Cancel)
        );
        Assert.Equal(AddReading.IdTaken, await records.Readings.AddAsync(reading with { Typed = "6.31 k" }, Cancel));
        Assert.Equal(reading, Assert.Single(await temp.Shop.Readings.OfBatchAsync(batch.Id, Cancel)));
    }

    [Fact]
    public async Task A_reading_is_superseded_by_one_only()
    {
        await using TempShop temp = await StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        ReadingRecord first = TempShop.Reading(batch);
        await temp.Shop.Readings.AddAsync([first], Cancel);
        ReadingRecord[] rivals =
        [
            .. Enumerable
                .Range(0, 6)
                .Select(n => TempShop.Reading(batch, typed: $"6.3{n} k") with { Supersedes = first.Id, Reason = "read again" }),
        ];

        AddReading[] outcomes = await Task.WhenAll(
            rivals.Select(rival => Task.Run(() => temp.Shop.Readings.AddAsync([rival], Cancel), Cancel))
        );

        Assert.Single(outcomes, AddReading.Added);
        Assert.Equal(5, outcomes.Count(outcome => outcome == AddReading.SupersededByAnother));
        Assert.Equal(2, (await temp.Shop.Readings.OfBatchAsync(batch.Id, Cancel)).Count);
    }

    [Fact]
    public async Task The_readings_of_one_entry_are_added_together_or_not_at_all()
    {
        await using TempShop temp = await StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        ReadingRecord first = TempShop.Reading(batch),
            correction = TempShop.Reading(batch) with { Supersedes = first.Id, Reason = "read again" };
        await temp.Shop.Readings.AddAsync([first, correction], Cancel);
        ReadingRecord alone = TempShop.Reading(batch, "C-002");
        Assert.Equal(
            AddReading.SupersededByAnother,
            await temp.Shop.Readings.AddAsync([alone, correction with { Id = Guid.NewGuid() }], Cancel)
        );
        Assert.DoesNotContain(await temp.Shop.Readings.OfBatchAsync(batch.Id, Cancel), reading => reading.Tag == "C-002");
    }

    [Fact]
    public async Task Many_writers_at_once_lose_nothing()
    {
        await using TempShop temp = await StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        await using ShopRecords second = await ShopConnection.OpenAsync(temp.Connection, Cancel);
        await Task.WhenAll(
            Enumerable
                .Range(1, 60)
                .Select(n =>
                    Task.Run(
                        () => (n % 2 == 0 ? temp.Shop : second).Readings.AddAsync([TempShop.Reading(batch, $"C-{n:000}")], Cancel),
                        Cancel
                    )
                )
        );
        Assert.Equal(60, (await second.Readings.OfBatchAsync(batch.Id, Cancel)).Select(reading => reading.Tag).Distinct().Count());
    }

    [Fact]
    public async Task A_draft_is_replaced_and_a_released_revision_is_not()
    {
        await using TempShop temp = await StartAsync();
        Guid recipe = Guid.NewGuid();
        Assert.True(await temp.Shop.Recipes.SaveRevisionAsync(TempShop.Revision(recipe, 1), 0, Cancel));
        Assert.True(await temp.Shop.Recipes.SaveRevisionAsync(TempShop.Revision(recipe, 1, json: "{ }"), 1, Cancel));
        Assert.True(await temp.Shop.Recipes.SaveRevisionAsync(TempShop.Revision(recipe, 1, RevisionState.Released, "{ }"), 1, Cancel));
        Assert.False(await temp.Shop.Recipes.SaveRevisionAsync(TempShop.Revision(recipe, 1, json: "{ \"x\": 1 }"), 1, Cancel));
        Assert.True(await temp.Shop.Recipes.SaveRevisionAsync(TempShop.Revision(recipe, 2), 1, Cancel));
        Assert.False(await temp.Shop.Recipes.SaveRevisionAsync(TempShop.Revision(recipe, 2), 1, Cancel)); // somebody else made revision B
        Assert.False(await temp.Shop.Recipes.SaveRevisionAsync(TempShop.Revision(recipe, 4), 2, Cancel)); // no gaps
        Assert.Equal(["A", "B"], (await temp.Shop.Recipes.RevisionsAsync(recipe, Cancel)).Select(revision => revision.Letter));
        Assert.Equal("{ }", (await temp.Shop.Recipes.FindRevisionAsync(recipe, 1, Cancel))!.Json);
        Assert.Equal(2, Assert.Single(await temp.Shop.Recipes.NewestAsync(Cancel)).Number);
    }

    [Theory]
    [InlineData("UPDATE Readings SET Typed = '1'")]
    [InlineData("DELETE FROM Readings")]
    [InlineData("UPDATE Batches SET RevisionNumber = 2")]
    [InlineData("DELETE FROM Batches")]
    [InlineData("UPDATE Revisions SET Json = ''")]
    [InlineData("UPDATE RoomTemperatures SET TemperatureC = 1")]
    [InlineData("UPDATE Machines SET Json = ''")]
    [InlineData("DELETE FROM Spools")]
    [InlineData("UPDATE SpoolReadings SET Ohm = 1")]
    [InlineData("DELETE FROM BatchEvents")]
    public async Task The_database_itself_refuses_to_change_what_was_recorded(string sql)
    {
        await using TempShop temp = await StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        await temp.Shop.Readings.AddAsync([TempShop.Reading(batch)], Cancel);
        await temp.Shop.Room.AddAsync(new RoomTemperature(20, "20", "Mara", TempShop.Noon), Cancel);
        await FillWindingRoomAsync(temp, batch);
        await using ShopContext context = temp.Shop.Open();
        Exception? refused = await Record.ExceptionAsync(() => context.Database.ExecuteSqlRawAsync(Sql(sql), Cancel));
        Assert.True(refused is not null && IsGuard(refused), $"the guard refuses: {refused}");
    }

    [Fact]
    public async Task Machines_spools_and_events_come_back_the_same_after_closing()
    {
        await using TempShop temp = await StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        (MachineRecord machine, SpoolRecord spool, SpoolReadingRecord reading, Broken happened) = await FillWindingRoomAsync(temp, batch);
        Assert.True(await temp.Shop.Stock.AddSpoolAsync(spool, Cancel)); // sent twice
        Assert.False(await temp.Shop.Stock.AddSpoolAsync(spool with { Id = Guid.NewGuid(), Label = "A0117" }, Cancel));
        Assert.False(await temp.Shop.Batches.AddEventAsync(happened, Cancel));

        await temp.ReopenAsync();

        Assert.Equal([machine], await temp.Shop.Machines.AllAsync(Cancel));
        Assert.Equal([spool], await temp.Shop.Stock.SpoolsAsync(Cancel));
        Assert.Equal([reading], await temp.Shop.Stock.SpoolReadingsAsync(Cancel));
        Assert.Equal([happened], await temp.Shop.Batches.EventsAsync(batch.Id, Cancel));
    }

    [Fact]
    public async Task An_event_is_undone_by_one_only()
    {
        await using TempShop temp = await StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        Broken happened = (await FillWindingRoomAsync(temp, batch)).Event;
        bool[] outcomes = await Task.WhenAll(
            Enumerable
                .Range(0, 4)
                .Select(_ =>
                    Task.Run(
                        () =>
                            temp.Shop.Batches.AddEventAsync(
                                new Undone
                                {
                                    Id = Guid.NewGuid(),
                                    BatchId = batch.Id,
                                    Undoes = happened.Id,
                                    TimeUtc = happened.TimeUtc,
                                },
                                Cancel
                            ),
                        Cancel
                    )
                )
        );
        Assert.Single(outcomes, true);
        Assert.Equal(2, (await temp.Shop.Batches.EventsAsync(batch.Id, Cancel)).Count);
    }

    private static async Task<(MachineRecord Machine, SpoolRecord Spool, SpoolReadingRecord Reading, Broken Event)> FillWindingRoomAsync(
        TempShop temp,
        BatchRecord batch
    )
    {
        MachineRecord machine = new(Guid.NewGuid(), "Winder 2", "{ }", "Mara", TempShop.Noon);
        SpoolRecord spool = new()
        {
            Id = Guid.NewGuid(),
            Label = "a0117",
            Gauge = "AWG 42",
            Insulation = "plain-enamel",
            Build = "single",
            ReceivedKg = 2.27,
            TareKg = 0.1 + 0.2,
            TimeUtc = TempShop.Noon,
        };
        SpoolReadingRecord reading = new()
        {
            Id = Guid.NewGuid(),
            SpoolId = spool.Id,
            Kind = SpoolReadingKind.Measured,
            Typed = "10 m; 56.2",
            LengthM = 10,
            Ohm = 56.2,
            TimeUtc = TempShop.Noon,
        };
        Broken happened = new()
        {
            Id = Guid.NewGuid(),
            BatchId = batch.Id,
            Tag = "C-001",
            Counter = 6100,
            Turns = 6100 * 1.006,
            TimeUtc = TempShop.Noon,
        };
        await temp.Shop.Machines.AddAsync(machine, Cancel);
        Assert.True(await temp.Shop.Stock.AddSpoolAsync(spool, Cancel));
        await temp.Shop.Stock.AddSpoolReadingAsync(reading, Cancel);
        Assert.True(await temp.Shop.Batches.AddEventAsync(happened, Cancel));
        return (machine, spool, reading, happened);
    }

    [Fact]
    public async Task A_batch_sent_twice_is_begun_once()
    {
        await using TempShop temp = await StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        await temp.Shop.Batches.AddAsync(batch with { Quantity = 99 }, Cancel);
        Assert.Equal(24, Assert.Single(await temp.Shop.Batches.AllAsync(Cancel)).Quantity);
    }
}
