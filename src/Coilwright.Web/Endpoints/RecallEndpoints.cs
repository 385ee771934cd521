using System.Text;
using Coilwright.Application.Tracing;
using Coilwright.Formats.Records;
using Coilwright.Papers.Sheets;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Tracing;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>What is recalled: the page, the list to print, the table, and a letter for each customer.</summary>
internal static class RecallEndpoints
{
    public static void MapRecall(this IEndpointRouteBuilder app)
    {
        app.MapGet("/recall", ShowAsync);
        app.MapGet("/recall.csv", TableAsync);
        app.MapGet("/recall/{paper}", PaperAsync);
    }

    private static async Task<IResult> ShowAsync(HttpRequest request, RecallThing recall, CancellationToken cancel) =>
        await FindAsync(recall, request, cancel) is { } list
            ? Answers.Page<RecallPage>(
                new()
                {
                    ["List"] = list,
                    ["Reason"] = Asked(request, "reason"),
                    ["Ask"] = Asked(request, "ask"),
                }
            )
            : Answers.NotFoundPage();

    private static async Task<IResult> TableAsync(HttpRequest request, RecallThing recall, CancellationToken cancel) =>
        await FindAsync(recall, request, cancel) is { } list
            ? Results.File(Encoding.UTF8.GetBytes(RecallCsv.Write(list)), "text/csv; charset=utf-8", "recall.csv")
            : Answers.NotFoundPage();

    private static async Task<IResult> PaperAsync(string paper, HttpRequest request, RecallThing recall, CancellationToken cancel)
    {
        if (await FindAsync(recall, request, cancel) is not { } list)
        {
            return Answers.NotFoundPage();
        }

        Sheet? sheet = paper switch
        {
            "list" or "list.pdf" => await recall.ListAsync(list, cancel),
            "letter" or "letter.pdf" => await recall.LetterAsync(
                list,
                Asked(request, "customer"),
                Asked(request, "reason"),
                Asked(request, "ask"),
                cancel
            ),
            _ => null,
        };
        return sheet is null
            ? Answers.NotFoundPage()
            : PiecePaperEndpoints.Show(sheet, paper, Asked(request, "size"), request.HttpContext.Response);
    }

    /// <summary>The list asked for by name, kind and, where two batches have one name, id.</summary>
    private static async Task<RecallList?> FindAsync(RecallThing recall, HttpRequest request, CancellationToken cancel)
    {
        string kind = Asked(request, "kind"),
            id = Asked(request, "id");
        return (await recall.FindAsync(Asked(request, "code"), cancel)).FirstOrDefault(list =>
            (kind.Length == 0 || list.Of.Kind == kind) && (id.Length == 0 || list.Of.Id.ToString() == id)
        );
    }

    private static string Asked(HttpRequest request, string name) => request.Query[name].ToString();
}
