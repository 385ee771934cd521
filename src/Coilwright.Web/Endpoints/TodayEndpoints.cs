using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Web.Hosting;
using Coilwright.Web.Pages;
using Coilwright.Workshop;
using Coilwright.Workshop.Entry;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>The first page, and the room temperature that several pages set.</summary>
internal static class TodayEndpoints
{
    public static void MapToday(this IEndpointRouteBuilder app)
    {
        app.MapGet("/", async (ShopServices shop, DemoOffer demo, CancellationToken cancel) =>
            await TodayAsync((shop, demo), [], "", cancel)
        );
        app.MapPost("/room", SetRoomAsync);
    }

    private static async Task<IResult> TodayAsync(
        (ShopServices Shop, DemoOffer Demo) of,
        IReadOnlyList<Problem> problems,
        string typed,
        CancellationToken cancel
    )
    {
        ShopServices shop = of.Shop;
        bool isEmpty = (await shop.Recipes.ListAsync(cancel)).Count == 0;
        return Answers.Page<TodayPage>(
            new()
            {
                ["ShopName"] = await shop.Records.ShopNameAsync(cancel),
                ["IsEmpty"] = isEmpty,
                ["OffersDemo"] = of.Demo.Server is not null,
                ["Backups"] = isEmpty ? [] : await shop.BackUp.TodayAsync(cancel),
                ["Day"] = await shop.Today.ReadAsync(cancel),
                ["Room"] = await RoomInForce.AtAsync(shop.Records, shop.Time.GetUtcNow(), cancel),
                ["Problems"] = problems,
                ["Typed"] = typed,
            },
            problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity
        );
    }

    private static async Task<IResult> SetRoomAsync(HttpRequest request, ShopServices shop, DemoOffer demo, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        string typed = form["room"].ToString(),
            back = LocalAddress.From(form["back"].ToString()); // before anything is stored
        IReadOnlyList<Problem> problems = await shop.Winding.SetRoomTemperatureAsync(typed, form["person"].ToString(), cancel);
        return problems.Count > 0 ? await TodayAsync((shop, demo), problems, typed, cancel) : Results.LocalRedirect(back);
    }
}
