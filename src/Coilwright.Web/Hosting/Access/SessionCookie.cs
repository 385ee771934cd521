using Coilwright.Workshop.People;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Hosting.Access;

/// <summary>
/// The key of a session in the browser: out of reach of scripts, sent to this shop alone, over HTTPS alone where the shop is served so.
/// It is random and means nothing by itself: the session stands in the shop, so that it survives a restart and can be ended there.
/// </summary>
internal static class SessionCookie
{
    private const string Name = "coilwright-session";

    /// <summary>The key that came with a request; null for none.</summary>
    public static string? Read(HttpRequest request) => request.Cookies[Name] is { Length: > 0 and < 200 } key ? key : null;

    /// <summary>Gives the browser its key.</summary>
    public static void Give(HttpContext context, string key) => context.Response.Cookies.Append(Name, key, Options(context.Request));

    /// <summary>Takes it away.</summary>
    public static void Take(HttpContext context) => context.Response.Cookies.Delete(Name, Options(context.Request));

    private static CookieOptions Options(HttpRequest request) =>
        new()
        {
            HttpOnly = true,
            SameSite = SameSiteMode.Lax,
            Secure = request.IsHttps,
            Path = "/",
            MaxAge = SignInService.Longest,
            IsEssential = true,
        };
}
