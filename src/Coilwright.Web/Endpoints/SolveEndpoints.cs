using Coilwright.Analysis.Spread;
using Coilwright.Application.Composition;
using Coilwright.Application.Forecasts;
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
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>A recipe asked backwards, and the spread of a run of it.</summary>
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
        app.MapGet("/recipes/{id:guid}/spread", SpreadAsync);
    }

    private static async Task<IResult> SolveAsync(
        Guid id,
        string? want,
        string? vary,
        string[]? pin,
        string? against,
        ShopServices shop,
        SolveService desk,
        CompareSolutions pins,
        CancellationToken cancel
    )
    {
        if (await NewestRevision.OfAsync(id, shop, cancel) is not { } found)
        {
            return Answers.NotFoundPage();
        }

        SolveAddress address = new(id, want ?? "", vary ?? "turns", [.. (pin ?? []).Distinct().Take(SolveAddress.MostPins)], against ?? "");
        if (string.IsNullOrWhiteSpace(address.Objective))
        {
            return Answers.Page<SolvePage>(new() { ["Recipe"] = found.Record, ["Address"] = address });
        }

        if (desk.Ask(found.Recipe, address.Objective, address.Vary) is not { } job)
        {
            IReadOnlyList<Problem> busy =
            [
                new Problem("want", "other searches are under way", null, "stop one, or wait until one is done"),
            ];
            return Answers.Page<SolvePage>(
                new()
                {
                    ["Recipe"] = found.Record,
                    ["Problems"] = busy,
                    ["Address"] = address,
                },
                StatusCodes.Status503ServiceUnavailable
            );
        }

        if (await Task.WhenAny(job.Answer, Task.Delay(s_patience, cancel)) != job.Answer)
        {
            return Answers.Page<SolvePage>(
                new()
                {
                    ["Recipe"] = found.Record,
                    ["Address"] = address,
                    ["UnderWay"] = job.Progress(shop.Time.GetUtcNow()),
                }
            );
        }

        ReadOutcome<Solutions> outcome = await job.Answer;
        PinnedViewModel? pinned = outcome.Value is { } answer
            ? ComparisonView.Of(pins.Compare(found.Record, answer, address.Pins, address.Against, NewestRevision.Load()))
            : null;
        return Answers.Page<SolvePage>(
            new()
            {
                ["Recipe"] = found.Record,
                ["Found"] = outcome.Value,
                ["Problems"] = outcome.Problems,
                ["Address"] = address,
                ["Pinned"] = pinned,
            },
            outcome.Problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity
        );
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
    private static async Task<IResult> KeepAsync(Guid id, HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        if (await NewestRevision.OfAsync(id, shop, cancel) is not { } found)
        {
            return Answers.NotFoundPage();
        }

        (Guid kept, IReadOnlyList<Problem> problems) = await NewestRevision.KeepAsync(found.Record, form, shop, cancel);
        return problems.Count == 0
            ? Results.LocalRedirect($"/recipes/{kept}?saved=yes")
            : Answers.Page<SolvePage>(
                new()
                {
                    ["Recipe"] = found.Record,
                    ["Problems"] = problems,
                    ["Address"] = new SolveAddress(id, "", "turns", [], ""),
                },
                StatusCodes.Status422UnprocessableEntity
            );
    }

    private static async Task<IResult> SpreadAsync(Guid id, ShopServices shop, SpreadRecipe spread, CancellationToken cancel)
    {
        if (await NewestRevision.OfAsync(id, shop, cancel) is not { } found)
        {
            return Answers.NotFoundPage();
        }

        RunSpread run = spread.Draw(found.Recipe, NewestRevision.Load(), SpreadRecipe.UsualSamples, seed: 1, byTime: false, cancel);
        return Answers.Page<SpreadPage>(new() { ["Recipe"] = found.Record, ["Run"] = run });
    }
}
