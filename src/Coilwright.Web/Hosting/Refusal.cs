using Coilwright.Workshop.Entry;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Hosting;

/// <summary>Says that a request is refused: to programs as the usual list of problems, to people as a sentence.</summary>
internal static class Refusal
{
    /// <summary>Writes one refusal.</summary>
    /// <param name="context">The request.</param>
    /// <param name="status">Its HTTP status.</param>
    /// <param name="field">What of the request is wrong.</param>
    /// <param name="message">The sentence.</param>
    /// <param name="allowed">What is allowed, or null.</param>
    public static Task WriteAsync(HttpContext context, int status, string field, string message, string? allowed = null)
    {
        context.Response.Clear();
        SecurityHeaders.Set(context);
        if (context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal))
        {
            Problem[] problems = [new(field, message, null, allowed)];
            return Results.Json(new { problems }, statusCode: status).ExecuteAsync(context);
        }

        string text = allowed is null ? message : $"{message} Allowed: {allowed}.";
        return Results.Text(text, "text/plain; charset=utf-8", statusCode: status).ExecuteAsync(context);
    }
}
