using Coilwright.Application.Printing;
using Coilwright.Workshop.Recipes.Circuits;
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

    private static PiecePaper Print(PrintPiecePaper print, string kind, TracedPiece piece) =>
        print.PrintAsync(kind, piece, UsualLoad.Player.Load, Cancel).GetAwaiter().GetResult();

    private static async Task<TracedPiece> PieceAsync(DemoShop shop, string serial) =>
        Assert.IsType<TracedPiece>(await shop.Opened.Services.Pieces.Trace.PieceAsync(serial, Cancel));
}
