using Coilwright.Application.Composition;
using Coilwright.Web.Pages;
using Coilwright.Workshop;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Every batch of the shop, and the recipes that one may be begun on.</summary>
internal static class BatchListEndpoints
{
    public static void MapBatchList(this IEndpointRouteBuilder app) => app.MapGet("/batches", ListAsync);

    private static async Task<IResult> ListAsync(string? state, ShopServices shop, CancellationToken cancel)
    {
        IReadOnlyList<RecordStatus<BatchStatus>> all = await shop.Winding.StatusesAsync(cancel);
        IReadOnlyList<RevisionRecord> newest = await shop.Recipes.ListAsync(cancel);
        return Answers.Page<BatchesPage>(
            new()
            {
                ["Batches"] = all.Readable(),
                ["Only"] = BatchesPage.StateOf(state),
                ["Unreadable"] = all.Unreadable(),
                ["Released"] = (IReadOnlyList<RevisionRecord>)[.. newest.Where(one => one.State == RevisionState.Released)],
            }
        );
    }
}
