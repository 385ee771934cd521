using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Hosting;

/// <summary>
/// Refuses a change that another site's page asks for. The browser itself says where a request comes from
/// (Sec-Fetch-Site, Origin). A token in the form would do the same, but its key dies with the server: a form that
/// stood open on the tablet while the server was restarted would then be refused, and what was typed be lost.
/// </summary>
public sealed class SameOrigin(RequestDelegate next)
{
    public Task InvokeAsync(HttpContext context)
    {
        HttpRequest request = context.Request;
        bool changes = !HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method);
        if (!changes || IsOurs(request))
        {
            return next(context);
        }

        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        return context.Response.WriteAsync("Refused: this change was asked for by a page of another site.");
    }

    /// <summary>True when the browser vouches for the request, or when no browser sent it: scripts and curl send neither header.</summary>
    private static bool IsOurs(HttpRequest request)
    {
        string site = request.Headers["Sec-Fetch-Site"].ToString();
        if (site.Length > 0 && site is not ("same-origin" or "none"))
        {
            return false;
        }

        string origin = request.Headers.Origin.ToString();
        return origin.Length == 0
            || (
                Uri.TryCreate(origin, UriKind.Absolute, out Uri? from)
                && string.Equals(from.Authority, request.Host.Value, StringComparison.OrdinalIgnoreCase)
            );
    }
}
