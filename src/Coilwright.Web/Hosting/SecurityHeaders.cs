using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Hosting;

/// <summary>Every answer says that only our own files may run, be framed or be loaded.</summary>
public sealed class SecurityHeaders(RequestDelegate next)
{
    private const string Policy =
        "default-src 'self'; img-src 'self' data:; object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    public Task InvokeAsync(HttpContext context)
    {
        Set(context);
        return next(context);
    }

    /// <summary>Puts the headers on an answer.</summary>
    internal static void Set(HttpContext context)
    {
        IHeaderDictionary headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        if (!context.Request.Path.StartsWithSegments("/built", StringComparison.Ordinal))
        {
            headers.CacheControl = "no-store";
        }
    }
}
