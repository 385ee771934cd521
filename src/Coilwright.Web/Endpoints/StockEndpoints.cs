using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Web.Hosting;
using Coilwright.Web.Pages;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Stock;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>The spool shelf and the winders.</summary>
internal static class StockEndpoints
{
    public static void MapStock(this IEndpointRouteBuilder app)
    {
        app.MapGet("/spools", async (string? done, ShopServices shop, CancellationToken cancel) =>
            await ShelfAsync([], shop, cancel, done ?? "")
        );
        app.MapPost("/spools", TakeInAsync);
        app.MapPost("/spools/measure", MeasureAsync);
        app.MapPost("/spools/weigh", WeighAsync);
        app.MapGet("/machines", async (ShopServices shop, CancellationToken cancel) => await MachinesAsync([], shop, cancel));
        app.MapPost("/machines", KeepAsync);
        app.MapPost("/machines/test", TestAsync).WithMetadata(new ChangesNothing());
    }

    private static async Task<IResult> ShelfAsync(
        IReadOnlyList<Problem> problems,
        ShopServices shop,
        CancellationToken cancel,
        string done = "",
        string refused = "",
        FormValues? typed = null
    )
    {
        IReadOnlyList<RecordStatus<BatchProgress>> all = await shop.Run.StatusesAsync(
            (await shop.Summaries.OpenAsync(cancel)).Batches,
            cancel
        );
        IReadOnlyList<BatchProgress> runs = [.. all.Readable().Where(run => run.CoilsLeft > 0 && run.History.Spool.Length > 0)];
        return Answers.Page<SpoolsPage>(
            new()
            {
                ["Shelf"] = await shop.Stock.ShelfAsync(cancel),
                ["Runs"] = runs,
                ["Unreadable"] = all.Unreadable(),
                ["Problems"] = problems,
                ["Done"] = done,
                ["Refused"] = refused,
                ["Typed"] = typed ?? FormValues.Nothing,
            },
            problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity
        );
    }

    private static async Task<IResult> TakeInAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        SpoolRecord spool = new()
        {
            Id = typed.Id,
            Label = typed["label"],
            Lot = typed["lot"].Trim(),
            SupplierText = typed["supplier"].Trim(),
            Gauge = typed["gauge"],
            Insulation = typed["insulation"],
            Build = typed["build"],
            Person = typed["person"].Trim(),
            TimeUtc = shop.Time.GetUtcNow(),
        };
        return await AfterAsync(await shop.Stock.TakeInAsync(spool, typed["received"], typed["tare"], cancel), "new", typed, shop, cancel);
    }

    private static async Task<IResult> MeasureAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        string room = (await RoomInForce.AtAsync(shop.Records, shop.Time.GetUtcNow(), cancel))?.Typed ?? "";
        string temperature = typed["temperature"].Length > 0 ? typed["temperature"] : room;
        IReadOnlyList<Problem> problems = await shop.Stock.MeasureAsync(
            typed.Id,
            typed["spool"],
            typed["length"],
            typed["resistance"],
            temperature,
            typed["person"],
            cancel
        );
        return await AfterAsync(problems, "measure", typed, shop, cancel);
    }

    private static async Task<IResult> WeighAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        IReadOnlyList<Problem> problems = await shop.Stock.WeighAsync(typed.Id, typed["spool"], typed["gross"], typed["person"], cancel);
        return await AfterAsync(problems, "weigh", typed, shop, cancel);
    }

    private static async Task<IResult> AfterAsync(
        IReadOnlyList<Problem> problems,
        string form,
        FormValues typed,
        ShopServices shop,
        CancellationToken cancel
    ) =>
        problems.Count == 0
            ? Results.LocalRedirect("/spools?done=" + form)
            : await ShelfAsync(problems, shop, cancel, refused: form, typed: typed);

    private static async Task<IResult> MachinesAsync(
        IReadOnlyList<Problem> problems,
        ShopServices shop,
        CancellationToken cancel,
        FormValues? test = null
    ) =>
        Answers.Page<MachinesPage>(
            new()
            {
                ["Machines"] = await shop.Machines.ListAsync(cancel),
                ["Problems"] = problems,
                ["Test"] = test ?? FormValues.Nothing,
            },
            problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity
        );

    private static async Task<IResult> KeepAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        IReadOnlyList<Problem> problems = await shop.Machines.KeepAsync(
            IdOf(form),
            form["json"].ToString(),
            form["person"].ToString(),
            cancel
        );
        return problems.Count == 0
            ? Results.LocalRedirect("/machines")
            : FileEndpoints.Refused(problems, form["json"].ToString(), form["person"].ToString());
    }

    private static async Task<IResult> TestAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        IReadOnlyList<Problem> problems = await shop.Machines.KeepTestAsync(
            typed.Id,
            typed["machine"],
            typed["turns"],
            typed["counted"],
            typed["person"],
            cancel
        );
        return problems.Count == 0 ? Results.LocalRedirect("/machines") : await MachinesAsync(problems, shop, cancel, typed);
    }

    private static Guid IdOf(IFormCollection form) => Guid.TryParse(form["id"], out Guid made) ? made : Guid.NewGuid();
}
