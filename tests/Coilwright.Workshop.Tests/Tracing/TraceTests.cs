using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Returns;
using Coilwright.Workshop.Stock;
using Coilwright.Workshop.Tests.Pieces;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Tests.Tracing;

/// <summary>
/// Story 19 and 24: a serial leads to everything, a spool to every piece, and a piece that comes back goes on with the same record.
/// </summary>
public sealed class TraceTests
{
    private static CancellationToken Cancel => PieceShop.Cancel;

    [Fact]
    public async Task A_serial_leads_to_everything_and_everything_leads_back()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        await SpoolAsync(shop, "0117", "L-31");
        PieceRecord one = await shop.MakeAsync(1),
            two = await shop.MakeAsync(2);
        await ShippedAsync(shop, one.Serial);

        TracedPiece piece = (await shop.Trace.PieceAsync(one.Serial, Cancel))!;

        TracedCoil slug = piece.Coils.Single(coil => coil.Place == "slug");
        Assert.Equal(("BS-001", "0117", "L-31", "Winder 2"), (slug.Tag, slug.Spool, slug.Lot, slug.Machine));
        Assert.Equal(["Mara"], slug.Persons);
        Assert.Equal("W-3", Assert.Single(piece.Baskets).Lot);
        Assert.Equal("A-11, B-4", Assert.Single(piece.Mixes).Lots);
        Assert.Equal("K-031", Assert.Single(piece.Customers).Reference);
        Assert.Contains(piece.Snapshot.Readings, reading => reading.Quantity == "dcResistance");
        foreach (
            (string asked, string kind) in new[]
            {
                ("0117", "spool"),
                ("l-31", "spool-lot"),
                ("M-5", "magnet-lot"),
                ("W-3", "bath-lot"),
                ("K1", "basket"),
                ("I-1", "ink"),
                ("A-11", "ink"),
                ("K-031", "customer"),
                ("pell & daughter", "customer"),
                ("Breakwater twin", "recipe"),
                ("B-7/BS-001", "coil"),
                ("bs-1", "coil"),
                (one.Serial, "piece"),
            }
        )
        {
            TraceHit hit = Assert.Single(await shop.Trace.FindAsync(asked, Cancel));
            Assert.Equal(kind, hit.Kind);
            Assert.Contains(hit.Pieces, state =>
                state.Serial == one.Serial && state.State.StartsWith("shipped", StringComparison.Ordinal) && state.Customer == "K-031"
            );
        }

