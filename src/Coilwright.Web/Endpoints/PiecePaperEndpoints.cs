using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Cards;
using Coilwright.Papers.Labels;
using Coilwright.Papers.Pdf;
using Coilwright.Papers.Pieces;
using Coilwright.Papers.Sheets;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Circuits;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Tracing;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Papers of a piece, a recipe, a basket or a mix: for the screen, and as PDF.</summary>
internal static class PiecePaperEndpoints
{
    private const int CurvePoints = 300;

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
        CancellationToken cancel
    )
    {
        if (await shop.Pieces.Trace.PieceAsync(serial, cancel) is not { } piece)
        {
            return Answers.NotFoundPage();
        }

        Sheet? sheet = await SheetAsync(piece, Stem(paper), await GroundAsync(shop, cancel), shop, cancel);
        return sheet is null ? Answers.NotFoundPage() : Show(sheet, paper, size, response);
    }

    private static async Task<Sheet?> SheetAsync(
        TracedPiece piece,
        string paper,
        PaperGround ground,
        ShopServices shop,
        CancellationToken cancel
    )
    {
        PieceSnapshot life = piece.Snapshot;
        switch (paper)
        {
            case "spec":
                LoadCircuit load = UsualLoad.All.First(one => one.Name == "Player").Load;
                return PiecePapers.Spec(
                    life,
                    Forecaster.Predict(
                        RecipeModelBuilder.ToModel(life.Recipe),
                        load,
                        new ForecastOptions { CurvePoints = CurvePoints, Strings = false },
                        cancel
                    ),
                    load,
                    ground
                );
            case "traveller":
                return PiecePapers.TravellerOf(life, ground);
            case "wiring":
                return PiecePapers.WiringOf(life.Recipe, life.Revision.Letter, ground);
            case "parts":
                return PiecePapers.PartsOf(
                    life,
                    Forecaster.Predict(
                        RecipeModelBuilder.ToModel(life.Recipe),
                        load: null,
                        new ForecastOptions { Strings = false },
                        cancel
                    ),
                    ground
                );
            case "certificate":
                return PiecePapers.Certificate(
                    life.Piece.Serial,
                    [(life, FinalTestService.Asked(life.Recipe, await shop.Pieces.Test.GoldenAsync(life, cancel), ground.Rules))],
                    ground
                );
            case "repair":
                return PiecePapers.Repair(piece, ground);
            case "packing" when piece.Customers is [.., var customer]:
                return PiecePapers.Packing(customer, await ShipmentAsync(life, customer, shop, cancel), ground);
            default:
                return null;
        }
    }

    /// <summary>Everything that went to the customer at the same moment.</summary>
    private static async Task<IReadOnlyList<PieceSnapshot>> ShipmentAsync(
        PieceSnapshot life,
        CustomerRecord customer,
        ShopServices shop,
        CancellationToken cancel
    )
    {
        DateTimeOffset? left = life.History.InForce.OfType<Shipped>().LastOrDefault()?.TimeUtc;
        IReadOnlyList<PieceSnapshot> all = await shop.Pieces.Shelf.LivesAsync(
            await shop.Records.PiecesWithAsync(new PieceQuery(CustomerId: customer.Id), cancel),
            cancel
        );
        return
        [
            .. all.Where(one =>
                one.History.InForce.OfType<Shipped>().Any(shipped => shipped.TimeUtc == left && shipped.CustomerId == customer.Id)
            ),
        ];
    }

    private static async Task<IResult> RecipeAsync(
        Guid id,
        string paper,
        int? revision,
        string? size,
        HttpResponse response,
        ShopServices shop,
        CancellationToken cancel
    )
    {
        IReadOnlyList<RevisionRecord> revisions = await shop.Records.RevisionsAsync(id, cancel);
        RevisionRecord? found = revision is null
            ? revisions.MaxBy(one => one.Number)
            : revisions.FirstOrDefault(one => one.Number == revision);
        if (found is null || RecipeReader.Read(found.Json).Value is not { } recipe || Stem(paper) is not ("card" or "wiring"))
        {
            return Answers.NotFoundPage();
        }

        PaperGround ground = await GroundAsync(shop, cancel);
        if (Stem(paper) == "wiring")
        {
            return Show(PiecePapers.WiringOf(recipe, found.Letter, ground), paper, size, response);
        }

        PickupModel model = RecipeModelBuilder.ToModel((await shop.Recipes.FillLimitsAsync(cancel)).Fill(recipe));
        WindingSetUp setUp = WindingSetUp.For(recipe, model, Forecaster.Predict(model, load: null, cancel: cancel)) with
        {
            Heading = ground.Heading(found.Letter),
        };
        bool released = found.State == RevisionState.Released;
        return Show(
            RecipeCard.Of(
                recipe,
                setUp,
                new RecipeStatus(released ? "released" : "draft", found.Reason, released ? found.ReleasedBy : found.Person)
            ),
            paper,
            size,
            response
        );
    }

    private static async Task<IResult> BasketAsync(Guid id, string? size, ShopServices shop, CancellationToken cancel)
    {
        PaperGround ground = await GroundAsync(shop, cancel);
        return (await shop.Pieces.Potting.GoingAsync(cancel)).FirstOrDefault(one => one.Record.Id == id) is { } basket
            ? Results.File(
                ProcessTagPdf.Render([ProcessTags.Of(basket.ToBasket(), basket.Record.Label, ground.Rules.Zone)], Size(size)),
                "application/pdf"
            )
            : Answers.NotFoundPage();
    }

    private static async Task<IResult> InkAsync(string label, string? size, ShopServices shop, CancellationToken cancel)
    {
        PaperGround ground = await GroundAsync(shop, cancel);
        return
            (await shop.Records.FindInkMixesAsync(label, cancel)).FirstOrDefault(mix =>
                string.Equals(mix.Label, label, StringComparison.OrdinalIgnoreCase)
            )
                is { } ink
            ? Results.File(ProcessTagPdf.Render([ProcessTags.Of(ink.ToMix(), ink.Label, ground.Rules.Zone)], Size(size)), "application/pdf")
            : Answers.NotFoundPage();
    }

    internal static async Task<PaperGround> GroundAsync(ShopServices shop, CancellationToken cancel) =>
        new(
            await shop.Records.ShopNameAsync(cancel),
            await shop.Pieces.Shelf.Rules.CurrentAsync(cancel),
            await shop.Pieces.Shelf.NowUtcAsync(cancel)
        );

    internal static IResult Show(Sheet sheet, string paper, string? size, HttpResponse response)
    {
        if (paper.EndsWith(".pdf", StringComparison.Ordinal))
        {
            return Results.File(SheetPdf.Render([sheet], Size(size)), "application/pdf");
        }

        response.Headers.ContentSecurityPolicy = Policy;
        return Results.Text(SheetHtmlWriter.Render([sheet]), "text/html; charset=utf-8");
    }

    private static string Stem(string paper) => paper.EndsWith(".pdf", StringComparison.Ordinal) ? paper[..^4] : paper;

    private static PaperSize Size(string? size) =>
        string.Equals(size, "Letter", StringComparison.OrdinalIgnoreCase) ? PaperSize.Letter : PaperSize.A4;
}
