using Coilwright.Application.Shops;
using Coilwright.Web.Hosting;
using Coilwright.Web.Pages;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>A way into the invented shop that needs no terminal.</summary>
internal static class DemoEndpoints
{
    public static void MapDemo(this IEndpointRouteBuilder app, IDemoServer demo)
    {
        app.MapGet("/demo", () => Answers.Page<DemoPage>(new() { ["Progress"] = demo.Progress }));
        app.MapPost("/demo", Begin).WithMetadata(new ChangesNothing());

        IResult Begin()
        {
            demo.Begin();
            return Results.LocalRedirect("/demo");
        }
    }
}
