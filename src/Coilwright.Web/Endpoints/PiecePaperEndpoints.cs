using Coilwright.Application.Composition;
using Coilwright.Application.Printing;
using Coilwright.Papers.Cards;
using Coilwright.Papers.Labels;
using Coilwright.Papers.Pdf;
using Coilwright.Papers.Pieces;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Circuits;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Papers of a piece, a recipe, a basket or a mix: for the screen, and as PDF.</summary>
internal static class PiecePaperEndpoints
{
    /// <summary>A paper is text and drawings of our own making with their own style; nothing else is let through.</summary>
    internal const string Policy = "default-src 'none'; img-src data:; style-src 'unsafe-inline'; base-uri 'none'; frame-ancestors 'none'";

    public static void MapPiecePapers(this IEndpointRouteBuilder app)
    {
        app.MapGet("/pieces/{serial}/label.pdf", LabelAsync);
        app.MapGet("/pieces/{serial}/papers/{paper}", PieceAsync);
        app.MapGet("/recipes/{id:guid}/papers/{paper}", RecipeAsync);
        app.MapPartsPaper();
        app.MapGet("/clocks/baskets/{id:guid}/tag.pdf", BasketAsync);
        app.MapGet("/clocks/inks/{label}/tag.pdf", InkAsync);
    }

    private static async Task<IResult> LabelAsync(string serial, string? size, ShopServices shop, CancellationToken cancel) =>
        await shop.Pieces.Shelf.FindAsync(serial, cancel) is { } life
            ? Results.File(LabelPdf.Render([PiecePapers.Label(life)], Size(size)), "application/pdf")
            : Answers.NotFoundPage();

    private static async Task<IResult> PieceAsync(
        string serial,
        string paper,
        string? size,
        HttpResponse response,
        ShopServices shop,
        PrintPiecePaper print,
        CancellationToken cancel
    )
    {
        if (await shop.Pieces.Trace.PieceAsync(serial, cancel) is not { } piece)
        {
            return Answers.NotFoundPage();
        }

        PiecePaper printed = await print.PrintAsync(Stem(paper), piece, UsualLoad.Player.Load, cancel);
        return printed.Sheet is { } sheet ? Show(sheet, paper, size, response) : Answers.NotFoundPage();
    }

    private static async Task<IResult> RecipeAsync(
        Guid id,
        string paper,
        int? revision,
        string? size,
        HttpResponse response,
        ShopServices shop,
        PrintRecipePaper papers,
        PrintPiecePaper print,
        CancellationToken cancel
    )
    {
        IReadOnlyList<RevisionRecord> revisions = await shop.Records.Recipes.RevisionsAsync(id, cancel);
        RevisionRecord? found = revision is null
            ? revisions.MaxBy(one => one.Number)
            : revisions.FirstOrDefault(one => one.Number == revision);
        if (found is null || RecipeReader.Read(found.Json).Value is not { } recipe || Stem(paper) is not ("card" or "wiring"))
        {
            return Answers.NotFoundPage();
        }

        PaperGround ground = await print.GroundAsync(cancel);
        if (Stem(paper) == "wiring")
        {
            return Show(PiecePapers.WiringOf(recipe, found.Letter, ground), paper, size, response);
        }

        bool released = found.State == RevisionState.Released;
        RecipeStatus status = new(released ? "released" : "draft", found.Reason, released ? found.ReleasedBy : found.Person);
        KnownParts parts = await shop.Recipes.KnownPartsAsync(cancel);
        return Show(papers.Card(recipe, parts, ground.Heading(found.Letter), status, cancel), paper, size, response);
    }

    private static async Task<IResult> BasketAsync(
        Guid id,
        string? size,
        ShopServices shop,
        PrintPiecePaper print,
        CancellationToken cancel
    )
    {
        PaperGround ground = await print.GroundAsync(cancel);
        return (await shop.Pieces.Potting.GoingAsync(cancel)).FirstOrDefault(one => one.Record.Id == id) is { } basket
            ? Results.File(
                ProcessTagPdf.Render([ProcessTags.Of(basket.ToBasket(), basket.Record.Label, ground.Rules.Zone)], Size(size)),
                "application/pdf"
            )
            : Answers.NotFoundPage();
    }

    private static async Task<IResult> InkAsync(
        string label,
        string? size,
        ShopServices shop,
        PrintPiecePaper print,
        CancellationToken cancel
    )
    {
        PaperGround ground = await print.GroundAsync(cancel);
        return
            (await shop.Records.Steps.FindInkMixesAsync(label, cancel)).FirstOrDefault(mix =>
                string.Equals(mix.Label, label, StringComparison.OrdinalIgnoreCase)
            )
                is { } ink
            ? Results.File(ProcessTagPdf.Render([ProcessTags.Of(ink.ToMix(), ink.Label, ground.Rules.Zone)], Size(size)), "application/pdf")
            : Answers.NotFoundPage();
    }

    internal static IResult Show(Sheet sheet, string paper, string? size, HttpResponse response)
    {
        if (paper.EndsWith(".pdf", StringComparison.Ordinal))
        {
            return Results.File(SheetPdf.Render([sheet], Size(size)), "application/pdf");
        }

        response.Headers.ContentSecurityPolicy = Policy;
        return Results.Text(SheetHtmlWriter.Render([sheet]), "text/html; charset=utf-8");
    }

    /// <summary>Sheets as one PDF.</summary>
    internal static IResult Pdf(IReadOnlyList<Sheet> sheets, string? size) =>
        Results.File(SheetPdf.Render(sheets, Size(size)), "application/pdf");

    private static string Stem(string paper) => paper.EndsWith(".pdf", StringComparison.Ordinal) ? paper[..^4] : paper;

    private static PaperSize Size(string? size) =>
        string.Equals(size, "Letter", StringComparison.OrdinalIgnoreCase) ? PaperSize.Letter : PaperSize.A4;
}
