using Coilwright.Analysis.Spread;
using Coilwright.Application.Composition;
using Coilwright.Application.Forecasts;
using Coilwright.Application.Jobs;
using Coilwright.Web.Hosting;
using Coilwright.Web.Pages;
using Coilwright.Web.Views.Forecasts;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>The spread of a run of a recipe.</summary>
internal static class SpreadEndpoints
{
    /// <summary>How long the page waits for the answer before it shows how far the work is.</summary>
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(1);

    public static void MapSpread(this IEndpointRouteBuilder app)
    {
        app.MapGet("/recipes/{id:guid}/spread", ShowAsync);
        app.MapPost("/recipes/{id:guid}/spread/stop", (Guid id, ShopServices shop, SpreadService desk, CancellationToken cancel) =>
                AgainAsync(id, shop, desk.Stop, cancel)
            )
            .WithMetadata(new ChangesNothing());
        app.MapPost("/recipes/{id:guid}/spread/again", (Guid id, ShopServices shop, SpreadService desk, CancellationToken cancel) =>
                AgainAsync(id, shop, desk.Forget, cancel)
            )
            .WithMetadata(new ChangesNothing());
    }

    private static async Task<IResult> ShowAsync(Guid id, ShopServices shop, SpreadService desk, CancellationToken cancel)
    {
        if (await NewestRevision.OfAsync(id, shop, cancel) is not { } found)
        {
            return Answers.NotFoundPage();
        }

        BackgroundJob<RunSpread?> job = desk.Ask(found.Recipe);
        Dictionary<string, object?> shown = new() { ["Recipe"] = found.Record };
        if (await Task.WhenAny(job.Answer, Task.Delay(s_patience, cancel)) == job.Answer)
        {
            shown["View"] = await job.Answer is { } run ? new SpreadView(run) : null;
        }
        else
        {
            shown["UnderWay"] = job.Progress(shop.Time.GetUtcNow());
        }

        return Answers.Page<SpreadPage>(shown);
    }

    /// <summary>Stops the work or begins it anew, and goes back to its page.</summary>
    private static async Task<IResult> AgainAsync(Guid id, ShopServices shop, Action<Recipe> act, CancellationToken cancel)
    {
        if (await NewestRevision.OfAsync(id, shop, cancel) is not { } found)
        {
            return Answers.NotFoundPage();
        }

        act(found.Recipe);
        return Results.LocalRedirect($"/recipes/{id}/spread");
    }
}
