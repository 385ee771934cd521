using System.Globalization;
using Coilwright.Application.Composition;
using Coilwright.Formats.Judgements;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Rules;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>The wall of charts. What is chosen stands in the address, so that a wall can be kept and sent on.</summary>
internal static class ChartEndpoints
{
    public static void MapCharts(this IEndpointRouteBuilder app)
    {
        app.MapGet("/charts", async (HttpRequest request, ShopServices shop, CancellationToken cancel) =>
        {
            ChartResult shown = await shop.Walls.ShowAsync(FormOf(request.Query), cancel);
            return Answers.Page<ChartsPage>(
                new() { ["Shown"] = shown, ["Address"] = request.QueryString.Value ?? "" },
                shown.Problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity
            );
        });
        app.MapPost("/charts/limits", KeepAsync);
        app.MapGet("/charts/coils.csv", async (HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            await shop.Walls.ShowAsync(FormOf(request.Query), cancel) is { ControlChart: { } wall }
                ? Results.Text(ControlChartCsv.Write(wall), "text/csv; charset=utf-8")
                : Answers.NotFoundPage()
        );
    }

    /// <summary>Puts the limits that the address asks for into the shop's rules; the chart then takes them from there.</summary>
    private static async Task<IResult> KeepAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        ChartSettingsForm form = FormOf(request.Query);
        ChartResult shown = await shop.Walls.ShowAsync(form, cancel);
        string recipe = shown.Recipes.FirstOrDefault(one => one.Id == shown.Recipe).Name ?? "";
        IReadOnlyList<Problem> problems = (shown.Problems.Count, shown.ControlChart?.Question, form.Since.Trim().Length) switch
        {
            (> 0, _, _) => shown.Problems,
            (_, null, _) or (_, _, 0) => [new Problem("since", "no limits are taken anew here", null, "a tag, or batch/tag, and why")],
            (_, { } asked, _) => await shop.Pieces.Shelf.Rules.KeepLimitsAsync(
                typed.Id,
                new ChartLimits(recipe, shown.Coil, asked.Quantity, form.Since, form.Why, asked.LimitsFrom),
                typed["limits-person"],
                cancel
            ),
        };
        string back = string.Create(
            CultureInfo.InvariantCulture,
            $"/charts?recipe={shown.Recipe}&coil={Uri.EscapeDataString(shown.Coil)}&quantity={Uri.EscapeDataString(form.Quantity)}"
        );
        return problems.Count == 0
            ? Results.LocalRedirect(back)
            : Answers.Page<ChartsPage>(
                new() { ["Shown"] = shown with { Problems = problems }, ["Address"] = request.QueryString.Value ?? "" },
                StatusCodes.Status422UnprocessableEntity
            );
    }

    private static ChartSettingsForm FormOf(IQueryCollection query) =>
        new()
        {
            Recipe = query["recipe"].ToString(),
            Coil = query["coil"].ToString(),
            Batch = query["batch"].ToString(),
            Machine = query["machine"].ToString(),
            Spool = query["spool"].ToString(),
            Person = query["person"].ToString(),
            Quantity = query["quantity"].ToString(),
            Last = query["last"].ToString(),
            Limits = query["limits"].ToString(),
            From = query["from"].ToString(),
            Since = query["since"].ToString(),
            Why = query["why"].ToString(),
            Group = query["group"].ToString(),
            Spread = query["spread"].ToString(),
            Rules = query["rules"].ToString(),
            Lambda = query["lambda"].ToString(),
            Allowance = query["allowance"].ToString(),
            Decision = query["decision"].ToString(),
            Sides = query["sides"].ToString(),
            Shape = query["shape"].ToString(),
        };
}
