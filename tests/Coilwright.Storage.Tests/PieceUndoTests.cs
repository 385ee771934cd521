using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Steps;

namespace Coilwright.Storage.Tests;

/// <summary>An event that was taken back is still in the file, and no question finds a piece by it.</summary>
public class PieceUndoTests
{
    private static CancellationToken Cancel => TempShop.Cancel;

    private protected virtual Task<TempShop> StartAsync() => TempShop.StartAsync();

    [Fact]
    public async Task No_question_finds_a_piece_by_an_event_that_was_taken_back_though_it_is_kept()
    {
        await using TempShop temp = await StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        PieceRecord piece = new()
        {
            Id = Guid.NewGuid(),
            Serial = "P-1",
            RecipeId = batch.RecipeId,
            RevisionNumber = 1,
            TimeUtc = TempShop.Noon,
        };
        Assert.Null(await temp.Shop.Pieces.AddAsync(piece, [], Cancel));
        CustomerRecord customer = new(Guid.NewGuid(), "K-031", "Pell & Daughter", TempShop.Noon, null);
        Assert.True(await temp.Shop.Customers.AddAsync(customer, Cancel));
        InkMixRecord mix = new()
        {
            Id = Guid.NewGuid(),
            Label = "I-1",
            Lots = "A-11",
            PotLifeS = 8 * 3600,
            FullCureS = 6 * 86400,
            SheetC = 20,
            DoublesPer10C = true,
            RoomC = 20,
            TimeUtc = TempShop.Noon,
        };
        Assert.True(await temp.Shop.Steps.AddInkMixAsync(mix, Cancel));
        BasketRecord basket = new()
        {
            Id = Guid.NewGuid(),
            Label = "K1",
            Kind = "wax",
            Lot = "W-3",
            LeastS = 600,
            LimitC = 65,
            LimitOf = "abs",
            TimeUtc = TempShop.Noon,
        };
        StepBegun potted = Begun(piece, "potting") with { BasketId = basket.Id };
        await temp.Shop.Steps.AddBasketAsync(
            basket,
            new BathReadingRecord(Guid.NewGuid(), basket.Id, "60", 60, "", TempShop.Noon),
            [potted],
            Cancel
        );
        StepBegun marked = Begun(piece, "marking") with { MixId = mix.Id };
        MadeGolden golden = new()
        {
            Id = Guid.NewGuid(),
            PieceId = piece.Id,
            TimeUtc = Later,
        };
        Shipped shipped = new()
        {
            Id = Guid.NewGuid(),
            PieceId = piece.Id,
            CustomerId = customer.Id,
            TimeUtc = Later,
        };
        await temp.Shop.Pieces.AddEventsAsync([marked, golden, shipped], [], Cancel);
        PieceQuery[] questions = [new(BasketId: basket.Id), new(MixId: mix.Id), new(CustomerId: customer.Id)];
        foreach (PieceQuery question in questions)
        {
            Assert.Equal(piece, Assert.Single(await temp.Shop.Pieces.WithAsync(question, Cancel)));
        }

        Assert.Equal(piece, await temp.Shop.Pieces.GoldenAsync(piece.RecipeId, Cancel));
        Assert.Empty(await temp.Shop.Pieces.InShopAsync(Cancel));

        Undone[] undoing =
        [
            .. new PieceEvent[] { shipped, golden, marked, potted }.Select(one => new Undone
            {
                Id = Guid.NewGuid(),
                PieceId = piece.Id,
                About = one.Id,
                Reason = "entered wrongly",
                TimeUtc = Later,
            }),
        ];
        await temp.Shop.Pieces.AddEventsAsync(undoing, [], Cancel);
        await temp.ReopenAsync();

        foreach (PieceQuery question in questions)
        {
            Assert.Empty(await temp.Shop.Pieces.WithAsync(question, Cancel));
        }

        Assert.Null(await temp.Shop.Pieces.GoldenAsync(piece.RecipeId, Cancel));
        Assert.Equal(piece, Assert.Single(await temp.Shop.Pieces.InShopAsync(Cancel)));
        Assert.Equal([potted, marked, golden, shipped, .. undoing], await temp.Shop.Pieces.EventsAsync([piece.Id], Cancel));
    }

    private static DateTimeOffset Later => TempShop.Noon.AddMinutes(1);

    private static StepBegun Begun(PieceRecord piece, string step) =>
        new()
        {
            Id = Guid.NewGuid(),
            PieceId = piece.Id,
            Step = step,
            TimeUtc = Later,
        };
}
