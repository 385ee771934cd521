using System.Text.Json;
using Coilwright.Analysis.Forecasts;
using Coilwright.Web.Forecasts;
using Coilwright.Web.Forms;
using Coilwright.Web.Views;
using Coilwright.Workshop;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;
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
    public sealed record EntryAnswer(IReadOnlyList<Problem> Problems, string Echo, bool Duplicate, string? NextTag, VerdictAnswer? Verdict);

    /// <summary>A verdict in words.</summary>
    public sealed record VerdictAnswer(VerdictKind Kind, IReadOnlyList<string> Reasons);

    public static void MapApi(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/health", async (ShopServices shop, CancellationToken cancel) =>
            Results.Json(new { status = "ok", shop = await shop.Records.ShopNameAsync(cancel) }));
        app.MapPost("/api/predict", PredictAsync);
        app.MapPost("/api/batches/{id:guid}/coils", RecordAsync);
        app.MapPost("/api/batches/{id:guid}/undo", UndoAsync);
    }

    private static async Task<IResult> PredictAsync(PredictQuestion question, ShopServices shop, CancellationToken cancel)
    {
        ForecastView view = ForecastDesk.Forecast(question.Recipe.GetRawText(), question.Load?.GetRawText(), await shop.Recipes.FillLimitsAsync(cancel));
        return view.Prediction is { } prediction
            ? Results.Text(PredictionJson.Write(prediction), "application/json")
            : Results.Json(new { problems = view.Problems }, statusCode: StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> RecordAsync(Guid id, CoilEntry entry, ShopServices shop, CancellationToken cancel)
    {
        CoilEntryOutcome outcome = await shop.Winding.RecordCoilAsync(entry with { BatchId = id, Resistance = MeterText.Of(entry.Resistance) }, cancel);
        return Results.Json(AnswerTo(outcome), statusCode: Answers.StatusOf(outcome.Problems));
    }

    private static async Task<IResult> UndoAsync(Guid id, UndoSent sent, ShopServices shop, CancellationToken cancel)
    {
        CoilEntryOutcome outcome = await shop.Winding.UndoLastAsync(id, sent.Id, sent.Person, cancel);
        return Results.Json(AnswerTo(outcome), statusCode: Answers.StatusOf(outcome.Problems));
    }

    private static EntryAnswer AnswerTo(CoilEntryOutcome outcome) => new(
        outcome.Problems, outcome.Echo, outcome.Duplicate, outcome.NextTag,
        outcome.Coil is { } coil ? new VerdictAnswer(coil.Verdict.Kind, coil.Verdict.Reasons) : null);
}
