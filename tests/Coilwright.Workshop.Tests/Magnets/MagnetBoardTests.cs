using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.Tests.Pieces;
using TestResult = Coilwright.Workshop.Pieces.TestResult;

namespace Coilwright.Workshop.Tests.Magnets;

/// <summary>Story 22: poles read at the jig's distance, their spread, a reversed one that stops, and what waits to be charged.</summary>
public sealed class MagnetBoardTests
{
    private static CancellationToken Cancel => PieceShop.Cancel;

    [Fact]
    public async Task A_reversed_pole_stops_its_piece_and_says_what_to_do()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string right = await TestedAsync(shop, number: 1, poles: "940 950 960 970 1000 1010"),
            wrong = await TestedAsync(shop, number: 2, poles: "950 950 960 -955 950 960");
        MagnetBoard board = await BoardAsync(shop);

        MagnetLine stopped = Assert.Single(board.Stopped);
        Assert.Equal((wrong, TestResult.Stop), (stopped.Piece.Piece.Serial, stopped.Judged!.Result));
        Assert.Equal([4], stopped.Reversed);
        Assert.Contains("Turn the magnet of pole 4 round", stopped.Advice, StringComparison.Ordinal);
        Assert.Equal("", board.Lines.Single(line => line.Piece.Piece.Serial == right).Advice);
    }

    /// <summary>940 to 1,010 G about a mean of 971.7 G: 70/971.7 = 7.2 % (arithmetic).</summary>
    [Fact]
    public async Task A_lot_tells_the_field_of_all_its_poles_at_one_distance()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        await TestedAsync(shop, number: 1, poles: "940 950 960 970 1000 1010");
        await TestedAsync(shop, number: 2, poles: "700 710 700 705 700 702", jig: "3 mm");
        IReadOnlyList<MagnetLot> lots = (await BoardAsync(shop)).Lots;

        Assert.Equal(["M-5", "M-5"], lots.Select(lot => lot.Lot)); // a field at 1 mm and one at 3 mm are two things
        MagnetLot near = lots.Single(lot => lot.JigM < 2e-3);
        Assert.Equal((0.0940, 0.1010), (near.Range.LowT, near.Range.HighT));
        Assert.Equal(70 / (5830 / 6.0), near.Spread, 1e-9);
        Assert.Empty(near.Stopped);
    }

    [Fact]
    public async Task What_waits_to_be_charged_leaves_the_list_when_it_was_said()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string serial = (await shop.MakeAsync(1)).Serial;
        MagnetLine before = Assert.Single((await BoardAsync(shop)).InSteps);
        Assert.Equal((serial, "magnets"), (before.Piece.Piece.Serial, before.WaitingStep));

        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [serial], "", "Ines", Cancel)); // without a level
        Assert.Equal(serial, Assert.Single((await BoardAsync(shop)).Unsaid).Piece.Piece.Serial);

        Assert.Empty(await shop.Magnets.ChargeAsync(Guid.NewGuid(), [serial], new ChargeEntry("80 %"), "", "Ines", Cancel));
        MagnetBoard after = await BoardAsync(shop);
        Assert.Empty(after.Unsaid);
        MagnetCharge charge = Assert.Single(after.Charged).Charge!;
        Assert.Equal(("knocked down to 80 % of full", "Ines"), (charge.Words, charge.Person));
    }

    private static async Task<string> TestedAsync(PieceShop shop, int number, string poles, string jig = "")
    {
        string serial = (await shop.MakeAsync(number)).Serial;
        await shop.ThroughStepsAsync(serial, basket: $"K{number}", mix: $"I-{number}");
        TestEntry entry = new()
        {
            Id = Guid.NewGuid(),
            Serial = serial,
            Resistance = "7.8 k",
            Poles = poles,
            Jig = jig,
            Person = "Ines",
        };
        Assert.Empty((await shop.Test.TestAsync(entry, Cancel)).Problems);
        return serial;
    }

    private static async Task<MagnetBoard> BoardAsync(PieceShop shop)
    {
        ShopRules rules = await shop.Shelf.Rules.CurrentAsync(Cancel);
        IReadOnlyList<PieceSnapshot> open = await shop.Shelf.OpenAsync(Cancel);
        return new MagnetBoard([.. open.Select(life => MagnetLine.Of(life, rules))], "", [], rules.Zone);
    }
}
