using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Workshop;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Steps;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>The first page, and the room temperature that several pages set.</summary>
internal static class TodayEndpoints
{
    public static void MapToday(this IEndpointRouteBuilder app)
    {
        app.MapGet("/", async (ShopServices shop, CancellationToken cancel) => await TodayAsync(shop, [], "", cancel));
        app.MapPost("/room", SetRoomAsync);
    }

    private static async Task<IResult> TodayAsync(
        ShopServices shop,
        IReadOnlyList<Problem> problems,
        string typed,
        CancellationToken cancel
    )
    {
        IReadOnlyList<RecordStatus<BatchStatus>> standings = await shop.Winding.StatusesAsync(cancel);
        IReadOnlyList<RecordStatus<PieceSnapshot>> pieces = await shop.Pieces.Shelf.OpenStatusesAsync(cancel);
        return Answers.Page<TodayPage>(
            new()
            {
                ["ShopName"] = await shop.Records.ShopNameAsync(cancel),
                ["IsEmpty"] = (await shop.Recipes.ListAsync(cancel)).Count == 0,
                ["Batches"] = standings.Readable(),
                ["Unreadable"] = (IReadOnlyList<UnreadableRecord>)[.. standings.Unreadable(), .. pieces.Unreadable()],
                ["Held"] = await HeldAsync(pieces.Readable(), shop, cancel),
                ["Room"] = await RoomInForce.AtAsync(shop.Records, shop.Time.GetUtcNow(), cancel),
                ["Problems"] = problems,
                ["Typed"] = typed,
            },
            problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity
        );
    }

    private static async Task<IReadOnlyList<(PieceSnapshot Snapshot, StepStatus Status)>> HeldAsync(
        IReadOnlyList<PieceSnapshot> open,
        ShopServices shop,
        CancellationToken cancel
    )
    {
        DateTimeOffset nowUtc = await shop.Pieces.Shelf.NowUtcAsync(cancel);
        TimeZoneInfo zone = (await shop.Pieces.Shelf.Rules.CurrentAsync(cancel)).Zone;
        return [.. open.Select(life => (life, life.Status(nowUtc, zone))).Where(one => one.Item2.NeedsPerson)];
    }

    private static async Task<IResult> SetRoomAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        string typed = form["room"].ToString(),
            back = LocalAddress.From(form["back"].ToString()); // before anything is stored
        IReadOnlyList<Problem> problems = await shop.Winding.SetRoomTemperatureAsync(typed, form["person"].ToString(), cancel);
        return problems.Count > 0 ? await TodayAsync(shop, problems, typed, cancel) : Results.LocalRedirect(back);
    }
}
