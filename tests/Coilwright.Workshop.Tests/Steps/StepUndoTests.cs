using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Tests.Pieces;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Tests.Steps;

/// <summary>A mix and a reading of the bath are taken back as steps are: with a reason, and both lines kept.</summary>
public sealed class StepUndoTests
{
    private static CancellationToken Cancel => PieceShop.Cancel;

    [Fact]
    public async Task A_mistyped_reading_is_taken_back_with_the_holds_it_put_on()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceRecord one = await shop.MakeAsync(1),
            two = await shop.MakeAsync(2);
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [one.Serial, two.Serial], "", "Ines", Cancel));
        Assert.Empty(
            await shop.Potting.InAsync(
                new BasketEntry
                {
                    Id = Guid.NewGuid(),
                    Label = "K9",
                    Lot = "W-3",
                    Bath = "60",
                    Pieces = [one.Serial, two.Serial],
                    Person = "Ines",
                },
                Cancel
            )
        );
        StepUndoing undoing = new(shop.Shop.Records, shop.Shelf, shop.Potting);
        // the first goes with the basket
        Assert.Equal("bath", Assert.Single(await undoing.UndoReadingAsync(Guid.NewGuid(), "K9", "typed wrongly", "Ines", Cancel)).Field);
        (IReadOnlyList<Problem> problems, string? alarm) = await shop.Potting.ReadBathAsync(Guid.NewGuid(), "K9", "67", "Ines", Cancel);
        Assert.Empty(problems);
        Assert.NotNull(alarm);
        Assert.NotEmpty((await shop.Shelf.FindAsync(one.Serial, Cancel))!.History.Holds);

        Assert.Equal("reason", Assert.Single(await undoing.UndoReadingAsync(Guid.NewGuid(), "K9", " ", "Ines", Cancel)).Field);
        Guid id = Guid.NewGuid();
        Assert.Empty(await undoing.UndoReadingAsync(id, "K9", "57 was meant", "Ines", Cancel));
        Assert.Empty(await undoing.UndoReadingAsync(id, "K9", "57 was meant", "Ines", Cancel)); // sent twice

        BasketStatus basket = Assert.Single(await shop.Potting.GoingAsync(Cancel));
        Assert.Equal((2, 1), (basket.Readings.Count, basket.ReadingsInForce.Count));
        foreach (PieceRecord piece in new[] { one, two })
        {
            TracedPiece traced = (await shop.Trace.PieceAsync(piece.Serial, Cancel))!;
            Assert.Empty(traced.Snapshot.History.Holds);
            Assert.Contains(traced.Snapshot.History.All, line => line is Held && traced.Snapshot.History.IsTakenBack(line));
            Assert.Contains(traced.Snapshot.History.All, line => line.Sentence(traced).Contains("57 was meant", StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task A_mix_is_taken_back_unless_pieces_are_marked_with_it()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceRecord piece = await shop.MakeAsync(1);
        await shop.ThroughStepsAsync(piece.Serial);
        StepUndoing undoing = new(shop.Shop.Records, shop.Shelf, shop.Potting);
        Problem marked = Assert.Single(await undoing.UndoMixAsync(Guid.NewGuid(), "I-1", "wrong lots", "Ines", Cancel));
        Assert.Contains(piece.Serial, marked.Message, StringComparison.Ordinal);
        Assert.Empty(
            await shop.Undo.UndoAsync(
                new UndoEntry
                {
                    Id = Guid.NewGuid(),
                    Serials = [piece.Serial],
                    Reason = "not printed",
                    Person = "Ines",
                },
                Cancel
            )
        );
        Assert.Empty(await undoing.UndoMixAsync(Guid.NewGuid(), "i-1", "wrong lots", "Ines", Cancel));

        Assert.Empty(await shop.Ink.NewestAsync(Cancel));
        Assert.Equal(
            "mix",
            Assert.Single(await shop.Steps.BeginAsync(Guid.NewGuid(), "marking", [piece.Serial], "I-1", "Ines", Cancel)).Field
        );
        InkMixRecord kept = Assert.Single(await shop.Shop.Records.Steps.FindInkMixesAsync("I-1", Cancel));
        Assert.Equal("wrong lots", Assert.Single(await shop.Shop.Records.Steps.StepUndosAsync([kept.Id], Cancel)).Reason);
        TracedPiece traced = (await shop.Trace.PieceAsync(piece.Serial, Cancel))!;
        // told still, with its name
        Assert.Contains(traced.Snapshot.History.All, line => line.Sentence(traced) == "marking begun with ink I-1");
    }
}
