using System.Security.Cryptography;
using System.Text;
using Coilwright.Papers.Tags;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Tracing;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>The machine view of a batch, its tags, and a coil found by its tag.</summary>
internal static class WindingEndpoints
{
    /// <summary>Tags on one sheet of paper.</summary>
    private const int TagsAtOnce = 300;

    private static readonly string s_tagPolicy =
        $"default-src 'none'; img-src data:; style-src 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(TagSheetHtml.Css)))}'; base-uri 'none'; frame-ancestors 'none'";

    public static void MapWinding(this IEndpointRouteBuilder app)
    {
        app.MapGet("/batches/{id:guid}/wind", async (Guid id, string? machine, string? done, ShopServices shop, CancellationToken cancel) => await PageAsync(id, machine, [], done is not null, shop, cancel));
        app.MapPost("/batches/{id:guid}/wind", HappenAsync);
        app.MapPost("/batches/{id:guid}/wind/undo", UndoAsync);
        app.MapPost("/api/batches/{id:guid}/events", TellAsync);
        app.MapGet("/batches/{id:guid}/tags", TagsAsync);
        app.MapGet("/batches/{id:guid}/coils/{tag}", CoilAsync);
        app.MapGet("/find", FindAsync);
    }

    private static async Task<IResult> PageAsync(Guid id, string? machineName, IReadOnlyList<Problem> problems, bool done, ShopServices shop, CancellationToken cancel)
    {
        if (await shop.Run.StandingAsync(id, cancel) is not { } run)
        {
            return Answers.NotFoundPage();
        }

        string name = machineName ?? run.Standing.Batch.Machine;
        Machine? machine = await shop.Machines.FindAsync(name, cancel);
        WindingSetUp whole = run.Plan.On(machine, run.Standing.RoomC?.TemperatureC ?? WindingSetUp.UsualRoomC, name);
        return Answers.Page<WindPage>(
            new()
            {
                ["Run"] = run,
                ["Whole"] = whole,
                ["SetUp"] = whole.Coils[run.Plan.Index] with { Turns = run.WantedTurns },
                ["MachineName"] = name,
                ["Machines"] = await shop.Machines.ListAsync(cancel),
                ["Spool"] = await shop.Stock.StandingAsync(run.History.Spool, cancel),
                ["Problems"] = problems,
                ["Done"] = done,
            },
            problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> HappenAsync(Guid id, HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        HappeningTold told = new(
            Guid.TryParse(form["id"], out Guid made) ? made : Guid.NewGuid(), form["kind"].ToString(), form["tag"].ToString(), form["counter"].ToString(), form["spool"].ToString(),
            form["choice"].ToString(), form["turns"].ToString(), form["machine"].ToString(), form["person"].ToString(), form["note"].ToString());
        IReadOnlyList<Problem> problems = string.Equals(told.Kind, nameof(BatchEventKind.Undone), StringComparison.OrdinalIgnoreCase) ? [HappeningTold.NotSaid(told.Kind)] : await told.TellAsync(id, shop, cancel);
        return problems.Count > 0 ? await PageAsync(id, told.Machine, problems, false, shop, cancel) : Back(id, told.Machine);
    }

    /// <summary>What the client's outbox sends: any event, or an undo.</summary>
    private static async Task<IResult> TellAsync(Guid id, HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        (HappeningTold? told, IResult? refused) = await ApiBody.ReadAsync<HappeningTold>(request, cancel);
        if (told is null)
        {
            return refused!;
        }

        IReadOnlyList<Problem> problems = await told.TellAsync(id, shop, cancel);
        return Results.Json(new { problems }, statusCode: problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> UndoAsync(Guid id, HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        IReadOnlyList<Problem> problems = await shop.Run.UndoLastAsync(id, Guid.TryParse(form["id"], out Guid made) ? made : Guid.NewGuid(), form["person"].ToString(), cancel);
        return problems.Count > 0 ? await PageAsync(id, form["machine"].ToString(), problems, false, shop, cancel) : Back(id, form["machine"].ToString());
    }

    private static IResult Back(Guid id, string machine) => Results.LocalRedirect($"/batches/{id}/wind?machine={Uri.EscapeDataString(machine)}&done=yes");

    private static async Task<IResult> TagsAsync(Guid id, HttpResponse response, ShopServices shop, CancellationToken cancel)
    {
        if (await shop.Records.FindBatchAsync(id, cancel) is not { } batch)
        {
            return Answers.NotFoundPage();
        }

        response.Headers.ContentSecurityPolicy = s_tagPolicy;
        return Results.Text(TagSheetHtml.Render(batch, 1, Math.Min(batch.Quantity, TagsAtOnce)), "text/html; charset=utf-8");
    }

    private static async Task<IResult> CoilAsync(Guid id, string tag, ShopServices shop, CancellationToken cancel)
    {
        if (await shop.Run.StandingAsync(id, cancel) is not { } run || BatchTags.NumberOf(run.Standing.Batch, BatchTags.Tidy(run.Standing.Batch, tag)) is not { } number || number > run.Standing.Batch.Quantity)
        {
            return Answers.NotFoundPage();
        }

        return Answers.Page<CoilPage>(new() { ["Run"] = run, ["Tag"] = BatchTags.Of(run.Standing.Batch, number) });
    }

    /// <summary>A scanned or typed code: a serial; batch and tag, or a tag alone, of which the newest batch that has it is meant; else whatever bears that name.</summary>
    private static async Task<IResult> FindAsync(string? code, ShopServices shop, CancellationToken cancel)
    {
        string typed = (code ?? "").Trim();
        if (typed.Length > 0 && await shop.Records.FindPiecesAsync([typed], cancel) is [var piece, ..])
        {
            return Results.LocalRedirect($"/pieces/{Uri.EscapeDataString(piece.Serial)}");
        }

        foreach (BatchRecord batch in (await shop.Records.BatchesAsync(cancel)).Reverse())
        {
            bool named = typed.StartsWith(batch.Name + "/", StringComparison.OrdinalIgnoreCase);
            if ((named || !typed.Contains('/', StringComparison.Ordinal)) && BatchTags.NumberOf(batch, BatchTags.Tidy(batch, typed)) is { } number && number <= batch.Quantity)
            {
                return Results.LocalRedirect($"/batches/{batch.Id}/coils/{Uri.EscapeDataString(BatchTags.Of(batch, number))}");
            }
        }

        IReadOnlyList<TraceHit> hits = await shop.Pieces.Trace.FindAsync(typed, cancel);
        return Answers.Page<FindPage>(new() { ["Asked"] = typed, ["Hits"] = hits }, hits.Count > 0 || typed.Length == 0 ? StatusCodes.Status200OK : StatusCodes.Status404NotFound);
    }
}
