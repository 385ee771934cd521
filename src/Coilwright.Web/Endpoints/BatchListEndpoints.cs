using System.Globalization;
using Coilwright.Application.Composition;
using Coilwright.Application.Winding;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Every batch of the shop, and the recipes that one may be begun on.</summary>
internal static class BatchListEndpoints
{
    public static void MapBatchList(this IEndpointRouteBuilder app) => app.MapGet("/batches", ListAsync);

    private static async Task<IResult> ListAsync(string? state, string? page, ShopServices shop, ListBatches list, CancellationToken cancel)
    {
        Workshop.Batches.BatchState? only = BatchesPage.StateOf(state);
        int number = int.TryParse(page, NumberStyles.None, CultureInfo.InvariantCulture, out int asked) && asked > 0 ? asked : 1;
        IReadOnlyList<RevisionRecord> newest = await shop.Recipes.ListAsync(cancel);
        return Answers.Page<BatchesPage>(
            new()
            {
                ["Batches"] = await list.ReadAsync(only, number, cancel),
                ["Only"] = only,
                ["Number"] = number,
                ["Released"] = (IReadOnlyList<RevisionRecord>)[.. newest.Where(one => one.State == RevisionState.Released)],
            }
        );
    }
}
