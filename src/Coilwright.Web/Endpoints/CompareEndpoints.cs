using Coilwright.Application.Comparisons;
using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Web.Hosting;
using Coilwright.Web.Pages;
using Coilwright.Web.Views.Comparisons;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Designs, loads and measured curves side by side.</summary>
internal static class CompareEndpoints
{
    public static void MapCompare(this IEndpointRouteBuilder app)
    {
        app.MapGet("/compare", ShowAsync);
        app.MapPost("/compare", async (HttpRequest request, ShopServices shop, CompareRecipes compare, CancellationToken cancel) =>
                await PageAsync(CompareForm.Read(await request.ReadFormAsync(cancel)), shop, compare, cancel)
            )
            .WithMetadata(new ChangesNothing());
        app.MapPost("/compare/panel", async (HttpRequest request, ShopServices shop, CompareRecipes compare, CancellationToken cancel) =>
                Answers.Page<ComparePanel>(new() { ["View"] = await ViewAsync(request, shop, compare, cancel) })
            )
            .WithMetadata(new ChangesNothing());
        app.MapPost(
                "/compare/curves.csv",
                async (HttpRequest request, ShopServices shop, CompareRecipes compare, CancellationToken cancel) =>
                    await ViewAsync(request, shop, compare, cancel) is { Response: { } response }
                        ? Results.Text(response.Csv(), "text/csv; charset=utf-8")
                        : Results.UnprocessableEntity()
            )
            .WithMetadata(new ChangesNothing());
        app.MapPost(
                "/compare/curves.svg",
                async (HttpRequest request, ShopServices shop, CompareRecipes compare, CancellationToken cancel) =>
                    await ViewAsync(request, shop, compare, cancel) is { Svg.Length: > 0 } view
                        ? Results.File(System.Text.Encoding.UTF8.GetBytes(view.Svg), "image/svg+xml", "responses.svg")
                        : Results.UnprocessableEntity()
            )
            .WithMetadata(new ChangesNothing());
    }

    private static async Task<IResult> ShowAsync(ShopServices shop, CompareRecipes compare, CancellationToken cancel)
    {
        IReadOnlyList<RevisionRecord> recipes = await shop.Recipes.ListAsync(cancel);
        return await PageAsync(CompareForm.First([.. recipes.Select(recipe => recipe.RecipeId)]), shop, compare, cancel);
    }

    private static async Task<IResult> PageAsync(CompareForm form, ShopServices shop, CompareRecipes compare, CancellationToken cancel)
    {
        IReadOnlyList<RevisionRecord> recipes = await shop.Recipes.ListAsync(cancel);
        return Answers.Page<ComparePage>(
            new()
            {
                ["Form"] = form,
                ["Recipes"] = recipes,
                ["View"] = Compared(form, compare, recipes, await shop.Recipes.KnownPartsAsync(cancel)),
            }
        );
    }

    private static async Task<CompareViewModel> ViewAsync(
        HttpRequest request,
        ShopServices shop,
        CompareRecipes compare,
        CancellationToken cancel
    )
    {
        CompareForm form = CompareForm.Read(await request.ReadFormAsync(cancel));
        return Compared(form, compare, await shop.Recipes.ListAsync(cancel), await shop.Recipes.KnownPartsAsync(cancel));
    }

    private static CompareViewModel Compared(
        CompareForm form,
        CompareRecipes compare,
        IReadOnlyList<RevisionRecord> recipes,
        KnownParts parts
    ) => ComparisonView.Of(compare.Compare(form.Question, recipes, parts)) with { Listen = form.Listen };
}
