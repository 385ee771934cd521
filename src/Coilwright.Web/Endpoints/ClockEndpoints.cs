using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Steps;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>What is curing, what may move, what is late; and what is done about it.</summary>
internal static class ClockEndpoints
{
    public static void MapClocks(this IEndpointRouteBuilder app)
    {
        app.MapGet("/clocks", async (string? done, HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            await PageAsync([], null, Chosen(request), shop, cancel, done ?? "")
        );
        app.MapGet("/api/now", async (ShopServices shop, CancellationToken cancel) =>
            Results.Json(new { nowUtc = await shop.Pieces.Shelf.NowUtcAsync(cancel) })
        );
        app.MapPost("/clocks/step", (HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            AfterAsync(request, shop, (typed, _) => BeginAsync(typed, shop, null, cancel), cancel)
        );
        app.MapPost("/clocks/end", (HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            AfterAsync(request, shop, (typed, _) => EndAsync(typed, shop, null, cancel), cancel)
        );
        app.MapPost("/clocks/hold", (HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            AfterAsync(
                request,
                shop,
                (typed, pieces) => shop.Pieces.Steps.HoldAsync(typed.Id, pieces, typed["reason"], typed["person"], cancel),
                cancel
            )
        );
        app.MapPost("/clocks/lift", (HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            AfterAsync(
                request,
                shop,
                (typed, pieces) => shop.Pieces.Steps.LiftAsync(typed.Id, pieces, typed["reason"], typed["person"], cancel),
                cancel
            )
        );
        app.MapPost("/clocks/undo", (HttpRequest request, ShopServices shop, CancellationToken cancel) => AfterAsync(
                request,
                shop,
                (typed, pieces) =>
                    shop.Pieces.Undo.UndoAsync(
                        new UndoEntry
                        {
                            Id = typed.Id,
                            Serials = pieces,
                            Basket = typed["undo-basket"],
                            Reason = typed["reason"],
                            Person = typed["person"],
                        },
                        cancel
                    ),
                cancel
            ));
        app.MapPost("/clocks/basket", (HttpRequest request, ShopServices shop, CancellationToken cancel) => AfterAsync(
                request,
                shop,
                (typed, pieces) =>
                    shop.Pieces.Potting.InAsync(
                        new BasketEntry
                        {
                            Id = typed.Id,
                            Label = typed["basket"],
                            Lot = typed["lot"],
                            Bath = typed["bath"],
                            Limit = typed["limit"],
                            Pieces = pieces,
                            Person = typed["person"],
                        },
                        cancel
                    ),
                cancel
            ));
        app.MapPost("/clocks/bath", BathAsync);
        app.MapPost("/clocks/out", (HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            AfterAsync(
                request,
                shop,
                (typed, _) => shop.Pieces.Potting.OutAsync(typed.Id, typed["basket"], typed["person"], cancel),
                cancel
            )
        );
        app.MapPost("/clocks/ink", (HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            AfterAsync(
                request,
                shop,
                (typed, _) => shop.Pieces.Ink.MixAsync(typed.Id, typed["mix"], typed["lots"], typed["room"], typed["person"], cancel),
                cancel
            )
        );
        app.MapPost("/clocks/ink/undo", (HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            AfterAsync(
                request,
                shop,
                (typed, _) => shop.Pieces.StepUndo.UndoMixAsync(typed.Id, typed["undo-mix"], typed["undo-reason"], typed["person"], cancel),
                cancel
            )
        );
        app.MapPost("/clocks/bath/undo", (HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            AfterAsync(
                request,
                shop,
                (typed, _) =>
                    shop.Pieces.StepUndo.UndoReadingAsync(typed.Id, typed["undo-bath"], typed["undo-reason"], typed["person"], cancel),
                cancel
            )
        );
    }

    private static readonly string[] s_chosen = ["choose", "do", "step", "piece"];

    /// <summary>Pieces that a card's link ticks beforehand, and the part of the form that it opens.</summary>
    private static FormValues Chosen(HttpRequest request) =>
        FormValues.Of([
            .. s_chosen.SelectMany(name =>
                request.Query[name].OfType<string>().Where(value => !value.Contains('\0')).Select(value => (name, value))
            ),
        ]);

    /// <summary>The page that comes after an entry: the board, with its form open where it was made there.</summary>
    public static string Next(FormValues typed, string done) => $"/clocks?done={done}{(typed["choose"].Length > 0 ? "&choose=yes" : "")}";

    /// <summary>Begins a step as the form says; <paramref name="told"/> when it waited on a tablet.</summary>
    public static Task<IReadOnlyList<Problem>> BeginAsync(FormValues typed, ShopServices shop, LateEntry? told, CancellationToken cancel) =>
        shop.Pieces.Steps.BeginAsync(
            typed.Id,
            typed["step"],
            typed.All("piece"),
            typed["step"] == "marking" ? typed["mix"] : "",
            typed["person"],
            cancel,
            ChargeForm.Read(typed),
            told
        );

    /// <summary>Ends a step as the form says; <paramref name="told"/> when it waited on a tablet.</summary>
    public static Task<IReadOnlyList<Problem>> EndAsync(FormValues typed, ShopServices shop, LateEntry? told, CancellationToken cancel) =>
        shop.Pieces.Steps.EndAsync(typed.Id, typed["step"], typed.All("piece"), typed["person"], cancel, ChargeForm.Read(typed), told);

    private static async Task<IResult> PageAsync(
        IReadOnlyList<Problem> problems,
        string? alarm,
        FormValues typed,
        ShopServices shop,
        CancellationToken cancel,
        string done = ""
    ) =>
        Answers.Page<ClocksPage>(
            new()
            {
                ["Board"] = await ClockBoard.ReadAsync(shop.Records.Steps, shop.Pieces.Shelf, shop.Pieces.Potting, cancel),
                ["Problems"] = problems,
                ["Alarm"] = alarm,
                ["Typed"] = typed,
                ["Done"] = done,
            },
            problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity
        );

    private static async Task<IResult> AfterAsync(
        HttpRequest request,
        ShopServices shop,
        Func<FormValues, IReadOnlyList<string>, Task<IReadOnlyList<Problem>>> act,
        CancellationToken cancel
    )
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        IReadOnlyList<Problem> problems = await act(typed, typed.All("piece"));
        string done = DoneForm.Of(request);
        string back =
            typed["back"] is "piece" && typed.All("piece") is [var one]
                ? $"/pieces/{Uri.EscapeDataString(one)}?done={done}"
                : Next(typed, done);
        return problems.Count == 0 ? Results.LocalRedirect(back) : await PageAsync(problems, null, typed, shop, cancel);
    }

    private static async Task<IResult> BathAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        (IReadOnlyList<Problem> problems, string? alarm) = await shop.Pieces.Potting.ReadBathAsync(
            typed.Id,
            typed["basket"],
            typed["bath"],
            typed["person"],
            cancel
        );
        FormValues again = alarm is null ? typed : FormValues.Nothing;
        return problems.Count == 0 && alarm is null
            ? Results.LocalRedirect("/clocks?done=bath")
            : await PageAsync(problems, alarm, again, shop, cancel);
    }
}
