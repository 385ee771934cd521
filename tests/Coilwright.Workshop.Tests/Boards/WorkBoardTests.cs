using Coilwright.Workshop.Boards;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Tests.Pieces;

namespace Coilwright.Workshop.Tests.Boards;

/// <summary>The board of the finishing steps, and what of it falls due.</summary>
public sealed class WorkBoardTests
{
    private static CancellationToken Cancel => PieceShop.Cancel;

    [Fact]
    public async Task Pieces_that_stand_alike_are_one_card_a_basket_is_one_and_stations_follow_the_work()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string[] serials = await MakeAsync(shop, 4);
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", serials[..3], "", "Ines", Cancel));
        Assert.Empty(await shop.Potting.InAsync(PieceShop.Basket("K2", serials[0]), Cancel));
        Assert.Empty(await shop.Ink.MixAsync(Guid.NewGuid(), "I-8", "A-11, B-4", "20 °C", "Ines", Cancel));

        IReadOnlyList<WorkStation> stations = WorkBoard.Of(await ClocksAsync(shop));
        Assert.Equal(["magnets", "potting", "marking"], stations.Select(station => station.Step));
        Assert.Equal(
            [serials[3], "Basket K2", $"{serials[1]}, {serials[2]}", "Ink mix I-8"],
            [
                .. stations[0]
                    .Cards.Concat(stations[1].Cards.OrderBy(card => card.Basket is null))
                    .Concat(stations[2].Cards)
                    .Select(one => one.Name),
            ]
        );
        Assert.Equal([1, 3, 0], stations.Select(station => station.Pieces));
        Assert.Contains(stations[1].Cautions, caution => caution.StartsWith("Molten wax burns", StringComparison.Ordinal));
        WorkCard basket = Assert.Single(stations[1].Cards, card => card.Basket is not null);
        Assert.Equal(("1 piece, wax lot W-3", StepState.Running), (basket.About, basket.Status.State));
        Assert.Equal(basket.Basket!.ToBasket().EarliestOutUtc, basket.Status.ChangesUtc);
    }

    [Fact]
    public async Task What_runs_falls_due_at_its_time_what_may_go_on_is_due_now_and_what_is_late_says_so()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string[] serials = await MakeAsync(shop, 1);
        DueLine ready = Assert.Single((await TodayAsync(shop)).Due);
        Assert.Equal((null, $"{serials[0]} waits for magnets"), (ready.AtUtc, ready.Words));

        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", serials, "", "Ines", Cancel));
        Assert.Empty(await shop.Potting.InAsync(PieceShop.Basket("K2", serials), Cancel));
        DueLine running = Assert.Single((await TodayAsync(shop)).Due);
        Assert.Equal((shop.Shop.Clock.GetUtcNow().AddMinutes(10), "Basket K2 may come out of the wax"), (running.AtUtc, running.Words));
        shop.Shop.Clock.Advance(TimeSpan.FromMinutes(11));
        Assert.Null(Assert.Single((await TodayAsync(shop)).Due).AtUtc);
        shop.Shop.Clock.Advance(TimeSpan.FromHours(2));
        DueLine late = Assert.Single((await TodayAsync(shop)).Due);
        Assert.Equal((StepState.Late, "Basket K2 is too long in the wax"), (late.Card.Status.State, late.Words));
    }

    [Fact]
    public async Task A_cure_falls_due_and_then_the_final_test_and_the_shipment_wait_each_with_its_place()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string serial = (await MakeAsync(shop, 1))[0];
        await shop.ThroughStepsAsync(serial);
        shop.Shop.Clock.Advance(TimeSpan.FromHours(-2));
        DueLine cure = Assert.Single((await TodayAsync(shop)).Due, line => line.Card.Mix is null);
        Assert.Equal($"{serial} may go on to final test", cure.Words);
        Assert.Equal(TimeSpan.FromHours(1), cure.AtUtc - shop.Shop.Clock.GetUtcNow());
        shop.Shop.Clock.Advance(TimeSpan.FromHours(2));
        DueLine test = Assert.Single((await TodayAsync(shop)).Due, line => line.Card.Mix is null);
        Assert.Equal((WorkPlace.Test, serial, $"{serial} waits for final test"), (test.Do.Place, test.Do.Name, test.Words));

        Assert.True((await shop.Test.TestAsync(Reading(serial, "7.90 k"), Cancel)).Verdict!.Passes);
        Assert.DoesNotContain((await TodayAsync(shop)).Due, line => line.Card.Mix is null); // its ink hardens through
        shop.Shop.Clock.Advance(TimeSpan.FromDays(6));
        DueLine ship = Assert.Single((await TodayAsync(shop)).Due);
        Assert.Equal((WorkPlace.Piece, serial, null), (ship.Do.Place, ship.Do.Name, ship.AtUtc));
    }

    [Fact]
    public async Task Ink_must_be_thrown_away_at_its_time_and_is_late_after_it()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        Assert.Empty(await shop.Ink.MixAsync(Guid.NewGuid(), "I-8", "A-11, B-4", "20 °C", "Ines", Cancel));
        DueLine good = Assert.Single((await TodayAsync(shop)).Due);
        InkMix mix = good.Card.Mix!;
        Assert.Equal((mix.DiscardUtc, "Ink mix I-8 must be thrown away"), (good.AtUtc!.Value, good.Words));
        shop.Shop.Clock.Advance(mix.DiscardUtc - shop.Shop.Clock.GetUtcNow() + TimeSpan.FromMinutes(1));
        DueLine gone = Assert.Single((await TodayAsync(shop)).Due);
        Assert.Equal((null, StepState.Late), (gone.AtUtc, gone.Card.Status.State));
    }

    [Fact]
    public async Task An_alarm_of_a_bath_is_the_first_line_and_its_pieces_are_not_due()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string[] serials = await MakeAsync(shop, 2);
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", serials, "", "Ines", Cancel));
        Assert.Empty(await shop.Potting.InAsync(PieceShop.Basket("K9", serials), Cancel));
        Assert.NotNull((await shop.Potting.ReadBathAsync(Guid.NewGuid(), "K9", "67", "Mara", Cancel)).Alarm);
        TodayBoard today = await TodayAsync(shop);
        TodayLine line = Assert.Single(today.Needed);
        Assert.Equal((TodayMark.Alarm, "Basket K9", WorkPlace.Board), (line.Mark, line.About, line.Do.Place));
        Assert.EndsWith("2 pieces are held.", line.Words, StringComparison.Ordinal);
        Assert.Empty(today.Due);

        Assert.Empty(await shop.Steps.LiftAsync(Guid.NewGuid(), serials, "no bobbin is warped", "Ines", Cancel));
        TodayBoard lifted = await TodayAsync(shop);
        Assert.Empty(lifted.Needed);
        Assert.Equal("Basket K9 may come out of the wax", Assert.Single(lifted.Due).Words);
    }

    [Fact]
    public async Task A_piece_that_a_person_held_and_one_that_failed_its_test_wait_with_their_reason()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string[] serials = await MakeAsync(shop, 2);
        Assert.Empty(await shop.Steps.HoldAsync(Guid.NewGuid(), [serials[0]], "a lead is nicked", "Ines", Cancel));
        await shop.ThroughStepsAsync(serials[1]);
        Assert.False((await shop.Test.TestAsync(Reading(serials[1], "open"), Cancel)).Verdict!.Passes);
        IReadOnlyList<TodayLine> needed = (await TodayAsync(shop)).Needed;
        Assert.Equal(2, needed.Count);
        TodayLine held = Assert.Single(needed, line => line.About == serials[0]),
            failed = Assert.Single(needed, line => line.About == serials[1]);
        Assert.Equal((TodayMark.Hold, "a lead is nicked", WorkPlace.Piece), (held.Mark, held.Words, held.Do.Place));
        Assert.Equal((WorkPlace.Test, "Test it again"), (failed.Do.Place, failed.Do.Words));
        Assert.Contains("fail: open", failed.Words, StringComparison.Ordinal);
    }

    private static TestEntry Reading(string serial, string ohms) =>
        new()
        {
            Id = Guid.NewGuid(),
            Serial = serial,
            Resistance = ohms,
            Temperature = "20",
            Swing = "up",
        };

    private static async Task<string[]> MakeAsync(PieceShop shop, int count)
    {
        List<string> serials = [];
        for (int at = 1; at <= count; at++)
        {
            serials.Add((await shop.MakeAsync(at)).Serial);
        }

        return [.. serials];
    }

    private static Task<ClockBoard> ClocksAsync(PieceShop shop) =>
        ClockBoard.ReadAsync(shop.Shop.Records, shop.Shelf, shop.Potting, Cancel);

    private static async Task<TodayBoard> TodayAsync(PieceShop shop) =>
        TodayBoard.Of([], new HashSet<(Guid, string)>(), [], await ClocksAsync(shop));
}
