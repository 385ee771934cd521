using Coilwright.Storage.Moves;
using Coilwright.Storage.Records;
using Coilwright.Workshop;
using Coilwright.Workshop.Backups;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Readings;

namespace Coilwright.Storage.Tests.Postgres;

/// <summary>A shop copied from a file to a server and back is the same shop; what cannot go over leaves nothing behind.</summary>
public sealed class MoveTests
{
    private static CancellationToken Cancel => TempShop.Cancel;

    [Fact]
    public async Task There_and_back_it_is_the_same_shop()
    {
        await using TempShop file = await FilledAsync();
        await using TempShop server = await TempShop.OnServerAsync();
        IReadOnlyList<MovedTable> there = await ShopMove.RunAsync(file.Shop, server.Shop, null, Cancel);

        await using TempShop back = await TempShop.StartAsync();
        IReadOnlyList<MovedTable> again = await ShopMove.RunAsync(server.Shop, back.Shop, null, Cancel);

        Assert.Equal(there, again);
        Assert.Equal(3, there.Single(one => one.Name == "Readings").Rows);
        ShopContents before = await Backups.ShopVerification.ContentsAsync(file.Connection, Cancel),
            after = await Backups.ShopVerification.ContentsAsync(back.Connection, Cancel);
        Assert.True(before.IsSameShop(after));
        Assert.Empty(before.Against(after));
        BatchRecord batch = Assert.Single(await back.Shop.Batches.AllAsync(Cancel));
        Assert.Equal(await file.Shop.Readings.OfBatchAsync(batch.Id, Cancel), await back.Shop.Readings.OfBatchAsync(batch.Id, Cancel));
    }

    [Fact]
    public async Task Entries_go_on_after_a_move_in_their_order()
    {
        await using TempShop file = await FilledAsync();
        await using TempShop server = await TempShop.OnServerAsync();
        await ShopMove.RunAsync(file.Shop, server.Shop, null, Cancel);
        BatchRecord batch = Assert.Single(await server.Shop.Batches.AllAsync(Cancel));
        ReadingRecord next = TempShop.Reading(batch, "C-009");
        Assert.Equal(AddReading.Added, await server.Shop.Readings.AddAsync([next], Cancel));
        Assert.Equal(next, (await server.Shop.Readings.OfBatchAsync(batch.Id, Cancel))[^1]);
    }

    [Fact]
    public async Task A_target_with_records_is_refused_and_stays_as_it_is()
    {
        await using TempShop file = await FilledAsync();
        await using TempShop server = await TempShop.OnServerAsync();
        await server.Shop.Room.AddAsync(new RoomTemperature(20, "20", "Mara", TempShop.Noon), Cancel);
        ShopFileException refused = await Assert.ThrowsAsync<ShopFileException>(() =>
            ShopMove.RunAsync(file.Shop, server.Shop, null, Cancel)
        );
        Assert.Contains("holds records already (RoomTemperatures 1)", refused.Message, StringComparison.Ordinal);
        Assert.Empty(await server.Shop.Batches.AllAsync(Cancel));
    }

    [Fact]
    public async Task A_row_that_cannot_go_over_leaves_nothing_behind()
    {
        await using TempShop file = await FilledAsync();
        // a file tells apart letters beyond the English alphabet by their case, a server does not
        Assert.True(await file.Shop.Customers.AddAsync(new CustomerRecord(Guid.NewGuid(), "Ü-1", "One", TempShop.Noon, null), Cancel));
        Assert.True(await file.Shop.Customers.AddAsync(new CustomerRecord(Guid.NewGuid(), "ü-1", "Two", TempShop.Noon, null), Cancel));
        await using TempShop server = await TempShop.OnServerAsync();
        ShopFileException refused = await Assert.ThrowsAsync<ShopFileException>(() =>
            ShopMove.RunAsync(file.Shop, server.Shop, null, Cancel)
        );
        Assert.Contains("a row of Customers cannot stand", refused.Message, StringComparison.Ordinal);
        Assert.Empty(await server.Shop.Batches.AllAsync(Cancel));
        await ShopConnection.RemoveEmptyAsync(server.Connection);
        Assert.False(await ShopConnection.ExistsAsync(server.Connection, Cancel));
    }

    private static async Task<TempShop> FilledAsync()
    {
        TempShop temp = await TempShop.StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        ReadingRecord first = TempShop.Reading(batch) with { Si = 0.1 + 0.2, Typed = "7,43 kΩ ∞ \"'" };
        ReadingRecord[] readings =
        [
            first,
            TempShop.Reading(batch, typed: "open", ohm: null) with
            {
                Supersedes = first.Id,
                Reason = "read again",
            },
            TempShop.Reading(batch, "C-002"),
        ];
        Assert.Equal(AddReading.Added, await temp.Shop.Readings.AddAsync(readings, Cancel));
        await temp.Shop.Room.AddAsync(new RoomTemperature(23.5, "23.5 °C", "Mara", TempShop.Noon), Cancel);
        return temp;
    }
}
