using Coilwright.Web.Hosting;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Tests;

/// <summary>A page of another site cannot change anything; the shop's own pages, scripts and command lines can.</summary>
public sealed class SameOriginTests
{
    [Theory]
    [InlineData("POST", null, null, true)]
    [InlineData("POST", "same-origin", "http://127.0.0.1:5210", true)]
    [InlineData("POST", null, "http://127.0.0.1:5210", true)]
    [InlineData("POST", "cross-site", "http://evil.example", false)]
    [InlineData("POST", "same-site", null, false)]
    [InlineData("POST", null, "http://127.0.0.1:9999", false)]
    [InlineData("POST", null, "null", false)]
    [InlineData("DELETE", "cross-site", null, false)]
    [InlineData("GET", "cross-site", null, true)]
    public async Task Only_our_own_pages_change_records(string method, string? site, string? origin, bool allowed)
    {
        bool reached = false;
        SameOrigin gate = new(_ =>
        {
            reached = true;
            return Task.CompletedTask;
        });
        DefaultHttpContext context = new();
        context.Request.Method = method;
        context.Request.Host = new HostString("127.0.0.1", 5210);
        context.Request.Headers["Sec-Fetch-Site"] = site;
        context.Request.Headers.Origin = origin;
        await gate.InvokeAsync(context);
        Assert.Equal(allowed, reached);
        Assert.Equal(allowed ? StatusCodes.Status200OK : StatusCodes.Status403Forbidden, context.Response.StatusCode);
    }
}
