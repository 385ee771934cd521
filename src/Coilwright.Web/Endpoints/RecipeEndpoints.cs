using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Web.Views.Recipes;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Recipes: list, one recipe with its forecast, saving and release.</summary>
internal static class RecipeEndpoints
{
    public static void MapRecipes(this IEndpointRouteBuilder app)
    {
        app.MapGet("/recipes", async (ShopServices shop, CancellationToken cancel) => await ListAsync(shop, cancel));
        app.MapPost("/recipes", BringInAsync);
        app.MapGet("/recipes/{id:guid}", ShowAsync);
        app.MapPost("/recipes/{id:guid}", SaveAsync);
        app.MapPost("/recipes/{id:guid}/release", ReleaseAsync);
        app.MapRecipeForecasts();
    }

    private static async Task<IResult> ListAsync(ShopServices shop, CancellationToken cancel)
    {
        IReadOnlyList<RevisionRecord> listed = await shop.Recipes.ListAsync(cancel);
        return Answers.Page<RecipesPage>(new() { ["Recipes"] = listed, ["Unreadable"] = await RecipeService.UnreadableAsync(listed) });
    }

    private static async Task<IResult> BringInAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        string json = form["json"].ToString(),
            person = form["person"].ToString();
        if (RecipeReader.ReadFile(json) is { Ok: false } wrong)
        {
            return FileEndpoints.Refused(wrong.Problems, json, person);
        }

        Guid id = Guid.NewGuid();
        RecipeOutcome outcome = await shop.Recipes.SaveAsync(id, json, "", person, 0, cancel);
        return outcome.Problems.Count == 0
            ? Results.LocalRedirect($"/recipes/{id}")
            : FileEndpoints.Refused(outcome.Problems, json, person);
    }

    private static async Task<IResult> ShowAsync(
        Guid id,
        [AsParameters] Asked asked,
        ShopServices shop,
        ShowRecipe show,
        CancellationToken cancel
    )
    {
        IReadOnlyList<RevisionRecord> revisions = await shop.Records.Recipes.RevisionsAsync(id, cancel);
        RevisionRecord? recipe = revisions.FirstOrDefault(one => one.Number == (asked.Revision ?? revisions.Max(each => each.Number)));
        bool asSaved = asked.Revision is not null && asked.Draft is null;
        return recipe is null
            ? (IResult)Answers.NotFoundPage()
            : RecipePages.Of(
                show,
                recipe,
                (revisions, await shop.Recipes.KnownPartsAsync(cancel)),
                RecipeView.Of(asked.View),
                (asked.Saved is not null, asSaved)
            );
    }

    private static async Task<IResult> SaveAsync(Guid id, HttpRequest request, ShopServices shop, ShowRecipe show, CancellationToken cancel)
    {
        if (await PostedRecipe.ReadAsync(id, request, shop, cancel) is not { } posted)
        {
            return Answers.NotFoundPage();
        }

        RecipeOutcome outcome = await shop.Recipes.SaveAsync(
            id,
            posted.Json,
            posted.Form["reason"].ToString(),
            posted.Form["person"].ToString(),
            posted.Base.Number,
            cancel,
            FormValue.Time(posted.Form["baseTime"].ToString())
        );
        return outcome.Problems.Count == 0
            ? Results.LocalRedirect($"/recipes/{id}?saved=yes")
            : RecipePages.Of(show, posted, RecipeView.Sound, outcome.Problems);
    }

    private static async Task<IResult> ReleaseAsync(
        Guid id,
        HttpRequest request,
        ShopServices shop,
        ShowRecipe show,
        CancellationToken cancel
    )
    {
        if (await PostedRecipe.ReadAsync(id, request, shop, cancel, "number") is not { } posted)
        {
            return Answers.NotFoundPage();
        }

        RecipeOutcome outcome = await shop.Recipes.ReleaseAsync(id, posted.Base.Number, posted.Form["person"].ToString(), cancel);
        return outcome.Problems.Count == 0
            ? Results.LocalRedirect($"/recipes/{id}?saved=yes")
            : RecipePages.Of(show, posted, RecipeView.Sound, outcome.Problems);
    }

    /// <summary>What the address of a recipe's page asks for.</summary>
    /// <param name="Revision">A revision of its own; the newest unless said.</param>
    /// <param name="Saved">Whether it has just been saved.</param>
    /// <param name="Draft">Whether the draft of this tablet is shown on an older revision.</param>
    /// <param name="View">The view in sight.</param>
    private sealed record Asked(int? Revision, string? Saved, string? Draft, string? View);
}
