using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Tests.Pieces;

/// <summary>A piece that is kept for one customer does not go to another by mistake.</summary>
public sealed class ReservationTests
{
    private static CancellationToken Cancel => PieceShop.Cancel;

    [Fact]
    public async Task A_reserved_piece_goes_to_nobody_else_until_it_is_reserved_anew_or_the_reservation_is_taken_back()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        Assert.Empty(await shop.Customers.AddAsync(Guid.NewGuid(), "K-044", "Ferry Lane Music", Cancel));
        PieceRecord piece = await shop.MakeAsync(1);
        Guid sent = Guid.NewGuid();
        Assert.Empty(await shop.DispatchService.ReserveAsync(sent, [piece.Serial], "k-044", "Ines", Cancel));
        Assert.Empty(await shop.DispatchService.ReserveAsync(sent, [piece.Serial], "k-044", "Ines", Cancel)); // sent twice, kept once

        TracedPiece traced = (await shop.Trace.PieceAsync(piece.Serial, Cancel))!;
        Assert.Equal(
            "reserved for K-044 (Ferry Lane Music)",
            Assert.Single(traced.Snapshot.History.InForce, one => one.Kind == "Reserved").Sentence(traced)
        );
        Assert.Contains(await ShipAsync(shop, piece, "K-031"), IsReservation);
        Assert.DoesNotContain(await ShipAsync(shop, piece, "K-044"), IsReservation);

        Assert.Empty(await shop.DispatchService.ReserveAsync(Guid.NewGuid(), [piece.Serial], "K-031", "Ines", Cancel));
        Assert.Contains(await ShipAsync(shop, piece, "K-044"), IsReservation);
        Assert.DoesNotContain(await ShipAsync(shop, piece, "K-031"), IsReservation);

        Assert.Empty(
            await shop.Undo.UndoAsync(
                new UndoEntry
                {
                    Id = Guid.NewGuid(),
                    Serials = [piece.Serial],
                    Reason = "mistaken",
                    Person = "Ines",
                },
                Cancel
            )
        );
        Assert.Contains(await ShipAsync(shop, piece, "K-031"), IsReservation); // the one before holds again
    }

    [Fact]
    public async Task What_is_missing_is_named_at_once()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        IReadOnlyList<Problem> problems = await shop.DispatchService.ReserveAsync(Guid.NewGuid(), ["none"], "", "Ines", Cancel);
        Assert.Equal(2, problems.Count);
        Assert.Contains(problems, problem => problem.Message == "who is it kept for?");
    }

    private static bool IsReservation(Problem problem) => problem.Message.Contains("is reserved for", StringComparison.Ordinal);

    private static Task<IReadOnlyList<Problem>> ShipAsync(PieceShop shop, PieceRecord piece, string customer) =>
        shop.DispatchService.ShipAsync(Guid.NewGuid(), [piece.Serial], customer, "Ines", Cancel);
}
