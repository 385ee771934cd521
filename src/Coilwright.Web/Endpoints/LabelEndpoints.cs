using Coilwright.Application.Printing;
using Coilwright.Papers.Labels;
using Coilwright.Web.Pages;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Labels for a label printer: the page that chooses them, the PDF and the document that the browser prints.</summary>
internal static class LabelEndpoints
{
    public static void MapLabels(this IEndpointRouteBuilder app)
    {
        app.MapGet("/labels", ShowAsync);
        app.MapGet("/labels.pdf", PdfAsync);
        app.MapGet("/labels.html", DocumentAsync);
    }

    /// <summary>The page that makes labels of a thing.</summary>
    public static string AddressOf(string kind, string name) => $"/labels?kind={kind}&name={Uri.EscapeDataString(name)}";

    private static async Task<IResult> ShowAsync(HttpRequest request, PrintLabels print, CancellationToken cancel)
    {
        LabelQuestion asked = Asked(request);
        LabelOutcome? printed = asked.Name.Length > 0 ? await print.PrintAsync(asked, cancel) : null;
        return Page(asked, printed);
    }

    private static async Task<IResult> PdfAsync(HttpRequest request, PrintLabels print, CancellationToken cancel)
    {
        LabelOutcome printed = await print.PrintAsync(Asked(request), cancel);
        return printed.Problems.Count == 0
            ? Results.File(PrinterLabelPdf.Render(printed.Labels, printed.Size), "application/pdf")
            : Page(Asked(request), printed);
    }

    private static async Task<IResult> DocumentAsync(
        HttpRequest request,
        PrintLabels print,
        HttpResponse response,
        CancellationToken cancel
    )
    {
        LabelOutcome printed = await print.PrintAsync(Asked(request), cancel);
        if (printed.Problems.Count > 0)
        {
            return Page(Asked(request), printed);
        }

        response.Headers.ContentSecurityPolicy = PiecePaperEndpoints.Policy;
        return Results.Text(PrinterLabelSvg.Document(printed.Labels, printed.Size), "text/html; charset=utf-8");
    }

    private static RazorComponentResult Page(LabelQuestion asked, LabelOutcome? printed) =>
        Answers.Page<LabelsPage>(new() { ["Asked"] = asked, ["Printed"] = printed }, Answers.StatusOf(printed?.Problems ?? []));

    private static LabelQuestion Asked(HttpRequest request)
    {
        string Typed(string name) => request.Query[name].ToString().Trim();
        string own = Typed("own"),
            chosen = Typed("size");
        string size = own.Length > 0 ? own : chosen;
        return new LabelQuestion(
            Kind: Typed("kind") is { Length: > 0 } kind ? kind : PrintLabels.Kinds[0],
            Name: Typed("name"),
            Size: size.Length > 0 ? size : LabelSize.Usual[0].Key,
            First: Typed("first"),
            Count: Typed("count")
        );
    }
}
