using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Sets;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Tests.Sets;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Tests.Pieces;

/// <summary>What was entered wrongly is taken back: the piece stands as if it had not been, and both lines stay to be read.</summary>
public sealed class UndoTests
{
    private static readonly TimeZoneInfo s_zone = TimeZoneInfo.FindSystemTimeZoneById("Europe/Lisbon");

    private static CancellationToken Cancel => PieceShop.Cancel;

    [Fact]
    public async Task A_step_taken_back_leaves_the_piece_as_it_stood_and_both_lines_in_its_history()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceRecord piece = await shop.MakeAsync(1);
        StepStatus before = await StatusAsync(shop, piece);
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [piece.Serial], "", "Ines", Cancel));
        Assert.NotEqual(before, await StatusAsync(shop, piece));

        Assert.Empty(await UndoAsync(shop, piece.Serial, "the other piece was meant"));

        Assert.Equal(before, await StatusAsync(shop, piece));
        await shop.ReopenAsync();
        TracedPiece traced = (await shop.Trace.PieceAsync(piece.Serial, Cancel))!;
        Assert.Equal(
            [
                "magnets begun (gone)",
                "magnets ended (gone)",
                "taken back: magnets ended, because the other piece was meant",
                "taken back: magnets begun, because the other piece was meant",
            ],
            traced.Snapshot.History.All.Select(one => one.Sentence(traced) + (traced.Snapshot.History.IsTakenBack(one) ? " (gone)" : ""))
        );
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [piece.Serial], "", "Ines", Cancel)); // and may be done anew
    }

    [Fact]
    public async Task Marking_taken_back_ends_its_hold_and_its_cure_and_frees_the_trace_of_the_ink()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceRecord piece = await shop.MakeAsync(1);
        await shop.ThroughStepsAsync(piece.Serial);
        Assert.NotEmpty(Assert.Single(await shop.Trace.FindAsync("I-1", Cancel)).Pieces);
        Assert.NotNull(Assert.Single((await BoardAsync(shop)).Lines).PackFromUtc);

        Assert.Empty(await UndoAsync(shop, piece.Serial, "not printed"));

        BoardLine line = Assert.Single((await BoardAsync(shop)).Lines);
        Assert.Equal((StepState.MayMove, "marking"), (line.Status.State, line.Status.Step));
        Assert.Null(line.PackFromUtc);
        Assert.Empty(Assert.Single(await shop.Trace.FindAsync("I-1", Cancel)).Pieces);
        TracedPiece traced = (await shop.Trace.PieceAsync(piece.Serial, Cancel))!;
        Assert.Empty(traced.Mixes);
        // told still, with its name
        Assert.Contains(traced.Snapshot.History.All, one => one.Sentence(traced) == "marking begun with ink I-1");
    }

    [Fact]
    public async Task A_test_taken_back_counts_no_more_and_the_golden_piece_falls_with_it()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceRecord piece = await shop.MakeAsync(1),
            other = await shop.MakeAsync(2);
        await shop.ThroughStepsAsync(piece.Serial);
        TestEntry entry = new()
        {
            Id = Guid.NewGuid(),
            Serial = piece.Serial,
            Resistance = "7.80 k",
            Temperature = "20",
            Swing = PieceDayTests.Swing(shop),
            Golden = true,
        };
        Assert.True((await shop.Test.TestAsync(entry, Cancel)).Verdict!.Passes);
        Assert.NotEmpty(await shop.Test.GoldenAsync((await shop.Shelf.FindAsync(other.Serial, Cancel))!, Cancel));

        Assert.Empty(await UndoAsync(shop, piece.Serial, "meter stood on the wrong range"));

        PieceSnapshot life = (await shop.Shelf.FindAsync(piece.Serial, Cancel))!;
        Assert.Null(life.History.Test);
        Assert.False(life.History.IsGolden);
        Assert.Empty(await shop.Test.GoldenAsync((await shop.Shelf.FindAsync(other.Serial, Cancel))!, Cancel));
        Assert.Contains(await shop.DispatchService.ShipAsync(Guid.NewGuid(), [piece.Serial], "K-031", "Ines", Cancel), problem =>
            problem.Message.Contains("final test comes before packing", StringComparison.Ordinal)
        );
        // the same entry sent once more by an outbox does not bring it back
        Assert.Empty((await shop.Test.TestAsync(entry, Cancel)).Problems);
        Assert.Null((await shop.Shelf.FindAsync(piece.Serial, Cancel))!.History.Test);
        Assert.Empty((await shop.Test.TestAsync(entry with { Id = Guid.NewGuid(), Golden = false }, Cancel)).Problems);
        Assert.NotNull((await shop.Shelf.FindAsync(piece.Serial, Cancel))!.History.Test);
    }

    [Fact]
    public async Task A_basket_that_never_went_in_is_taken_back_with_all_its_pieces_or_not_at_all()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceRecord one = await shop.MakeAsync(1),
            two = await shop.MakeAsync(2);
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [one.Serial, two.Serial], "", "Ines", Cancel));
        Assert.Empty(await shop.Potting.InAsync(PieceShop.Basket("K1", one.Serial, two.Serial), Cancel));
        Assert.Empty(await shop.Steps.HoldAsync(Guid.NewGuid(), [two.Serial], "lead nicked", "Ines", Cancel));
        UndoEntry entry = new()
        {
            Id = Guid.NewGuid(),
            Serials = [],
            Basket = "k1",
            Reason = "bath was cold",
            Person = "Ines",
        };

        Problem refused = Assert.Single(await shop.Undo.UndoAsync(entry, Cancel));
        Assert.Equal((two.Serial, true), (refused.Understood, refused.Message.Contains("held: lead nicked", StringComparison.Ordinal)));
        Assert.Equal(2, Assert.Single(await shop.Potting.GoingAsync(Cancel)).Pieces.Count); // nothing half done
        Assert.Empty(await UndoAsync(shop, two.Serial, "it was the other one"));
        Assert.Empty(await shop.Undo.UndoAsync(entry, Cancel));

        Assert.Empty(await shop.Potting.GoingAsync(Cancel));
        Assert.Equal("may go to potting", (await StatusAsync(shop, one)).Words);
        Assert.Empty(Assert.Single(await shop.Trace.FindAsync("K1", Cancel)).Pieces);
        Assert.Equal("basket", Assert.Single(await shop.Undo.UndoAsync(entry with { Id = Guid.NewGuid() }, Cancel)).Field);
        Assert.Empty(await shop.Potting.InAsync(PieceShop.Basket("K1", one.Serial, two.Serial), Cancel));
    }

    [Fact]
    public async Task A_hold_that_the_bath_put_on_is_lifted_and_never_taken_back()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceRecord piece = await shop.MakeAsync(1);
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [piece.Serial], "", "Ines", Cancel));
        Assert.Empty(await shop.Potting.InAsync(PieceShop.Basket("K1", piece.Serial), Cancel));
        Assert.NotNull((await shop.Potting.ReadBathAsync(Guid.NewGuid(), "K1", "67", "Ines", Cancel)).Alarm);
        Assert.Equal(
            "take the reading back if it was mistyped; else lift the hold with what the inspection found",
            Assert.Single(await UndoAsync(shop, piece.Serial, "typed wrongly")).Allowed
        );
        Assert.Empty(await shop.Steps.LiftAsync(Guid.NewGuid(), [piece.Serial], "looked at", "Joss", Cancel));
        Assert.Empty(await UndoAsync(shop, piece.Serial, "looked at another one")); // the hold runs again
        Assert.Contains((await shop.Shelf.FindAsync(piece.Serial, Cancel))!.History.Holds, hold => hold.LiftedUtc is null);
    }

    [Fact]
    public async Task A_shipment_is_taken_back_on_its_day_and_later_only_by_a_return()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceRecord piece = await ShippedAsync(shop);
        Assert.Empty(await UndoAsync(shop, piece.Serial, "the parcel stands here still"));
        Assert.True((await shop.Shelf.FindAsync(piece.Serial, Cancel))!.IsInShop);
        Assert.Contains(await shop.Shelf.OpenAsync(Cancel), life => life.Piece.Serial == piece.Serial); // on the board again
        Assert.Empty(Assert.Single(await shop.Trace.FindAsync("K-031", Cancel)).Pieces);

        Assert.Empty(await shop.DispatchService.ShipAsync(Guid.NewGuid(), [piece.Serial], "K-031", "Ines", Cancel));
        shop.Shop.Clock.Advance(TimeSpan.FromDays(1));
        Problem late = Assert.Single(await UndoAsync(shop, piece.Serial, "changed my mind"));
        Assert.Contains("its parcel has left", late.Message, StringComparison.Ordinal);
        Assert.Equal("book its return when it comes back", late.Allowed);
        Assert.Empty(await shop.Returns.ReturnAsync(Guid.NewGuid(), piece.Serial, "silent", "Ines", Cancel));
        Assert.Empty(await UndoAsync(shop, piece.Serial, "another serial came back"));
        Assert.False((await shop.Shelf.FindAsync(piece.Serial, Cancel))!.IsInShop);
    }

    [Fact]
    public async Task Only_what_was_shown_is_taken_back_and_the_same_entry_twice_takes_one_thing_back()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceRecord piece = await shop.MakeAsync(1);
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [piece.Serial], "", "Ines", Cancel));
        Guid shown = (await shop.Shelf.FindAsync(piece.Serial, Cancel))!.History.InForce[^1].Id;
        // from another tablet meanwhile
        Assert.Empty(await shop.Steps.HoldAsync(Guid.NewGuid(), [piece.Serial], "lead nicked", "Joss", Cancel));
        UndoEntry stale = Entry(piece.Serial, "wrong piece") with { Shown = shown };
        Assert.Contains("held: lead nicked", Assert.Single(await shop.Undo.UndoAsync(stale, Cancel)).Message, StringComparison.Ordinal);

        UndoEntry entry = Entry(piece.Serial, "wrong piece");
        Assert.Empty(await shop.Undo.UndoAsync(entry, Cancel));
        Assert.Empty(await shop.Undo.UndoAsync(entry, Cancel));
        // the hold is gone, magnets begun and ended stay
        Assert.Equal(2, (await shop.Shelf.FindAsync(piece.Serial, Cancel))!.History.InForce.Count);
    }

    [Fact]
    public async Task What_cannot_be_taken_back_is_refused_with_what_to_do_and_every_problem_at_once()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceRecord fresh = await shop.MakeAsync(1),
            mended = await shop.MakeAsync(2);
        Assert.Empty(await shop.Assembly.ReplaceCoilAsync(Guid.NewGuid(), mended.Serial, "BS-002", "B-7/3", "nicked", "Ines", Cancel));
        IReadOnlyList<Problem> problems = await shop.Undo.UndoAsync(
            new UndoEntry
            {
                Id = Guid.NewGuid(),
                Serials = [fresh.Serial, mended.Serial, "9999-001"],
                Reason = " ",
            },
            Cancel
        );
        Assert.Equal(["reason", "pieces", "piece", "piece"], problems.Select(problem => problem.Field));
        Assert.Equal(
            ["exchange a coil, or scrap the piece", "exchange them the other way round"],
            problems.Skip(2).Select(problem => problem.Allowed)
        );
    }

    private static UndoEntry Entry(string serial, string reason) =>
        new()
        {
            Id = Guid.NewGuid(),
            Serials = [serial],
            Reason = reason,
            Person = "Joss",
        };

    [Fact]
    public async Task A_charge_taken_back_leaves_the_one_before_and_a_set_taken_back_leaves_the_piece_free()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string[] serials = await SetTests.MakeAsync(shop);
        string serial = serials[0];
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [serial], "", "Ines", Cancel, new ChargeEntry("full")));
        Assert.Empty(await shop.Magnets.ChargeAsync(Guid.NewGuid(), [serial], new ChargeEntry("80 %"), "", "Ines", Cancel));
        Assert.Empty(await UndoAsync(shop, serial, "it was the other one"));
        Assert.Equal(1, MagnetCharge.Of((await shop.Shelf.FindAsync(serial, Cancel))!)!.Level.Share);
        Assert.Contains(
            "taken back: magnets charged anew, because it was the other one",
            (await WordsAsync()).Last(),
            StringComparison.Ordinal
        );

        Assert.Empty(
            (
                await shop.Sets.JoinAsync(
                    new SetEntry
                    {
                        Id = Guid.NewGuid(),
                        Name = "Lantern 3",
                        Places = [new SetPlace("neck", serial), new SetPlace("bridge", serials[1])],
                        Why = "these two",
                        Person = "Ines",
                    },
                    Cancel
                )
            ).Problems
        );
        Assert.Empty(await UndoAsync(shop, serial, "wrong one"));
        Assert.Null(SetMembership.Of((await shop.Shelf.FindAsync(serial, Cancel))!));
        Assert.Contains("taken back: joined a set, because wrong one", (await WordsAsync()).Last(), StringComparison.Ordinal);

        async Task<IEnumerable<string>> WordsAsync()
        {
            TracedPiece traced = (await shop.Trace.PieceAsync(serial, Cancel))!;
            return traced.Snapshot.History.All.Select(one => one.Sentence(traced));
        }
    }

    [Fact]
    public async Task Leaving_a_set_is_not_taken_back_when_its_name_was_taken_meanwhile()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string[] serials = await SetTests.MakeAsync(shop);
        await JoinAsync("Lantern 3", ("neck", serials[0]), ("middle", serials[1]), ("bridge", serials[2]));
        Assert.Empty(await shop.Sets.LeaveAsync(Guid.NewGuid(), [serials[2]], "scratched", "Ines", Cancel));
        Assert.Empty(await UndoAsync(shop, serials[2], "another one was scratched")); // its place is free: it goes back
        Assert.Equal("bridge", SetMembership.Of((await shop.Shelf.FindAsync(serials[2], Cancel))!)!.Place);

        Assert.Empty(await shop.Sets.LeaveAsync(Guid.NewGuid(), serials[..3], "order cancelled", "Ines", Cancel));
        await JoinAsync("lantern 3", ("neck", serials[0]), ("bridge", serials[3]));
        Problem problem = Assert.Single(await UndoAsync(shop, serials[2], "not cancelled"));
        Assert.Contains("another set has that name meanwhile", problem.Message, StringComparison.Ordinal);
        Assert.Contains(serials[3], problem.Message, StringComparison.Ordinal);
        Assert.Null(SetMembership.Of((await shop.Shelf.FindAsync(serials[2], Cancel))!));

        async Task JoinAsync(string name, params (string Place, string Serial)[] places) =>
            Assert.Empty(
                (
                    await shop.Sets.JoinAsync(
                        new SetEntry
                        {
                            Id = Guid.NewGuid(),
                            Name = name,
                            Places = [.. places.Select(one => new SetPlace(one.Place, one.Serial))],
                            Why = "these",
                            Person = "Ines",
                        },
                        Cancel
                    )
                ).Problems
            );
    }

    private static Task<IReadOnlyList<Problem>> UndoAsync(PieceShop shop, string serial, string reason) =>
        shop.Undo.UndoAsync(Entry(serial, reason), Cancel);

    private static async Task<StepStatus> StatusAsync(PieceShop shop, PieceRecord piece) =>
        (await shop.Shelf.FindAsync(piece.Serial, Cancel))!.Status(shop.Shop.Clock.GetUtcNow(), s_zone);

    private static Task<ClockBoard> BoardAsync(PieceShop shop) =>
        ClockBoard.ReadAsync(shop.Shop.Records.Steps, shop.Shelf, shop.Potting, Cancel);

    private static async Task<PieceRecord> ShippedAsync(PieceShop shop)
    {
        PieceRecord piece = await shop.MakeAsync(1);
        await shop.ThroughStepsAsync(piece.Serial);
        shop.Shop.Clock.Advance(TimeSpan.FromDays(7));
        Assert.True((
                await shop.Test.TestAsync(
                    new TestEntry
                    {
                        Id = Guid.NewGuid(),
                        Serial = piece.Serial,
                        Resistance = "7.80 k",
                        Temperature = "20",
                        Swing = PieceDayTests.Swing(shop),
                    },
                    Cancel
                )
            ).Verdict!.Passes);
        Assert.Empty(await shop.DispatchService.ShipAsync(Guid.NewGuid(), [piece.Serial], "K-031", "Ines", Cancel));
        return piece;
    }
}
