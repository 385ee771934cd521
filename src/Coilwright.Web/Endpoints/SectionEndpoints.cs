using Coilwright.Application.Composition;
using Coilwright.Application.Forecasts;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>
/// The coil in section, turn by turn: a picture of its own, because thousands of dots do not belong in an answer to every key.
/// </summary>
internal static class SectionEndpoints
{
    public static void MapSections(this IEndpointRouteBuilder app) =>
        app.MapGet("/recipes/{id:guid}/{number:int}/section-{coil:int}.svg", ShowAsync);

    private static async Task<IResult> ShowAsync(
        Guid id,
        int number,
        int coil,
        ShopServices shop,
        DrawSection section,
        CancellationToken cancel
    )
    {
        RevisionRecord? revision = await shop.Records.Recipes.FindRevisionAsync(id, number, cancel);
        ReadOutcome<Recipe>? recipe = revision is null ? null : RecipeReader.Read(revision.Json);
        if (recipe?.Value is null)
        {
            return Results.NotFound();
        }

        return section.Draw(recipe.Value, coil) is { } svg ? Results.Text(svg, "image/svg+xml; charset=utf-8") : Results.NotFound();
    }
}
