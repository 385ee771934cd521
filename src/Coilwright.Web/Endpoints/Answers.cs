using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.Hosting;

namespace Coilwright.Web.Endpoints;

/// <summary>Answers that several pages give.</summary>
internal static class Answers
{
    /// <summary>How long a page waits for something new before it asks again.</summary>
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(15);

    /// <summary>A page made of one component.</summary>
    public static RazorComponentResult Page<TComponent>(Dictionary<string, object?> parameters, int status = StatusCodes.Status200OK)
        where TComponent : IComponent => new(typeof(TComponent), parameters) { StatusCode = status, PreventStreamingRendering = true };

    /// <summary>What an answer with these problems is: 409 when an id came again with something else in it.</summary>
    public static int StatusOf(IReadOnlyList<Problem> problems)
    {
        int refused = SentAgain.IsAmong(problems) ? StatusCodes.Status409Conflict : StatusCodes.Status422UnprocessableEntity;
        return problems.Count == 0 ? StatusCodes.Status200OK : refused;
    }

    /// <summary>What a program is told: every problem, or none.</summary>
    public static IResult Told(int status, params IReadOnlyList<Problem> problems) => Results.Json(new { problems }, statusCode: status);

    /// <summary>An answer that waits for something new; it comes at once when the server stops.</summary>
    /// <param name="next">What is waited for.</param>
    /// <param name="life">The server's life.</param>
    /// <param name="cancel">Whoever asked has gone.</param>
    public static async Task<IResult> NextAsync<T>(
        Func<TimeSpan, CancellationToken, Task<T>> next,
        IHostApplicationLifetime life,
        CancellationToken cancel
    )
    {
        using CancellationTokenSource ends = CancellationTokenSource.CreateLinkedTokenSource(cancel, life.ApplicationStopping);
        return Results.Json(await next(s_patience, ends.Token));
    }

    /// <summary>Nothing stands at this address.</summary>
    public static RazorComponentResult NotFoundPage() =>
        Page<MessagePage>(
            new()
            {
                ["Title"] = "Nothing here",
                ["Text"] = "No page, recipe or batch stands at this address. It may have been mistyped, or belong to another shop.",
            },
            StatusCodes.Status404NotFound
        );
}