        TraceHit spool = Assert.Single(await shop.Trace.FindAsync("0117", Cancel));
        Assert.Equal([one.Serial, two.Serial], spool.Pieces.Select(state => state.Serial));
        Assert.StartsWith("in the shop", spool.Pieces[1].State, StringComparison.Ordinal);
        Assert.Equal("B-7/BS-001", spool.Pieces[0].Through);
        Assert.Empty(await shop.Trace.FindAsync("no such thing", Cancel));
    }

    [Fact]
    public async Task Coils_that_stand_in_no_piece_are_told_with_their_spool_batch_and_winder()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        await SpoolAsync(shop, "0117", "L-31");
        TraceHit before = Assert.Single(await shop.Trace.FindAsync("0117", Cancel));
        Assert.NotEmpty(before.Loose);

        TracedCoil[] used = [.. (await shop.Trace.PieceAsync((await shop.MakeAsync(1)).Serial, Cancel))!.Coils];
        TraceHit after = Assert.Single(await shop.Trace.FindAsync("0117", Cancel));

        Assert.Equal(
            before.Loose.Select(coil => coil.Code).Except(used.Select(coil => BatchTags.CodeOf(coil.Batch, coil.Tag))),
            after.Loose.Select(coil => coil.Code)
        );
        Assert.True(after.Loose.Count < before.Loose.Count);
        TraceHit batch = Assert.Single(await shop.Trace.FindAsync("B-7", Cancel));
        Assert.Equal(after.Loose.Where(coil => coil.Code.StartsWith("B-7/", StringComparison.Ordinal)), batch.Loose);
        Assert.Equal(batch.Loose[0], Assert.Single(Assert.Single(await shop.Trace.FindAsync(batch.Loose[0].Code, Cancel)).Loose));
    }

    [Fact]
    public async Task A_name_is_erased_and_the_trace_holds()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceRecord piece = await shop.MakeAsync(1);
        await ShippedAsync(shop, piece.Serial);
        Assert.Empty(await shop.Customers.EraseAsync("K-031", Cancel));
        Assert.Empty(await shop.Trace.FindAsync("Pell & Daughter", Cancel));
        Assert.Equal(piece.Serial, Assert.Single(Assert.Single(await shop.Trace.FindAsync("K-031", Cancel)).Pieces).Serial);
        Assert.False(await shop.Shop.FileHoldsAsync("Pell & Daughter"), "the name is still in the file");
    }

    /// <summary>Story 24: 7.26 kΩ at dispatch, open now.</summary>
    [Fact]
    public async Task A_piece_comes_back_open_and_leaves_again_with_a_new_coil()
    {
        await using PieceShop shop = await PieceShop.StartAsync("7.30 kΩ");
        PieceRecord piece = await shop.MakeAsync(1);
        await ShippedAsync(shop, piece.Serial, "7.545 k", "30 °C"); // 7.26 kΩ at 20 °C
        Assert.NotEmpty(await shop.Returns.ReturnAsync(Guid.NewGuid(), piece.Serial, "", "Ines", Cancel));
        Assert.Empty(await shop.Returns.ReturnAsync(Guid.NewGuid(), piece.Serial, "no sound on one string side", "Ines", Cancel));
        Assert.Contains(await shop.Shelf.OpenAsync(Cancel), life => life.Piece.Id == piece.Id);

        (IReadOnlyList<Problem> problems, ReturnFinding? finding) = await shop.Returns.ExamineAsync(
            new TestEntry
            {
                Id = Guid.NewGuid(),
                Serial = piece.Serial,
                Resistance = "open",
                Person = "Ines",
            },
            Cancel
        );

        Assert.Empty(problems);
        Assert.Equal("7.26 kΩ → open", Assert.Single(finding!.Lines).Words.Replace(" at 20 °C", "", StringComparison.Ordinal));
        Assert.StartsWith("open", finding.Cause, StringComparison.Ordinal);
        Assert.Empty(
            await shop.Assembly.ReplaceCoilAsync(
                Guid.NewGuid(),
                piece.Serial,
                "BS-001",
                "B-7/2",
                "wire broken at the start",
                "Ines",
                Cancel
            )
        );
        Assert.Empty(
            await shop.Returns.CloseAsync(
                Guid.NewGuid(),
                piece.Serial,
                "slug coil wound anew",
                "warranty",
                "One coil was open; it was replaced.",
                giveUp: false,
                "Ines",
                Cancel
            )
        );
        Assert.Contains(await shop.DispatchService.ShipAsync(Guid.NewGuid(), [piece.Serial], "K-031", "Ines", Cancel), problem =>
            problem.Message.Contains("final test", StringComparison.Ordinal)
        );
        Assert.True((await shop.Test.TestAsync(Passing(shop, piece.Serial, "7.31 k", "20"), Cancel)).Verdict!.Passes);
        Assert.Empty(await shop.DispatchService.ShipAsync(Guid.NewGuid(), [piece.Serial], "K-031", "Ines", Cancel));

        TracedPiece traced = (await shop.Trace.PieceAsync(piece.Serial, Cancel))!;
        Assert.Equal([false, false, true], traced.Coils.Select(coil => coil.IsOut).Order());
        Assert.Equal(2, traced.Snapshot.History.InForce.Count(one => one is Shipped)); // nothing was written over
        Assert.Contains(traced.Snapshot.Readings, reading => reading.Typed == "7.545 k");
    }

    private static async Task ShippedAsync(PieceShop shop, string serial, string resistance = "7.80 k", string temperature = "20")
    {
        await shop.ThroughStepsAsync(serial);
        shop.Shop.Clock.Advance(TimeSpan.FromDays(6));
        FinalTestVerdict verdict = (await shop.Test.TestAsync(Passing(shop, serial, resistance, temperature), Cancel)).Verdict!;
        Assert.True(verdict.Passes, verdict.Verdict);
        Assert.Empty(await shop.DispatchService.ShipAsync(Guid.NewGuid(), [serial], "k-031", "Ines", Cancel));
    }

    private static TestEntry Passing(PieceShop shop, string serial, string resistance, string temperature) =>
        new()
        {
            Id = Guid.NewGuid(),
            Serial = serial,
            Resistance = resistance,
            Temperature = temperature,
            Swing = PieceDayTests.Swing(shop),
            Person = "Joss",
        };

    private static async Task SpoolAsync(PieceShop shop, string label, string lot) =>
        Assert.Empty(
            await shop.Shop.Stock.TakeInAsync(
                new SpoolRecord
                {
                    Id = Guid.NewGuid(),
                    Label = label,
                    Lot = lot,
                    Gauge = "AWG 42",
                    Insulation = "plain-enamel",
                    Build = "single",
                    TimeUtc = shop.Shop.Clock.GetUtcNow(),
                },
                "",
                "",
                Cancel
            )
        );
}
