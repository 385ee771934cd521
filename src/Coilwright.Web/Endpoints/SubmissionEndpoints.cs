using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>What the client's outbox sends of pieces: forms that a person filled in, now or while this server was away.</summary>
internal static class SubmissionEndpoints
{
    /// <summary>Header with the tablet's times of entry and of sending, as an ISO 8601 interval.</summary>
    public const string TimesHeader = "Coilwright-Told";

    /// <summary>A form as it was filled in.</summary>
    /// <param name="Id">Client-made id; sent twice it is kept once.</param>
    /// <param name="What">"begin", "end" or "test".</param>
    /// <param name="Fields">Name and value of every field, in order.</param>
    public sealed record PieceSubmission(Guid Id, string What, IReadOnlyList<string[]> Fields);

    public static void MapTold(this IEndpointRouteBuilder app) => app.MapPost("/api/pieces/told", TellAsync);

    private static async Task<IResult> TellAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        (PieceSubmission? told, IResult? refused) = await ApiBody.ReadAsync<PieceSubmission>(request, cancel);
        if (told is null)
        {
            return refused!;
        }

        if (ProblemsOf(told.Fields) is { Count: > 0 } unreadable)
        {
            return Results.Json(new { problems = unreadable }, statusCode: StatusCodes.Status400BadRequest);
        }

        FormValues typed = FormValues.Of([.. told.Fields.Select(field => (field[0], field[1])), ("id", told.Id.ToString())]);
        LateEntry? late = LateEntry.Read(request.Headers[TimesHeader]);
        IReadOnlyList<Problem> problems = told.What switch
        {
            "begin" => await ClockEndpoints.BeginAsync(typed, shop, late, cancel),
            "end" => await ClockEndpoints.EndAsync(typed, shop, late, cancel),
            "test" => (await PieceEndpoints.JudgeAsync(typed, shop, late, cancel)).Problems,
            _ => [new Problem("what", "say what was done", told.What, "begin, end, test")],
        };
        string next =
            told.What == "test"
                ? $"/test?piece={Uri.EscapeDataString(typed["piece"])}&judged={told.Id}"
                : ClockEndpoints.Next(typed, "step");
        return Results.Json(
            new { problems, next },
            statusCode: problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity
        );
    }

    private static IReadOnlyList<Problem> ProblemsOf(IReadOnlyList<string[]> fields) =>
        fields.Any(field => field is not [{ }, { }] || field[1].Contains('\0', StringComparison.Ordinal))
            ? [new Problem("fields", "a field is not a name with a value", null, "[[\"name\", \"value\"], …]")]
            : [.. TextLimit.Check(fields.Select(field => (field[0], (string?)field[1])))];
}
