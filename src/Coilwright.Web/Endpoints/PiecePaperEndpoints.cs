using Coilwright.Papers.Labels;
using Coilwright.Papers.Sheets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Papers of a piece, as PDF.</summary>
internal static class PiecePaperEndpoints
{
    public static void MapPiecePapers(this IEndpointRouteBuilder app) => app.MapGet("/pieces/{serial}/label.pdf", LabelAsync);

    private static async Task<IResult> LabelAsync(string serial, ShopServices shop, CancellationToken cancel)
    {
        if (await shop.Pieces.Shelf.FindAsync(serial, cancel) is not { } life)
        {
            return Answers.NotFoundPage();
        }

        string code = life.Piece.Serial;
        PieceLabel label = new(code, code, [$"{life.Recipe.Name} {life.Revision.Letter}", .. life.Piece.Options.Split('\n', StringSplitOptions.RemoveEmptyEntries).Take(2)]);
        return Results.File(LabelPdf.Render([label], PaperSize.A4), "application/pdf");
    }
}
