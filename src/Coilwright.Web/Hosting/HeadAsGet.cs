using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Hosting;

/// <summary>Answers HEAD wherever GET is answered: the same headers; the server itself leaves the body away.</summary>
public sealed class HeadAsGet(RequestDelegate next)
{
    public Task InvokeAsync(HttpContext context)
    {
        if (HttpMethods.IsHead(context.Request.Method))
        {
            context.Request.Method = HttpMethods.Get;
        }

        return next(context);
    }
}
