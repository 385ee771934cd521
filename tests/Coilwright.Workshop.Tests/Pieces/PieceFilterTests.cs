using Coilwright.Workshop.Pieces;

namespace Coilwright.Workshop.Tests.Pieces;

/// <summary>Lists of pieces are narrowed by state, recipe, customer and a part of the serial.</summary>
public sealed class PieceFilterTests
{
    private static CancellationToken Cancel => PieceShop.Cancel;

    [Fact]
    public async Task Each_filter_shows_what_it_says_and_all_of_them_hold_together()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string ready = (await shop.MakeAsync(1)).Serial,
            held = (await shop.MakeAsync(2)).Serial,
            scrapped = (await shop.MakeAsync(3)).Serial,
            shipped = (await shop.MakeAsync(4)).Serial;
        await shop.ThroughStepsAsync(shipped);
        Assert.Empty(await shop.Steps.HoldAsync(Guid.NewGuid(), [held], "a lead is nicked", "Ines", Cancel));
        Assert.True((
                await shop.Test.TestAsync(
                    new()
                    {
                        Id = Guid.NewGuid(),
                        Serial = shipped,
                        Resistance = "7.90 k",
                        Temperature = "20",
                        Swing = "up",
                    },
                    Cancel
                )
            ).Verdict!.Passes);
        shop.Shop.Clock.Advance(TimeSpan.FromDays(7));
        Assert.Empty(await shop.DispatchService.ShipAsync(Guid.NewGuid(), [shipped], "K-031", "Ines", Cancel));
        Assert.Empty(await shop.Returns.CloseAsync(Guid.NewGuid(), scrapped, "cracked", "", "", giveUp: true, "Ines", Cancel));

        Assert.Equal([ready, held], await ShownAsync(new(State: "in the shop")));
        Assert.Equal([held], await ShownAsync(new(State: "held")));
        Assert.Equal([ready], await ShownAsync(new(State: "may go on")));
        Assert.Equal([shipped], await ShownAsync(new(State: "shipped")));
        Assert.Equal([scrapped], await ShownAsync(new(State: "scrapped")));
        Assert.Empty(await ShownAsync(new(State: "returned")));
        Assert.Equal([shipped], await ShownAsync(new(Customer: "pell")));
        Assert.Equal([scrapped], await ShownAsync(new(Serial: scrapped[^3..])));
        Assert.Equal(4, (await ShownAsync(new(Recipe: "breakwater twin"))).Length);
        Assert.Empty(await ShownAsync(new(Recipe: "Harbour bridge")));
        Assert.Empty(await ShownAsync(new(State: "held", Serial: ready[^3..])));

        async Task<string[]> ShownAsync(PieceFilter filter)
        {
            DateTimeOffset nowUtc = await shop.Shelf.NowUtcAsync(Cancel);
            Func<Guid, string> customer = await shop.Shelf.CustomerWordsAsync(Cancel);
            IReadOnlyList<PieceSnapshot> all = await shop.Shelf.LivesAsync(await shop.Shop.Records.NewestPiecesAsync(9, Cancel), Cancel);
            return
            [
                .. all.Where(piece => filter.Shows(piece, piece.Status(nowUtc, TimeZoneInfo.Utc), customer))
                    .Select(piece => piece.Piece.Serial)
                    .Order(StringComparer.Ordinal),
            ];
        }
    }
}
