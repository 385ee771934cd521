using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Returns;
using Coilwright.Workshop.Rules;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>A piece with its whole life on one page, and what can be done with it.</summary>
internal static class PieceEndpoints
{
    public static void MapPieces(this IEndpointRouteBuilder app)
    {
        app.MapGet(
            "/pieces",
            async (
                string? state,
                string? recipe,
                string? customer,
                string? serial,
                string? sheet,
                ShopServices shop,
                CancellationToken cancel
            ) =>
                await ListAsync(
                    new PieceFilter(state ?? "", recipe ?? "", customer ?? "", serial ?? ""),
                    SheetNumber.Of(sheet),
                    shop,
                    cancel
                )
        );
        app.MapGet("/pieces/{serial}", async (string serial, string? done, ShopServices shop, CancellationToken cancel) =>
            await PageAsync(serial, [], FormValues.Nothing, shop, cancel, done ?? "")
        );
        app.MapPost("/pieces/{serial}/ship", (string serial, HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            AfterAsync(
                serial,
                request,
                shop,
                typed => shop.Pieces.DispatchService.ShipAsync(typed.Id, [serial], typed["customer"], typed["person"], cancel),
                cancel
            )
        );
        app.MapPost("/pieces/{serial}/return", (string serial, HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            AfterAsync(
                serial,
                request,
                shop,
                typed => shop.Pieces.Returns.ReturnAsync(typed.Id, serial, typed["complaint"], typed["person"], cancel),
                cancel
            )
        );
        app.MapPost("/pieces/{serial}/examine", (string serial, HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            AfterAsync(
                serial,
                request,
                shop,
                async typed => (await shop.Pieces.Returns.ExamineAsync(TestForm.Read(typed, serial), cancel)).Problems,
                cancel
            )
        );
        app.MapPost("/pieces/{serial}/close", (string serial, HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            AfterAsync(
                serial,
                request,
                shop,
                typed =>
                    shop.Pieces.Returns.CloseAsync(
                        typed.Id,
                        serial,
                        typed["done"],
                        typed["cost"],
                        typed["answer"],
                        typed["scrap"].Length > 0,
                        typed["person"],
                        cancel
                    ),
                cancel
            )
        );
        app.MapPost("/pieces/{serial}/exchange", (string serial, HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            AfterAsync(
                serial,
                request,
                shop,
                typed =>
                    shop.Pieces.Assembly.ReplaceCoilAsync(
                        typed.Id,
                        serial,
                        typed["out"],
                        typed["in"],
                        typed["reason"],
                        typed["person"],
                        cancel
                    ),
                cancel
            )
        );
        app.MapPost("/pieces/{serial}/charge", (string serial, HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            AfterAsync(
                serial,
                request,
                shop,
                typed => shop.Pieces.Magnets.ChargeAsync(typed.Id, [serial], ChargeForm.Read(typed), typed["why"], typed["person"], cancel),
                cancel
            )
        );
        app.MapPost("/pieces/{serial}/time", (string serial, HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            AfterAsync(
                serial,
                request,
                shop,
                typed =>
                    shop.Pieces.Times.MendAsync(
                        typed.Id,
                        [serial],
                        Guid.TryParse(typed["entry"], out Guid about) ? about : null,
                        typed["at"],
                        typed["why"],
                        typed["person"],
                        cancel
                    ),
                cancel
            )
        );
        app.MapPost("/pieces/{serial}/undo", (string serial, HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            AfterAsync(
                serial,
                request,
                shop,
                typed =>
                    shop.Pieces.Undo.UndoAsync(
                        new UndoEntry
                        {
                            Id = typed.Id,
                            Serials = [serial],
                            Reason = typed["undo-reason"],
                            Shown = Guid.TryParse(typed["shown"], out Guid shown) ? shown : null,
                            Person = typed["person"],
                        },
                        cancel
                    ),
                cancel
            )
        );
        app.MapGet("/test", async (string? piece, Guid? judged, ShopServices shop, CancellationToken cancel) =>
            await TestPageAsync(piece, [], judged, FormValues.Nothing, shop, cancel)
        );
        app.MapPost("/test", TestAsync);
    }

    /// <summary>Pieces that a list reads at most, the newest; older ones are found by their serial.</summary>
    private const int Newest = 1000;

    private static async Task<IResult> ListAsync(PieceFilter filter, int sheet, ShopServices shop, CancellationToken cancel)
    {
        IReadOnlyList<RecordStatus<PieceSnapshot>> pieces = await shop.Pieces.Shelf.StatusesAsync(
            await shop.Records.Pieces.NewestAsync(Newest, cancel),
            cancel
        );
        return Answers.Page<PiecesPage>(
            new()
            {
                ["All"] = pieces.Readable(),
                ["Filter"] = filter,
                ["Sheet"] = sheet,
                ["Unreadable"] = pieces.Unreadable(),
                ["NowUtc"] = await shop.Pieces.Shelf.NowUtcAsync(cancel),
                ["Zone"] = (await shop.Pieces.Shelf.Rules.CurrentAsync(cancel)).Zone,
                ["Customer"] = await shop.Pieces.Shelf.CustomerWordsAsync(cancel),
            }
        );
    }

    private static async Task<IResult> PageAsync(
        string serial,
        IReadOnlyList<Problem> problems,
        FormValues typed,
        ShopServices shop,
        CancellationToken cancel,
        string done = ""
    )
    {
        if (await shop.Pieces.Trace.PieceAsync(serial, cancel) is not { } piece)
        {
            return Answers.NotFoundPage();
        }

        ShopRules rules = await shop.Pieces.Shelf.Rules.CurrentAsync(cancel);
        DateTimeOffset nowUtc = await shop.Pieces.Shelf.NowUtcAsync(cancel);
        return Answers.Page<PiecePage>(
            new()
            {
                ["Piece"] = piece,
                ["NowUtc"] = nowUtc,
                ["Zone"] = rules.Zone,
                ["Customers"] = await shop.Records.Customers.AllAsync(cancel),
                ["ToShip"] = piece.Snapshot.IsInShop
                    ? await shop.Pieces.DispatchService.MayShipAsync(piece.Snapshot, nowUtc, rules, cancel)
                    : [],
                ["Finding"] = ReturnService.LastFinding(piece.Snapshot, rules),
                ["NoUndo"] = await shop.Pieces.Undo.RefusalAsync(piece.Snapshot, nowUtc, rules.Zone, cancel),
                ["Problems"] = problems,
                ["Typed"] = typed,
                ["Done"] = done,
            },
            problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity
        );
    }

    private static async Task<IResult> AfterAsync(
        string serial,
        HttpRequest request,
        ShopServices shop,
        Func<FormValues, Task<IReadOnlyList<Problem>>> act,
        CancellationToken cancel
    )
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        IReadOnlyList<Problem> problems = await act(typed);
        return problems.Count == 0
            ? Results.LocalRedirect($"/pieces/{Uri.EscapeDataString(serial)}?done={DoneForm.Of(request)}")
            : await PageAsync(serial, problems, typed, shop, cancel);
    }

    private static async Task<IResult> TestPageAsync(
        string? serial,
        IReadOnlyList<Problem> problems,
        Guid? judged,
        FormValues typed,
        ShopServices shop,
        CancellationToken cancel
    )
    {
        IReadOnlyList<RecordStatus<PieceSnapshot>> all = await shop.Pieces.Shelf.OpenStatusesAsync(cancel);
        IReadOnlyList<PieceSnapshot> open = all.Readable();
        PieceSnapshot? life = serial is null
            ? null
            : open.FirstOrDefault(one => string.Equals(one.Piece.Serial, serial.Trim(), StringComparison.OrdinalIgnoreCase))
                ?? await shop.Pieces.Shelf.FindAsync(serial, cancel);
        ShopRules rules = await shop.Pieces.Shelf.Rules.CurrentAsync(cancel);
        DateTimeOffset nowUtc = await shop.Pieces.Shelf.NowUtcAsync(cancel);
        return Answers.Page<TestPage>(
            new()
            {
                ["Waiting"] =
                    (IReadOnlyList<PieceSnapshot>)[.. open.Where(one => one.Status(nowUtc, rules.Zone).Step == PieceEventLog.FinalTest)],
                ["Unreadable"] = all.Unreadable(),
                ["NowUtc"] = nowUtc,
                ["Zone"] = rules.Zone,
                ["Snapshot"] = life,
                ["Asked"] = life is null
                    ? null
                    : FinalTestService.Asked(life.Recipe, await shop.Pieces.Test.GoldenAsync(life, cancel), rules),
                ["Judged"] = life?.History.All.OfType<Tested>().FirstOrDefault(one => one.Id == judged),
                ["Problems"] = problems,
                ["Typed"] = typed,
            },
            problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity
        );
    }

    /// <summary>Judges a piece as the form says; <paramref name="told"/> when it waited on a tablet.</summary>
    public static Task<(IReadOnlyList<Problem> Problems, FinalTestVerdict? Verdict)> JudgeAsync(
        FormValues typed,
        ShopServices shop,
        LateEntry? told,
        CancellationToken cancel
    ) => shop.Pieces.Test.TestAsync(TestForm.Read(typed, typed["piece"]), cancel, told);

    private static async Task<IResult> TestAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        IReadOnlyList<Problem> problems = (await JudgeAsync(typed, shop, null, cancel)).Problems;
        return problems.Count == 0
            ? Results.LocalRedirect($"/test?piece={Uri.EscapeDataString(typed["piece"])}&judged={typed["id"]}")
            : await TestPageAsync(typed["piece"], problems, null, typed, shop, cancel);
    }
}
