using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Tests.Winding;

namespace Coilwright.Workshop.Tests.Pieces;

/// <summary>Entries that waited on a tablet while the server was away.</summary>
public sealed class LateEntryTests
{
    private static CancellationToken Cancel => PieceShop.Cancel;

    [Theory]
    [InlineData("2026-03-02T14:05:00Z/2026-03-02T14:31:30Z", 26.5)]
    [InlineData("2026-03-02T14:05:00.123+02:00/2026-03-02T12:31:00.123Z", 26.0)]
    [InlineData("2026-03-02T14:05:00Z/2026-03-02T14:05:59Z", null)] // told at once
    [InlineData("2026-03-02T14:05:00Z/2026-03-02T13:05:00Z", null)] // the tablet's clock was set back meanwhile
    [InlineData("2026-03-02T14:05:00Z/2027-03-02T14:05:00Z", null)]
    [InlineData("2026-03-02T14:05:00Z", null)]
    [InlineData("yesterday/today", null)]
    [InlineData(null, null)]
    public void The_tablets_two_times_say_how_long_an_entry_waited(string? text, double? minutes)
    {
        LateEntry? told = LateEntry.Read(text);
        Assert.Equal(minutes, told?.Waited.TotalMinutes);
    }

    /// <summary>
    /// Begun 14:05 and ended 14:17 on the tablet, both heard at 14:30: a step of at least 10 min has had its time, and its hold counts from
    /// 14:30.
    /// </summary>
    [Fact]
    public async Task A_step_begun_and_ended_while_the_server_was_away_has_had_its_time_and_its_hold_counts_from_the_arrival()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceSnapshot life = await GluedAsync(shop);
        string serial = life.Piece.Serial;
        LateEntry begun = Waited(25),
            ended = Waited(13),
            early = Waited(17);
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "glue", [serial], "", "Ines", Cancel, told: begun));
        Assert.Contains(
            "takes at least 10 min",
            Assert.Single(await shop.Steps.EndAsync(Guid.NewGuid(), "glue", [serial], "Ines", Cancel, told: early)).Message,
            StringComparison.Ordinal
        ); // 8 min
        Guid id = Guid.NewGuid();
        Assert.Empty(await shop.Steps.EndAsync(id, "glue", [serial], "Ines", Cancel, told: ended));
        Assert.Empty(await shop.Steps.EndAsync(id, "glue", [serial], "Ines", Cancel, told: ended)); // sent twice

        life = (await shop.Shelf.FindAsync(serial, Cancel))!;
        DateTimeOffset heard = shop.Shop.Clock.GetUtcNow();
        StepRun run = life.History.Runs.Single(one => one.Step == "glue");
        Assert.Equal((heard.AddMinutes(-25), heard), (run.BegunUtc, run.EndedUtc));
        Assert.Equal(heard.AddMinutes(30), life.Status(heard, TimeZoneInfo.Utc).ChangesUtc); // the hold
        Assert.Equal([begun, ended], life.History.InForce.Select(life.History.LateOf));
        Assert.Equal(2, life.History.InForce.Count); // what is told of an event is none of its own
        Assert.Single(PieceUndo.LastEntry(life.History));
    }

    [Fact]
    public async Task A_step_made_while_a_hold_ran_is_refused_though_it_arrives_after_it()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string serial = (await shop.MakeAsync(1)).Serial;
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [serial], "", "Ines", Cancel));
        Assert.Empty(await shop.Potting.InAsync(PieceShop.Basket("K1", serial), Cancel));
        shop.Shop.Clock.Advance(TimeSpan.FromMinutes(10));
        Assert.Empty(await shop.Potting.OutAsync(Guid.NewGuid(), "K1", "Ines", Cancel));
        Assert.Empty(await shop.Ink.MixAsync(Guid.NewGuid(), "I-1", "A-11", "20", "Ines", Cancel));
        shop.Shop.Clock.Advance(TimeSpan.FromMinutes(40)); // wax has set since 10 min
        Assert.Contains(
            "wax sets",
            Assert
                .Single(await shop.Steps.BeginAsync(Guid.NewGuid(), "marking", [serial], "I-1", "Ines", Cancel, told: Waited(20)))
                .Message,
            StringComparison.Ordinal
        );
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "marking", [serial], "I-1", "Ines", Cancel, told: Waited(5)));
    }

    [Fact]
    public async Task A_test_told_late_takes_the_room_as_it_was_then()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceRecord piece = await shop.MakeAsync(1);
        await shop.ThroughStepsAsync(piece.Serial);
        Assert.Empty(await shop.Shop.Room.SetRoomTemperatureAsync("25 °C", "Mara", Cancel));
        shop.Shop.Clock.Advance(TimeSpan.FromHours(5));
        TestEntry entry = new()
        {
            Id = Guid.NewGuid(),
            Serial = piece.Serial,
            Resistance = "7.95 k",
            Swing = PieceDayTests.Swing(shop),
        };
        Assert.Empty((await shop.Test.TestAsync(entry, Cancel, Waited(4 * 60))).Problems);
        Assert.Empty((await shop.Test.TestAsync(entry with { Id = Guid.NewGuid() }, Cancel)).Problems);
        PieceSnapshot life = (await shop.Shelf.FindAsync(piece.Serial, Cancel))!;
        Assert.Equal(
            [25, null],
            life.Readings.Where(reading => reading.Quantity == "dcResistance").Select(reading => reading.TemperatureC)
        );
        Assert.Equal(shop.Shop.Clock.GetUtcNow(), life.History.Test!.TimeUtc);
    }

    /// <summary>An entry that waited so many minutes, on a tablet whose clock is a day wrong.</summary>
    private static LateEntry Waited(double minutes) => new(PieceShopDay.AddDays(1), PieceShopDay.AddDays(1).AddMinutes(minutes));

    private static DateTimeOffset PieceShopDay => new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);

    /// <summary>A piece of a recipe with a step of its own: glue, 10 min at least, then half an hour's hold.</summary>
    private static async Task<PieceSnapshot> GluedAsync(PieceShop shop)
    {
        string json = (await File.ReadAllTextAsync(RepositoryPath.Of("demo/recipes/breakwater-twin.json"), Cancel))
            .Replace(
                "\"potting\":",
                """ "steps": [ { "name": "glue", "least": "10 min", "hold": "30 min", "holdReason": "glue sets" } ], "potting":""",
                StringComparison.Ordinal
            )
            .Replace("Breakwater twin", "Glued twin", StringComparison.Ordinal);
        RevisionRecord revision = await shop.Shop.ReleasedAsync(json);
        foreach ((string name, string coil, string prefix) in new[] { ("G-1", "slug", "GS-"), ("G-2", "screw", "GC-") })
        {
            Workshop.Batches.BatchRecord batch = new(
                Guid.NewGuid(),
                name,
                revision.RecipeId,
                revision.Number,
                coil,
                1,
                prefix,
                "0117",
                "Winder 2",
                "Mara",
                shop.Shop.Clock.GetUtcNow()
            );
            await shop.Shop.Records.Batches.AddAsync(batch, Cancel);
            await shop.Shop.KeptAsync(WorkingShop.Entry(batch, prefix + "001", "3.95 k"));
        }

        (IReadOnlyList<Problem> problems, PieceRecord? piece) = await shop.Assembly.MakeAsync(PieceShop.Entry("G-1/1", "G-2/1"), Cancel);
        Assert.Empty(problems);
        shop.Shop.Clock.Advance(TimeSpan.FromHours(1));
        return (await shop.Shelf.FindAsync(piece!.Serial, Cancel))!;
    }
}
