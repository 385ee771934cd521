using Coilwright.Papers.Figures;
using Coilwright.Physics;
using Coilwright.Physics.Winding;
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
    private const ulong Seed = 1;

    public static void MapSections(this IEndpointRouteBuilder app) =>
        app.MapGet("/recipes/{id:guid}/{number:int}/section-{coil:int}.svg", ShowAsync);

    private static async Task<IResult> ShowAsync(Guid id, int number, int coil, ShopServices shop, CancellationToken cancel)
    {
        RevisionRecord? revision = await shop.Records.FindRevisionAsync(id, number, cancel);
        ReadOutcome<Recipe>? recipe = revision is null ? null : RecipeReader.Read(revision.Json);
        if (recipe?.Value is null)
        {
            return Results.NotFound();
        }

        PickupModel model = RecipeModelBuilder.ToModel(recipe.Value);
        return coil >= 0 && coil < model.Coils.Count
            ? Results.Text(Draw(model.Coils[coil], CoverInSection.Of(model, coil)), "image/svg+xml; charset=utf-8")
            : Results.NotFound();
    }

    private static string Draw(CoilModel coil, CoverInSection? cover)
    {
        double overallM = coil.Wire.OverallDiameterM.Value;
        WindingModel winding = coil.Winding;
        LaySpec spec = new(
            overallM,
            coil.Bobbin.WindingHeightM,
            (int)Math.Round(winding.Turns),
            winding.PitchM ?? LayForecast.DefaultPitchM(winding.Lay, overallM),
            winding.JitterM ?? LayForecast.DefaultJitterM(winding.Lay)
        );
        return CoilSectionFigure.Svg(LaySimulation.Run(spec, Seed), coil.Bobbin, coil.Wire.BareDiameterM.Value, overallM, cover);
    }
}
