using System.Security.Cryptography;
using System.Text;
using Coilwright.Application.Composition;
using Coilwright.Papers.Tags;
using Coilwright.Web.Pages;
using Coilwright.Web.Views;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
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
        $"default-src 'none'; img-src data:; style-src "
        + $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(TagSheetHtmlWriter.Css)))}'; base-uri "
        + $"'none'; frame-ancestors 'none'";

    public static void MapWinding(this IEndpointRouteBuilder app)
    {
        app.MapGet("/batches/{id:guid}/wind", async (Guid id, string? machine, string? done, ShopServices shop, CancellationToken cancel) =>
            await PageAsync(id, machine, [], done is not null, shop, cancel)
        );
        app.MapPost("/batches/{id:guid}/wind", RecordEventAsync);
        app.MapPost("/batches/{id:guid}/wind/undo", UndoAsync);
        app.MapPost("/api/batches/{id:guid}/events", TellAsync);
        app.MapGet("/batches/{id:guid}/tags", TagsAsync);
        app.MapGet("/batches/{id:guid}/coils/{tag}", CoilAsync);
        app.MapGet("/find", FindAsync);
    }

    private static async Task<IResult> PageAsync(
        Guid id,
        string? machineName,
        IReadOnlyList<Problem> problems,
        bool done,
        ShopServices shop,
        CancellationToken cancel
    )
    {
        if (await shop.SetUps.FindAsync(id, machineName, null, cancel) is not { } set)
        {
            return Answers.NotFoundPage();
        }

        return Answers.Page<WindPage>(
            new()
            {
                ["Set"] = set,
                ["Spools"] = (await shop.Records.Stock.SpoolsAsync(cancel)).Select(spool => spool.Label).ToArray(),
                ["Machines"] = await shop.Machines.ListAsync(cancel),
                ["Problems"] = problems,
                ["Done"] = done,
            },
            Answers.StatusOf(problems)
        );
    }

    private static async Task<IResult> RecordEventAsync(Guid id, HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        BatchEventSubmission told = new(
            Guid.TryParse(form["id"], out Guid made) ? made : Guid.NewGuid(),
            form["kind"].ToString(),
            form["tag"].ToString(),
            form["counter"].ToString(),
            form["spool"].ToString(),
            form["choice"].ToString(),
            form["turns"].ToString(),
            form["machine"].ToString(),
            form["person"].ToString(),
            form["note"].ToString()
        );
        IReadOnlyList<Problem> problems = string.Equals(told.Kind, nameof(BatchEventKind.Undone), StringComparison.OrdinalIgnoreCase)
            ? [BatchEventSubmission.NotSaid(told.Kind)]
            : await told.TellAsync(id, shop, cancel);
        return problems.Count > 0 ? await PageAsync(id, told.Machine, problems, false, shop, cancel) : Back(id, told.Machine);
    }

    /// <summary>What the client's outbox sends: any event, or an undo.</summary>
    private static async Task<IResult> TellAsync(Guid id, HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        (BatchEventSubmission? told, IResult? refused) = await ApiBody.ReadAsync<BatchEventSubmission>(request, cancel);
        if (told is null)
        {
            return refused!;
        }

        IReadOnlyList<Problem> problems = await told.TellAsync(id, shop, cancel);
        return problems.Count == 0
            ? Results.Json(new { problems })
            : Results.Json(new { problems, may = await MayAsync(id, told.Machine, shop, cancel) }, statusCode: Answers.StatusOf(problems));
    }

    /// <summary>After a refusal the page asks nobody but us what may be told next.</summary>
    private static async Task<SpindleButtons?> MayAsync(Guid id, string machineName, ShopServices shop, CancellationToken cancel)
    {
        if (await shop.Run.StatusAsync(id, cancel) is not { } run)
        {
            return null;
        }

        string name = machineName.Length > 0 ? machineName : run.Status.Batch.Machine;
        return SpindleButtons.Of(run, name, (await shop.Machines.FindAsync(name, cancel))?.Spindles ?? 1);
    }

    private static async Task<IResult> UndoAsync(Guid id, HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        IReadOnlyList<Problem> problems = await shop.Run.UndoLastAsync(
            id,
            Guid.TryParse(form["id"], out Guid made) ? made : Guid.NewGuid(),
            form["person"].ToString(),
            cancel
        );
        return problems.Count > 0
            ? await PageAsync(id, form["machine"].ToString(), problems, false, shop, cancel)
            : Back(id, form["machine"].ToString());
    }

    private static IResult Back(Guid id, string machine) =>
        Results.LocalRedirect($"/batches/{id}/wind?machine={Uri.EscapeDataString(machine)}&done=yes");

    private static async Task<IResult> TagsAsync(Guid id, HttpResponse response, ShopServices shop, CancellationToken cancel)
    {
        if (await shop.Records.Batches.FindAsync(id, cancel) is not { } batch)
        {
            return Answers.NotFoundPage();
        }

        response.Headers.ContentSecurityPolicy = s_tagPolicy;
        int wanted = BatchNumber.Wanted(batch, BatchEventLog.Holding(await shop.Records.Batches.EventsAsync(id, cancel)));
        return Results.Text(TagSheetHtmlWriter.Render(batch, 1, Math.Min(wanted, TagsAtOnce)), "text/html; charset=utf-8");
    }

    private static async Task<IResult> CoilAsync(Guid id, string tag, ShopServices shop, CancellationToken cancel)
    {
        if (await shop.Run.StatusAsync(id, cancel) is not { } run)
        {
            return Answers.NotFoundPage();
        }

        string tidy = BatchTags.Tidy(run.Status.Batch, tag);
        bool known = run.Status.Coils.Any(coil => coil.Tag == tidy) || BatchTags.NumberOf(run.Status.Batch, tidy) <= run.Status.Wanted;
        return known
            ? Answers.Page<CoilPage>(
                new()
                {
                    ["Run"] = run,
                    ["Tag"] = tidy,
                    ["All"] = await shop.Records.Readings.OfBatchAsync(id, cancel),
                }
            )
            : Answers.NotFoundPage();
    }

    /// <summary>
    /// A scanned or typed code. The page of the one piece, batch or coil of that name is opened; anything else is listed, with how it
    /// matched.
    /// </summary>
    private static async Task<IResult> FindAsync(string? code, ShopServices shop, CancellationToken cancel)
    {
        SearchAnswer answer = await shop.Pieces.Search.FindAsync(code ?? "", cancel);
        if (answer.Only is { Kind: "piece" or "batch" or "coil" } only && HitAddress.Of(only) is { } address)
        {
            return Results.LocalRedirect(address);
        }

        bool fine = answer.Hits.Count > 0 || answer.Asked.Length == 0;
        return Answers.Page<FindPage>(new() { ["Answer"] = answer }, fine ? StatusCodes.Status200OK : StatusCodes.Status404NotFound);
    }
}
