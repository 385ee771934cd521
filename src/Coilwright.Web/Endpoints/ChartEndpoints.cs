using Coilwright.Web.Pages;
using Coilwright.Web.Views;
using Coilwright.Workshop.Walls;
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
            WallShown shown = await shop.Walls.ShowAsync(FormOf(request.Query), cancel);
            return Answers.Page<ChartsPage>(new() { ["Shown"] = shown, ["Address"] = request.QueryString.Value ?? "" }, shown.Problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity);
        });
        app.MapGet("/charts/coils.csv", async (HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            await shop.Walls.ShowAsync(FormOf(request.Query), cancel) is { Wall: { } wall } ? Results.Text(WallView.Csv(wall), "text/csv; charset=utf-8") : Answers.NotFoundPage());
    }

    private static WallForm FormOf(IQueryCollection query) => new()
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
