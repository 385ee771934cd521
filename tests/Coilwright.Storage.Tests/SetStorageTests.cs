using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;

namespace Coilwright.Storage.Tests;

public class SetStorageTests
{
    private static CancellationToken Cancel => TempShop.Cancel;

    private protected virtual Task<TempShop> StartAsync() => TempShop.StartAsync();

    [Fact]
    public async Task Two_tablets_that_want_one_piece_make_one_set_and_half_of_none()
    {
        await using TempShop temp = await StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        PieceRecord[] pieces = [.. Enumerable.Range(1, 7).Select(number => Piece(batch, $"P-{number}"))];
        foreach (PieceRecord piece in pieces)
        {
            Assert.Null(await temp.Shop.Pieces.AddAsync(piece, [], Cancel));
        }

        Guid[] sets = [.. Enumerable.Range(0, 6).Select(_ => Guid.NewGuid())];
        Guid?[] taken = await Task.WhenAll(
            sets.Select(
                (set, at) =>
                    Task.Run(
                        () =>
                            temp.Shop.Pieces.JoinSetAsync(
                                [Joined(pieces[at + 1], set, "S" + at), Joined(pieces[0], set, "S" + at)],
                                Cancel
                            ),
                        Cancel
                    )
            )
        );

        Assert.Equal(5, taken.Count(one => one == pieces[0].Id));
        int won = Array.FindIndex(taken, one => one is null);
        IReadOnlyList<PieceEvent> kept = await temp.Shop.Pieces.EventsAsync([.. pieces.Select(piece => piece.Id)], Cancel);
        Assert.Equal([pieces[won + 1].Id, pieces[0].Id], kept.Select(one => one.PieceId));
        Assert.Equal(2, (await temp.Shop.Pieces.WithAsync(new PieceQuery(SetId: sets[won]), Cancel)).Count);
        Assert.Equal(2, (await temp.Shop.Pieces.WithAsync(new PieceQuery(SetName: "s" + won), Cancel)).Count);
        Assert.Empty(await temp.Shop.Pieces.WithAsync(new PieceQuery(SetName: "S"), Cancel)); // the beginning of a name is not the name
    }

    [Fact]
    public async Task A_piece_that_left_its_set_may_join_another_and_one_sent_twice_is_kept_once()
    {
        await using TempShop temp = await StartAsync();
        PieceRecord piece = Piece(await temp.BatchAsync(), "P-1");
        Assert.Null(await temp.Shop.Pieces.AddAsync(piece, [], Cancel));
        JoinedSet joined = Joined(piece, Guid.NewGuid(), "one") with { Why = "because" };
        Assert.Null(await temp.Shop.Pieces.JoinSetAsync([joined], Cancel));
        Assert.Null(await temp.Shop.Pieces.JoinSetAsync([joined], Cancel));
        Assert.Equal(piece.Id, await temp.Shop.Pieces.JoinSetAsync([Joined(piece, Guid.NewGuid(), "two")], Cancel));
        Assert.Single(await temp.Shop.Pieces.WithAsync(new PieceQuery(SetName: "ONE"), Cancel));
        await temp.Shop.Pieces.AddEventsAsync([Left(joined)], [], Cancel);
        Assert.Null(await temp.Shop.Pieces.JoinSetAsync([Joined(piece, Guid.NewGuid(), "two")], Cancel));
    }

    private static PieceRecord Piece(BatchRecord batch, string serial) =>
        new()
        {
            Id = Guid.NewGuid(),
            Serial = serial,
            RecipeId = batch.RecipeId,
            RevisionNumber = 1,
            TimeUtc = TempShop.Noon,
        };

    private static JoinedSet Joined(PieceRecord piece, Guid set, string name) =>
        new()
        {
            Id = Guid.NewGuid(),
            PieceId = piece.Id,
            SetId = set,
            Name = name,
            Place = "neck",
            TimeUtc = TempShop.Noon,
        };

    private static LeftSet Left(JoinedSet joined) =>
        new()
        {
            Id = Guid.NewGuid(),
            PieceId = joined.PieceId,
            SetId = joined.SetId,
            Name = joined.Name,
            Reason = "scratched",
            TimeUtc = joined.TimeUtc,
        };
}
