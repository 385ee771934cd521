using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Web.Views;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Quantities;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>A batch, and entry of its coils by plain form.</summary>
internal static class BatchEndpoints
{
    public static void MapBatches(this IEndpointRouteBuilder app)
    {
        app.MapGet("/batches/{id:guid}", async (Guid id, string? all, string? sheet, ShopServices shop, CancellationToken cancel) =>
            await ShowAsync(id, new BatchView(all is "yes", SheetNumber.Of(sheet)), BatchForms.Untouched, shop, cancel)
        );
        app.MapGet("/batches/{id:guid}/enter", async (Guid id, string? tag, ShopServices shop, CancellationToken cancel) =>
            await EnterPageAsync(id, shop, [], null, tag ?? "", cancel)
        );
        app.MapPost("/batches/{id:guid}/enter", EnterAsync);
        app.MapPost("/batches/{id:guid}/undo", UndoAsync);
        app.MapPost("/batches/{id:guid}/more", MoreAsync);
        app.MapPost("/batches/{id:guid}/answer", AnswerAsync);
        app.MapPost("/batches/{id:guid}/close", CloseAsync);
        app.MapPost("/batches/{id:guid}/reopen", ReopenAsync);
    }

    /// <summary>What of a batch is shown: every coil in a table, or one sheet of the good ones.</summary>
    private sealed record BatchView(bool All, int Sheet);

    /// <summary>What was typed into the page's forms, and what is wrong with it.</summary>
    private sealed record BatchForms(BatchEventKind? Of, IReadOnlyList<Problem> Problems, FormValues Typed)
    {
        public static BatchForms Untouched { get; } = new(null, [], FormValues.Nothing);

        public IReadOnlyList<Problem> ProblemsOf(BatchEventKind form) => Of == form ? Problems : [];

        public FormValues TypedIn(BatchEventKind form) => Of == form ? Typed : FormValues.Nothing;
    }

    private static async Task<IResult> ShowAsync(Guid id, BatchView view, BatchForms forms, ShopServices shop, CancellationToken cancel)
    {
        if (await shop.Winding.StoredAsync(id, cancel) is not { } stored)
        {
            return Answers.NotFoundPage();
        }

        RecordStatus<BatchStatus> status = await RecordStatus.ReadAsync(
            "Batch " + stored.Batch.Name,
            async () => (await shop.Winding.StatusAsync(id, cancel))!,
            id
        );
        if (status.Value is not { } standing)
        {
            return Answers.Page<StoredBatchPage>(
                new() { ["Stored"] = stored, ["Fault"] = status.Fault },
                StatusCodes.Status422UnprocessableEntity
            );
        }

        BatchProgress? run = await shop.Run.StatusAsync(id, cancel);
        return Answers.Page<BatchPage>(
            new()
            {
                ["Status"] = standing,
                ["Run"] = run,
                ["ResistanceChart"] = ResistanceChart.Of(standing),
                ["All"] = view.All,
                ["Sheet"] = view.Sheet,
                ["SignalProblems"] = forms.ProblemsOf(BatchEventKind.SignalAnswered),
                ["SignalTyped"] = forms.TypedIn(BatchEventKind.SignalAnswered),
                ["CloseProblems"] = forms.ProblemsOf(BatchEventKind.Closed),
                ["CloseTyped"] = forms.TypedIn(BatchEventKind.Closed),
            },
            Answers.StatusOf(forms.Problems)
        );
    }

    /// <summary>A signal was looked into.</summary>
    private static Task<IResult> AnswerAsync(Guid id, HttpRequest request, ShopServices shop, CancellationToken cancel) =>
        SayAsync(BatchEventKind.SignalAnswered, id, request, shop, cancel);

    /// <summary>The batch ends before its number.</summary>
    private static Task<IResult> CloseAsync(Guid id, HttpRequest request, ShopServices shop, CancellationToken cancel) =>
        SayAsync(BatchEventKind.Closed, id, request, shop, cancel);

