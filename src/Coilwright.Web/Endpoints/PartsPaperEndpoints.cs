using Coilwright.Application.Composition;
using Coilwright.Application.Printing;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Parts;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>The parts list of a recipe, for a number of pieces with their options.</summary>
internal static class PartsPaperEndpoints
{
    public static void MapPartsPaper(this IEndpointRouteBuilder app)
    {
        app.MapGet(
            "/recipes/{id:guid}/papers/parts",
            (Guid id, HttpRequest request, ShopServices shop, PrintRecipePaper papers, PrintPiecePaper pieces, CancellationToken cancel) =>
                ShowAsync(id, "parts", request, shop, papers, pieces, cancel)
        );
        app.MapGet(
            "/recipes/{id:guid}/papers/parts.pdf",
            (Guid id, HttpRequest request, ShopServices shop, PrintRecipePaper papers, PrintPiecePaper pieces, CancellationToken cancel) =>
                ShowAsync(id, "parts.pdf", request, shop, papers, pieces, cancel)
        );
    }

    private static async Task<IResult> ShowAsync(
        Guid id,
        string paper,
        HttpRequest request,
        ShopServices shop,
        PrintRecipePaper papers,
        PrintPiecePaper pieces,
        CancellationToken cancel
    )
    {
        IReadOnlyList<RevisionRecord> revisions = await shop.Records.Recipes.RevisionsAsync(id, cancel);
        string asked = request.Query["revision"].ToString();
        if (
            (
                asked.Length == 0
                    ? revisions.MaxBy(one => one.Number)
                    : revisions.FirstOrDefault(one => FormattableString.Invariant($"{one.Number}") == asked)
            )
                is not { } found
            || RecipeReader.Read(found.Json).Value is not { } recipe
        )
        {
            return Answers.NotFoundPage();
        }

        List<Problem> problems = [];
        IReadOnlyList<PartOption> options = PartOption.Of(recipe, request.Query["option"].ToString().Split('\n'), problems);
        if (Count(request.Query["count"].ToString(), problems) is var count && problems.Count > 0)
        {
            return Answers.Page<MessagePage>(
                new()
                {
                    ["Title"] = "Parts list",
                    ["Text"] = string.Join(
                        " ",
                        problems.Select(problem => $"{FieldLabels.Of(problem.Field)}: {ProblemSentences.Write(problem)}")
                    ),
                },
                StatusCodes.Status422UnprocessableEntity
            );
        }

        SheetHeading heading = (await pieces.GroundAsync(cancel)).Heading(found.Letter);
        return PiecePaperEndpoints.Show(
            papers.Parts(recipe, await shop.Recipes.KnownPartsAsync(cancel), options, count, heading, cancel),
            paper,
            request.Query["size"].ToString(),
            request.HttpContext.Response
        );
    }

    private static int Count(string typed, List<Problem> problems)
    {
        if (typed.Trim().Length == 0)
        {
            return 1;
        }

        if (CountParser.TryParse(typed, 1, PartsList.MostPieces, out int count, out _))
        {
            return count;
        }

        problems.Add(new Problem("count", "how many pieces?", typed, FormattableString.Invariant($"1 to {PartsList.MostPieces:#,##0}")));
        return 1;
    }
}
