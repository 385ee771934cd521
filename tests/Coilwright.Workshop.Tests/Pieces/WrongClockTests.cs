using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Tests.Pieces;

/// <summary>One entry while the clock stood ahead blocks nothing for good, is seen afterwards, and its time can be mended.</summary>
public sealed class WrongClockTests
{
    private static CancellationToken Cancel => PieceShop.Cancel;

    [Fact]
    public async Task A_clock_that_jumped_ahead_is_asked_about()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        await shop.MakeAsync(1);
        Assert.Null(await shop.Shelf.ClockQuestionAsync(Cancel));
        shop.Shop.Clock.Advance(TimeSpan.FromDays(400));
        ClockQuestion question = (await shop.Shelf.ClockQuestionAsync(Cancel))!;
        Assert.False(question.IsBehind);
        Assert.Contains("is the clock right?", question.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_record_of_a_clock_ahead_blocks_no_step_once_the_clock_is_said_to_be_right()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceRecord one = await shop.MakeAsync(1),
            other = await shop.MakeAsync(2);
        shop.Shop.Clock.Advance(TimeSpan.FromDays(400));
        Assert.Empty(await shop.Steps.HoldAsync(Guid.NewGuid(), [other.Serial], "looks bent", "Ines", Cancel));
        shop.Shop.Clock.Advance(TimeSpan.FromDays(-400) + TimeSpan.FromMinutes(10));

        Assert.True((await shop.Shelf.ClockQuestionAsync(Cancel))!.IsBehind);
        await shop.Shelf.ClockIsRightAsync("Ines", Cancel);
        Assert.Null(await shop.Shelf.ClockQuestionAsync(Cancel));
        DateTimeOffset now = await shop.Shelf.NowUtcAsync(Cancel);
        Assert.Equal(shop.Shop.Clock.GetUtcNow(), now);
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [one.Serial], "", "Ines", Cancel));
        Assert.Equal(now, (await shop.Shelf.FindAsync(one.Serial, Cancel))!.History.InForce[^1].TimeUtc);

        TracedPiece held = (await shop.Trace.PieceAsync(other.Serial, Cancel))!;
        Assert.Contains("a clock that was ahead", PieceEventFormatter.Ahead(held.Snapshot.History.All[0], held), StringComparison.Ordinal);
        Assert.DoesNotContain((await shop.Trace.PieceAsync(one.Serial, Cancel))!.Snapshot.History.InForce, held.Snapshot.History.IsAhead);
    }

    [Fact]
    public async Task A_step_ended_early_by_a_clock_ahead_is_marked_and_its_time_mended()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceRecord piece = await shop.MakeAsync(1);
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [piece.Serial], "", "Ines", Cancel));
        Assert.Empty(
            await shop.Potting.InAsync(
                new BasketEntry
                {
                    Id = Guid.NewGuid(),
                    Label = "K9",
                    Lot = "W-3",
                    Bath = "60",
                    Pieces = [piece.Serial],
                    Person = "Ines",
                },
                Cancel
            )
        );
        Assert.NotEmpty(await shop.Potting.OutAsync(Guid.NewGuid(), "K9", "Ines", Cancel));
        shop.Shop.Clock.Advance(TimeSpan.FromHours(1));
        Assert.Empty(await shop.Potting.OutAsync(Guid.NewGuid(), "K9", "Ines", Cancel));
        shop.Shop.Clock.Advance(TimeSpan.FromMinutes(-58));
        await shop.Shelf.ClockIsRightAsync("Ines", Cancel);

        TracedPiece traced = (await shop.Trace.PieceAsync(piece.Serial, Cancel))!;
        Assert.Equal(["potting"], traced.Snapshot.History.EndedEarly);
        StepEnded ended = traced.Snapshot.History.All.OfType<StepEnded>().Last();
        Assert.Contains("may have ended too early", PieceEventFormatter.Ahead(ended, traced), StringComparison.Ordinal);

        DateTimeOffset right = shop.Shop.Clock.GetUtcNow();
        string typed = ShopTime.Words(right, (await shop.Shelf.Rules.CurrentAsync(Cancel)).Zone);
        TimeMending mending = new(shop.Shop.Records.Pieces, shop.Shelf, shop.Shop.Clock);
        Assert.Equal(
            ["reason", "at"],
            (await mending.MendAsync(Guid.NewGuid(), [piece.Serial], ended.Id, "2031-01-01 10:00", "", "Ines", Cancel)).Select(problem =>
                problem.Field
            )
        );
        Assert.Empty(await mending.MendAsync(Guid.NewGuid(), [piece.Serial], ended.Id, typed, "clock was an hour ahead", "Ines", Cancel));

        traced = (await shop.Trace.PieceAsync(piece.Serial, Cancel))!;
        Assert.Empty(traced.Snapshot.History.EndedEarly);
        Assert.InRange(
            (traced.Snapshot.History.Runs.Single(run => run.Step == "potting").EndedUtc!.Value - right).Duration(),
            TimeSpan.Zero,
            TimeSpan.FromMinutes(1)
        );
        Assert.Contains(traced.Snapshot.History.All, one =>
            one.Sentence(traced).Contains("because clock was an hour ahead", StringComparison.Ordinal)
        );
        // the wrong one stays to be read
        Assert.Equal(ended.TimeUtc, traced.Snapshot.History.All.Single(one => one.Id == ended.Id).TimeUtc);
    }

    /// <summary>Decision 9: a clock set back shortens no hold.</summary>
    [Fact]
    public async Task Saying_that_the_clock_is_right_shortens_no_hold()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceRecord piece = await shop.MakeAsync(1);
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [piece.Serial], "", "Ines", Cancel));
        Assert.Empty(
            await shop.Potting.InAsync(
                new BasketEntry
                {
                    Id = Guid.NewGuid(),
                    Label = "K9",
                    Lot = "W-3",
                    Bath = "60",
                    Pieces = [piece.Serial],
                    Person = "Ines",
                },
                Cancel
            )
        );
        DateTimeOffset earliest = (await shop.Potting.GoingAsync(Cancel))[0].ToBasket().EarliestOutUtc;
        shop.Shop.Clock.Advance(TimeSpan.FromDays(-3));
        await shop.Shelf.ClockIsRightAsync("Ines", Cancel);
        Assert.Equal(earliest, (await shop.Potting.GoingAsync(Cancel))[0].ToBasket().EarliestOutUtc);
        Assert.NotEmpty(await shop.Potting.OutAsync(Guid.NewGuid(), "K9", "Ines", Cancel));
    }
}
