using Coilwright.Analysis.Quantities;
using Coilwright.Application.Printing;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Recipes.Circuits;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Application.Tests.Printing;

public sealed class PrintPiecePaperTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_piece_has_each_paper_or_the_reason_why_not()
    {
        await using DemoShop shop = await DemoShop.MakeAsync();
        PrintPiecePaper print = shop.Opened.Use<PrintPiecePaper>();
        TracedPiece back = await PieceAsync(shop, "2647-002"),
            fresh = await PieceAsync(shop, "2649-001");

        Assert.All(PrintPiecePaper.Kinds, kind => Assert.Equal("", Print(print, kind, back).Why));
        string[] refused = [.. PrintPiecePaper.Kinds.Where(kind => Print(print, kind, fresh).Sheet is null)];

        Assert.Equal(["certificate", "packing", "repair"], refused);
        Assert.All(refused, kind => Assert.NotEqual(("", ""), (Print(print, kind, fresh).Why, Print(print, kind, fresh).ToDo)));
        Assert.Equal(new PiecePaper(null), Print(print, "poster", back));
    }

    /// <summary>The certificate tells the limits of its day, whatever the shop asks of pieces later.</summary>
    [Fact]
    public async Task A_certificate_keeps_the_limits_that_its_test_was_judged_by()
    {
        await using DemoShop shop = await DemoShop.MakeAsync();
        PrintPiecePaper print = shop.Opened.Use<PrintPiecePaper>();
        TracedPiece tested = await PieceAsync(shop, "2647-002");
        string before = SheetHtmlWriter.Render([Print(print, "certificate", tested).Sheet!]);
        IReadOnlyList<TestLine> judged = tested.Snapshot.History.InForce.OfType<Tested>().Last().Limits;
        string rules = (
            await System.IO.File.ReadAllTextAsync(Path.Combine(DemoShop.Root, "demo", "rules", "lantern-quay.json"), Cancel)
        ).Replace("\"dcResistance\": \"3 %\"", "\"dcResistance\": \"9 %\"", StringComparison.Ordinal);
        Assert.Empty(await shop.Opened.Services.Pieces.Shelf.Rules.KeepAsync(Guid.NewGuid(), rules, "Mara", Cancel));

        TracedPiece later = await PieceAsync(shop, "2647-002");
        ShopRules today = await shop.Opened.Services.Pieces.Shelf.Rules.CurrentAsync(Cancel);
        IReadOnlyList<TestLine> asked = FinalTestService
            .Asked(later.Snapshot.Recipe, await shop.Opened.Services.Pieces.Test.GoldenAsync(later.Snapshot, Cancel), today)
            .Lines;
        Assert.NotEmpty(judged);
        Assert.Equal(0.09, today.TestTolerances[QuantityKey.DcResistance]);
        Assert.NotEqual(judged, asked); // a test made today would ask for something else
        Assert.Equal(before, SheetHtmlWriter.Render([Print(print, "certificate", later).Sheet!]));
    }

    private static PiecePaper Print(PrintPiecePaper print, string kind, TracedPiece piece) =>
        print.PrintAsync(kind, piece, UsualLoad.Player.Load, Cancel).GetAwaiter().GetResult();

    private static async Task<TracedPiece> PieceAsync(DemoShop shop, string serial) =>
        Assert.IsType<TracedPiece>(await shop.Opened.Services.Pieces.Trace.PieceAsync(serial, Cancel));
}
