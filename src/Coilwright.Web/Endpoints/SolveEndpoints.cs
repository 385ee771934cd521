using Coilwright.Application.Composition;
using Coilwright.Application.Solving;
using Coilwright.Web.Forms;
using Coilwright.Web.Hosting;
using Coilwright.Web.Pages;
using Coilwright.Web.Views.Comparisons;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Solving;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>A recipe asked backwards.</summary>
internal static class SolveEndpoints
{
    /// <summary>How long the page waits for the answer before it shows how far the search is.</summary>
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(1);

    public static void MapSolve(this IEndpointRouteBuilder app)
    {
        app.MapGet("/recipes/{id:guid}/solve", SolveAsync);
        app.MapPost("/recipes/{id:guid}/solve", KeepAsync);
        app.MapPost(
                "/recipes/{id:guid}/solve/stop",
                (Guid id, HttpRequest request, ShopServices shop, SolveService desk, CancellationToken cancel) =>
                    AgainAsync(id, request, shop, desk.Stop, cancel)
            )
            .WithMetadata(new ChangesNothing());
        app.MapPost(
                "/recipes/{id:guid}/solve/again",
                (Guid id, HttpRequest request, ShopServices shop, SolveService desk, CancellationToken cancel) =>
                    AgainAsync(id, request, shop, desk.Forget, cancel)
            )
            .WithMetadata(new ChangesNothing());
    }

    private static async Task<IResult> SolveAsync(
        Guid id,
        HttpRequest request,
        ShopServices shop,
        SolveService desk,
        AskSearch ask,
        CompareSolutions pins,
        CancellationToken cancel
    )
    {
        if (await NewestRevision.OfAsync(id, shop, cancel) is not { } found)
        {
            return Answers.NotFoundPage();
        }

        SearchOffer offer = ask.Offer(found.Recipe, cancel);
        if (SolveForm.IsIn(request.Query))
        {
            return Typed(id, found.Record, SolveForm.Of(request.Query, offer), request.Query, ask);
        }

        SolveAddress address = SolveAddress.Of(id, request.Query);
        SolveForm form = SolveForm.Of(address, offer);
        if (string.IsNullOrWhiteSpace(address.Objective))
        {
            return Page(found.Record, address, form);
        }

        form = form with { Asked = ask.Read(offer, form.Rows, form.Ticks) };
        if (desk.Ask(found.Recipe, address.Objective, address.Vary) is not { } job)
        {
            Problem busy = new("want", "other searches are under way", null, "stop one, or wait until one is done");
            RazorComponentResult<SolvePage> answer = Page(found.Record, address, form, ("Problems", new[] { busy }));
            answer.StatusCode = StatusCodes.Status503ServiceUnavailable;
            return answer;
        }

        return await Task.WhenAny(job.Answer, Task.Delay(s_patience, cancel)) == job.Answer
            ? Answered(found.Record, address, form, await job.Answer, (pins, await shop.Recipes.KnownPartsAsync(cancel)))
            : Page(found.Record, address, form, ("UnderWay", job.Progress(shop.Time.GetUtcNow())));
    }

    /// <summary>
    /// Rows and ticks become the address of their question; a row more or less, or what was not understood, shows the form as it was typed.
    /// </summary>
    private static IResult Typed(Guid id, RevisionRecord record, SolveForm form, IQueryCollection query, AskSearch ask)
    {
        AskedSearch asked = ask.Read(form.Offer, form.Rows, form.Ticks);
        SolveAddress address = new(id, asked.Want, asked.Vary, [], "");
        if (query.ContainsKey("more") || query.ContainsKey("away"))
        {
            return Page(record, address, form with { Asked = asked });
        }

        return asked.Problems.Count == 0
            ? Results.LocalRedirect(address.Page)
            : Page(record, address, form with { Asked = asked, Problems = asked.Problems }, ("Problems", asked.Problems));
    }

    private static RazorComponentResult<SolvePage> Answered(
        RevisionRecord record,
        SolveAddress address,
        SolveForm form,
        ReadOutcome<Solutions> outcome,
        (CompareSolutions Pins, KnownParts Parts) on
    )
    {
        PinnedViewModel? pinned = outcome.Value is { } answer
            ? ComparisonView.Of(on.Pins.Compare(record, answer, address.Pins, address.Against, NewestRevision.Load(), on.Parts))
            : null;
        return Page(record, address, form, ("Found", outcome.Value), ("Problems", outcome.Problems), ("Pinned", pinned));
    }

    private static RazorComponentResult<SolvePage> Page(
        RevisionRecord record,
        SolveAddress address,
        SolveForm form,
        params (string Name, object? Value)[] more
    )
    {
        Dictionary<string, object?> shown = more.ToDictionary(one => one.Name, one => one.Value, StringComparer.Ordinal);
        (shown["Recipe"], shown["Address"], shown["Form"]) = (record, address, form);
        bool wrong = shown.GetValueOrDefault("Problems") is IReadOnlyList<Problem> { Count: > 0 };
        return new RazorComponentResult<SolvePage>(shown)
        {
            StatusCode = wrong ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status200OK,
            PreventStreamingRendering = true,
        };
    }

    /// <summary>Stops a search or begins it anew, and goes back to its page.</summary>
    private static async Task<IResult> AgainAsync(
        Guid id,
        HttpRequest request,
        ShopServices shop,
        Action<Recipe, string, string> act,
        CancellationToken cancel
    )
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        if (await NewestRevision.OfAsync(id, shop, cancel) is not { } found)
        {
            return Answers.NotFoundPage();
        }

        string want = form["want"].ToString(),
            vary = form["vary"].ToString();
        act(found.Recipe, want, vary);
        return Results.LocalRedirect($"/recipes/{id}/solve?want={Uri.EscapeDataString(want)}&vary={Uri.EscapeDataString(vary)}");
    }

    /// <summary>A recipe that was found becomes a draft of the same recipe.</summary>
    private static async Task<IResult> KeepAsync(Guid id, HttpRequest request, ShopServices shop, AskSearch ask, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        if (await NewestRevision.OfAsync(id, shop, cancel) is not { } found)
        {
            return Answers.NotFoundPage();
        }

        (Guid kept, IReadOnlyList<Problem> problems) = await NewestRevision.KeepAsync(found.Record, form, shop, cancel);
        return problems.Count == 0
            ? Results.LocalRedirect($"/recipes/{kept}?saved=yes")
            : Page(
                found.Record,
                new SolveAddress(id, "", "turns", [], ""),
                SolveForm.Of(new SolveAddress(id, "", "turns", [], ""), ask.Offer(found.Recipe, cancel)),
                ("Problems", problems)
            );
    }
}