    private static async Task<IResult> SayAsync(
        BatchEventKind kind,
        Guid id,
        HttpRequest request,
        ShopServices shop,
        CancellationToken cancel
    )
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        BatchEventEntry said = new()
        {
            Id = typed.Id,
            BatchId = id,
            Kind = kind,
            Note = typed["note"],
            Person = typed["person"],
        };
        IReadOnlyList<Problem> problems = await shop.Run.RecordEventAsync(said, cancel);
        return problems.Count == 0
            ? Results.LocalRedirect($"/batches/{id}")
            : await ShowAsync(id, new BatchView(All: false, Sheet: 1), new BatchForms(kind, problems, typed), shop, cancel);
    }

    /// <summary>The closing is taken back; sent twice, or when somebody was faster, the batch is open all the same.</summary>
    private static async Task<IResult> ReopenAsync(Guid id, HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        await shop.Run.ReopenAsync(id, typed.Id, typed["person"], cancel);
        return Results.LocalRedirect($"/batches/{id}");
    }

    private static async Task<IResult> EnterPageAsync(
        Guid id,
        ShopServices shop,
        IReadOnlyList<Problem> problems,
        CoilEntry? typed,
        string tag,
        CancellationToken cancel
    )
    {
        return await shop.Winding.StatusAsync(id, cancel) is { } standing
            ? Answers.Page<EntryPage>(
                new()
                {
                    ["Status"] = standing,
                    ["Problems"] = problems,
                    ["Typed"] = typed,
                    ["Wanted"] = tag,
                    ["Meters"] = await MetersAsync(shop, cancel),
                },
                Answers.StatusOf(problems)
            )
            : Answers.NotFoundPage();
    }

    /// <summary>Names of the shop's instruments that read a coil's ohms.</summary>
    private static async Task<IReadOnlyList<string>> MetersAsync(ShopServices shop, CancellationToken cancel) =>
        [
            .. (await shop.Pieces.Shelf.Rules.CurrentAsync(cancel))
                .Instruments.Where(one => one.Profile.Quantity == Quantity.DcResistance.Key)
                .Select(one => one.Name),
        ];

    private static async Task<IResult> EnterAsync(Guid id, HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        BatchRecord? batchOf = await shop.Records.Batches.FindAsync(id, cancel);
        if (batchOf is not null && BatchTags.Scanned(batchOf, typed["resistance"]) is { } scanned)
        {
            // a reader typed a tag where ohms were expected
            return Results.LocalRedirect($"/batches/{id}/enter?tag={Uri.EscapeDataString(scanned)}");
        }

        string tag = batchOf is null ? typed["tag"] : BatchTags.Tidy(batchOf, typed["tag"]);
        CoilEntry entry = new()
        {
            Id = typed.Id,
            BatchId = id,
            Tag = typed["tag"],
            Proposed = typed["tag"].Length > 0 && typed["tag"] == typed["proposed"],
            Resistance = MeterEntryParser.Of(typed["resistance"]),
            Temperature = typed["temperature"],
            Inductance = typed["inductance"],
            InductanceAt = typed["inductanceAt"],
            Turns = typed["turns"],
            Person = typed["person"],
            Coil = typed[SpoolQuestionField.NameOf(tag)],
        };
        if (await OpenQuestionAsync(id, tag, entry, typed["asked"], shop, cancel) is { } question)
        {
            return await EnterPageAsync(id, shop, [new Problem("coil", question.Words)], entry, "", cancel);
        }

        CoilEntryOutcome outcome = await shop.Winding.RecordCoilAsync(entry, cancel);
        return outcome.Problems.Count == 0
            ? Results.LocalRedirect($"/batches/{id}/enter")
            : await EnterPageAsync(id, shop, outcome.Problems, entry, "", cancel);
    }

    /// <summary>More coils are wanted, with the reason.</summary>
    private static async Task<IResult> MoreAsync(Guid id, HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        BatchEventEntry said = new()
        {
            Id = typed.Id,
            BatchId = id,
            Kind = BatchEventKind.MoreWanted,
            Counter = typed["counter"],
            Note = typed["note"],
            Person = typed["person"],
        };
        IReadOnlyList<Problem> problems = await shop.Run.RecordEventAsync(said, cancel);
        if (problems.Count == 0)
        {
            return Results.LocalRedirect($"/batches/{id}/enter");
        }

        return await shop.Winding.StatusAsync(id, cancel) is { } standing
            ? Answers.Page<EntryPage>(
                new()
                {
                    ["Status"] = standing,
                    ["MoreProblems"] = problems,
                    ["MoreTypedText"] = typed,
                    ["Meters"] = await MetersAsync(shop, cancel),
                },
                StatusCodes.Status422UnprocessableEntity
            )
            : Answers.NotFoundPage();
    }

    /// <summary>The question of the tag's spool, when it has been neither answered nor asked before.</summary>
    private static async Task<SpoolQuestion?> OpenQuestionAsync(
        Guid id,
        string tag,
        CoilEntry entry,
        string asked,
        ShopServices shop,
        CancellationToken cancel
    )
    {
        bool settled = entry.Coil.Length > 0 || asked == tag || entry.Resistance.Trim().Length + entry.Inductance.Trim().Length == 0;
        BatchStatus? standing = settled ? null : await shop.Winding.StatusAsync(id, cancel);
        return standing?.Questions.FirstOrDefault(question => question.Tag == tag);
    }

    private static async Task<IResult> UndoAsync(Guid id, HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        Guid undoId = Guid.TryParse(form["id"], out Guid made) ? made : Guid.NewGuid();
        CoilEntryOutcome outcome = await shop.Winding.UndoLastAsync(id, undoId, form["person"].ToString(), cancel);
        return outcome.IsConflict
            ? await EnterPageAsync(id, shop, outcome.Problems, typed: null, tag: "", cancel)
            : Results.LocalRedirect($"/batches/{id}/enter");
    }
}
