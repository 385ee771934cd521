using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Web.Views;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Starting;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>A recipe begins: a shape or a recipe to copy is chosen, then named.</summary>
internal static class NewRecipeEndpoints
{
    public static void MapNewRecipe(this IEndpointRouteBuilder app)
    {
        app.MapGet("/recipes/new", async (string? shape, string? copy, ShapeCards cards, ShopServices shop, CancellationToken cancel) =>
            shape is null && copy is null
                ? Answers.Page<NewRecipePage>(new() { ["Cards"] = cards.All, ["Recipes"] = await shop.Recipes.ListAsync(cancel) })
                : await NameAsync(cards.Find(shape ?? ""), copy ?? "", [], FormValues.Nothing, shop, cancel)
        );
        app.MapPost("/recipes/new", BeginAsync);
    }

    private static async Task<IResult> NameAsync(
        ShapeCard? card,
        string copy,
        IReadOnlyList<Problem> problems,
        FormValues typed,
        ShopServices shop,
        CancellationToken cancel
    )
    {
        RevisionRecord? copied = card is null ? await NewestAsync(copy, shop, cancel) : null;
        return card is null && copied is null
            ? Answers.NotFoundPage()
            : Answers.Page<NameRecipePage>(
                new()
                {
                    ["Card"] = card,
                    ["Copied"] = copied,
                    ["Problems"] = problems,
                    ["Typed"] = typed,
                },
                Answers.StatusOf(problems)
            );
    }

    private static async Task<RevisionRecord?> NewestAsync(string id, ShopServices shop, CancellationToken cancel) =>
        Guid.TryParse(id, out Guid recipe) ? (await shop.Records.Recipes.RevisionsAsync(recipe, cancel)).MaxBy(one => one.Number) : null;

    private static async Task<IResult> BeginAsync(HttpRequest request, ShapeCards cards, ShopServices shop, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        NewRecipe begun = new(shop.Recipes, shop.Records.Recipes);
        RecipeOutcome outcome = Guid.TryParse(typed["copy"], out Guid copied)
            ? await begun.FromCopyAsync(typed.Id, copied, typed["name"], typed["person"], cancel)
            : await begun.FromShapeAsync(typed.Id, typed["shape"], typed["name"], typed["person"], cancel);
        return outcome.Revision is { } revision
            ? Results.LocalRedirect($"/recipes/{revision.RecipeId}?saved=yes")
            : await NameAsync(cards.Find(typed["shape"]), typed["copy"], outcome.Problems, typed, shop, cancel);
    }
}
