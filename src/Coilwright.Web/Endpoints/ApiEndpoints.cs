using System.Text.Json;
using Coilwright.Application.Composition;
using Coilwright.Application.Forecasts;
using Coilwright.Formats.Forecasts;
using Coilwright.Web.Forms;
using Coilwright.Web.Hosting;
using Coilwright.Web.Hosting.Access;
using Coilwright.Web.Views;
using Coilwright.Workshop;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>The HTTP API: what the client's outbox and other programs call.</summary>
internal static class ApiEndpoints
{
    /// <summary>A recipe, and the load it is to be heard through.</summary>
    public sealed record PredictQuestion(JsonElement Recipe, JsonElement? Load = null);

    /// <summary>An undo of the last entry: with its own id, so that sent twice it undoes once.</summary>
    public sealed record UndoSent(Guid Id, string Person = "");

    /// <summary>What the client shows of an entry.</summary>
    public sealed record EntryAnswer(
        IReadOnlyList<Problem> Problems,
        string Echo,
        bool Duplicate,
        string? NextTag,
        VerdictAnswer? Verdict,
        string Signal,
        string Count
    );

    /// <summary>A verdict in words.</summary>
    /// <param name="Kind">Pass, hold or reject.</param>
    /// <param name="Reasons">Why.</param>
    /// <param name="Cause">The probable cause, or those that the readings cannot tell apart; empty where nothing seems wrong.</param>
    /// <param name="Check">What to do first about it; else empty.</param>
    public sealed record VerdictAnswer(VerdictKind Kind, IReadOnlyList<string> Reasons, string Cause, string Check);

    public static void MapApi(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/health", async (ShopServices shop, CancellationToken cancel) =>
            Results.Json(new { status = "ok", shop = await shop.Records.ShopNameAsync(cancel) })
        );
        app.MapPost("/api/predict", PredictAsync).WithMetadata(new ChangesNothing());
        app.MapPost("/api/batches/{id:guid}/coils", RecordAsync);
        app.MapPost("/api/batches/{id:guid}/undo", UndoAsync);
    }

    private static async Task<IResult> PredictAsync(
        HttpRequest request,
        ShopServices shop,
        ForecastRecipe forecast,
        CancellationToken cancel
    )
    {
        (PredictQuestion? question, IResult? refused) = await ApiBody.ReadAsync<PredictQuestion>(request, cancel);
        if (question is null)
        {
            return refused!;
        }

        string recipe = question.Recipe.GetRawText();
        if (RecipeReader.ReadFile(recipe) is { Problems: { Count: > 0 } problems }) // a document of ours: the point alone is decimal
        {
            return Results.Json(new { problems }, statusCode: StatusCodes.Status422UnprocessableEntity);
        }

        RecipeForecast found = forecast.Forecast(recipe, question.Load?.GetRawText(), await shop.Recipes.KnownPartsAsync(cancel));
        return found.Prediction is { } prediction
            ? Results.Text(PredictionJson.Write(prediction), "application/json")
            : Results.Json(new { problems = found.Problems }, statusCode: StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> RecordAsync(Guid id, HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        (CoilEntry? entry, IResult? refused) = await ApiBody.ReadAsync<CoilEntry>(request, cancel, ("batchId", id));
        if (entry is null)
        {
            return refused!;
        }

        LateEntry? late = LateEntry.Read(request.Headers[SubmissionEndpoints.TimesHeader]);
        CoilEntryOutcome outcome = await shop.Winding.RecordCoilAsync(
            entry with
            {
                BatchId = id,
                Resistance = MeterEntryParser.Of(entry.Resistance),
            },
            cancel,
            late
        );
        return Results.Json(
            AnswerTo(outcome, HiddenRecipes.IsHidden(request.HttpContext, await RecipeOfAsync(id, shop, cancel))),
            statusCode: Answers.StatusOf(outcome.Problems)
        );
    }

    private static async Task<IResult> UndoAsync(Guid id, HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        (UndoSent? sent, IResult? refused) = await ApiBody.ReadAsync<UndoSent>(request, cancel);
        if (sent is null)
        {
            return refused!;
        }

        CoilEntryOutcome outcome = await shop.Winding.UndoLastAsync(id, sent.Id, sent.Person, cancel);
        return Results.Json(
            AnswerTo(outcome, HiddenRecipes.IsHidden(request.HttpContext, await RecipeOfAsync(id, shop, cancel))),
            statusCode: Answers.StatusOf(outcome.Problems)
        );
    }

    private static async Task<Guid> RecipeOfAsync(Guid batch, ShopServices shop, CancellationToken cancel) =>
        (await shop.Records.Batches.FindAsync(batch, cancel))?.RecipeId ?? Guid.Empty;

    /// <summary>Of a secret recipe the verdict alone: a cause in turns gives away how many there are.</summary>
    private static EntryAnswer AnswerTo(CoilEntryOutcome outcome, bool isHidden) =>
        new(
            outcome.Problems,
            outcome.Echo,
            outcome.Duplicate,
            outcome.NextTag,
            outcome.Coil is { } coil ? VerdictOf(coil.Verdict, isHidden) : null,
            !isHidden && outcome.Coil is { } at ? EntryAdvice.Signal(at.Tag, outcome.Signals) : "",
            outcome.CountWords
        );

    private static VerdictAnswer VerdictOf(Verdict verdict, bool isHidden) =>
        new(verdict.Kind, verdict.Reasons, isHidden ? "" : VerdictAdvice.Cause(verdict), isHidden ? "" : VerdictAdvice.Check(verdict));
}
