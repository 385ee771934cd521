using Coilwright.Application.Composition;
using Coilwright.Application.Forecasts;
using Coilwright.Web.Forms;
using Coilwright.Web.Hosting;
using Coilwright.Web.Pages;
using Coilwright.Web.Views;
using Coilwright.Web.Views.Recipes;
using Coilwright.Workshop.Entry;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>What a recipe's form is answered with before anything is saved.</summary>
internal static class RecipeForecastEndpoints
{
    public static void MapRecipeForecasts(this IEndpointRouteBuilder app)
    {
        app.MapPost("/recipes/{id:guid}/preview", PreviewAsync).WithMetadata(new ChangesNothing());
        app.MapPost("/recipes/{id:guid}/parts", PartsAsync).WithMetadata(new ChangesNothing());
        app.MapPost("/recipes/{id:guid}/forecast", ForecastAsync).WithMetadata(new ChangesNothing());
        app.MapPost("/recipes/{id:guid}/response.csv", ResponseAsync).WithMetadata(new ChangesNothing());
        app.MapPost(
                "/recipes/{id:guid}/sensitivity",
                async (Guid id, HttpRequest request, ShopServices shop, ForecastRecipe forecast, CancellationToken cancel) =>
                    await PostedRecipe.ReadAsync(id, request, shop, cancel) is { } posted
                        ? Answers.Page<SensitivityPage>(new() { ["Recipe"] = posted.Base, ["View"] = ChangesOf(posted, forecast, cancel) })
                        : Answers.NotFoundPage()
            )
            .WithMetadata(new ChangesNothing());
        app.MapPost(
                "/recipes/{id:guid}/sensitivity/panel",
                async (Guid id, HttpRequest request, ShopServices shop, ForecastRecipe forecast, CancellationToken cancel) =>
                    await PostedRecipe.ReadAsync(id, request, shop, cancel) is { } posted
                        ? (IResult)Answers.Page<SensitivityPanel>(new() { ["View"] = ChangesOf(posted, forecast, cancel) })
                        : Results.NotFound()
            )
            .WithMetadata(new ChangesNothing());
    }

    private static async Task<IResult> PreviewAsync(
        Guid id,
        HttpRequest request,
        string? view,
        ShopServices shop,
        ShowRecipe show,
        CancellationToken cancel
    ) =>
        await PostedRecipe.ReadAsync(id, request, shop, cancel) is { } posted
            ? RecipePages.Of(show, posted, RecipeView.Of(view), [])
            : Answers.NotFoundPage();

    /// <summary>The form with a part more or less: a draft, like everything that is typed into it.</summary>
    private static async Task<IResult> PartsAsync(
        Guid id,
        HttpRequest request,
        string? view,
        ShopServices shop,
        ShowRecipe show,
        CancellationToken cancel
    )
    {
        if (await PostedRecipe.ReadAsync(id, request, shop, cancel) is not { } posted)
        {
            return Answers.NotFoundPage();
        }

        (string json, IReadOnlyList<Problem> problems) = PartsForm.Change(posted.Json, posted.Form);
        return RecipePages.Of(show, posted with { Json = json }, RecipeView.Of(view), problems, partsMade: true);
    }

    /// <summary>The parts of the page that the form moves: the five answers, the drawing and the view in sight.</summary>
    private static async Task<IResult> ForecastAsync(
        Guid id,
        HttpRequest request,
        string? view,
        string? settled,
        string? whole,
        ShopServices shop,
        ShowRecipe show,
        CancellationToken cancel
    )
    {
        if (await PostedRecipe.ReadAsync(id, request, shop, cancel) is not { } posted)
        {
            return Results.NotFound();
        }

        RecipeView shown = RecipeView.Of(view);
        return Answers.Page<RecipeLiveParts>(
            new()
            {
                ["View"] = show.View(posted.Base, posted.Revisions, posted.Parts, (posted.Json, posted.Load), shown, settled is not null),
                ["Recipe"] = posted.Base,
                ["Revisions"] = posted.Revisions,
                ["Whole"] = whole is not null || shown.IsLive,
            }
        );
    }

    private static async Task<IResult> ResponseAsync(
        Guid id,
        HttpRequest request,
        ShopServices shop,
        ShowRecipe show,
        CancellationToken cancel
    )
    {
        if (await PostedRecipe.ReadAsync(id, request, shop, cancel) is not { } posted)
        {
            return Results.NotFound();
        }

        ForecastViewModel view = show.View(
            posted.Base,
            posted.Revisions,
            posted.Parts,
            (posted.Json, posted.Load),
            RecipeView.Sound,
            settled: false
        );
        return view.Response is { } response
            ? Results.Text(response.Csv(), "text/csv; charset=utf-8")
            : Results.UnprocessableEntity(view.Problems);
    }

    private static SensitivityViewModel ChangesOf(PostedRecipe posted, ForecastRecipe forecast, CancellationToken cancel) =>
        SensitivityViewModel.Of(forecast.Changes(posted.Json, posted.Load, posted.Parts, cancel));
}
