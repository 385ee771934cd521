using System.Security.Cryptography;
using System.Text;
using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.SetUp;
using Coilwright.Physics;
using Coilwright.Workshop;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>The set-up sheet: a paper that the browser shows and prints as it is.</summary>
internal static class SetUpEndpoints
{
    /// <summary>The sheet brings its own style; its hash lets that one through and no other.</summary>
    private static readonly string s_policy =
        $"default-src 'none'; img-src data:; style-src 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(SetUpSheetStyle.Css)))}'; base-uri 'none'; frame-ancestors 'none'";

    public static void MapSetUp(this IEndpointRouteBuilder app) => app.MapGet("/recipes/{id:guid}/setup", ShowAsync);

    private static async Task<IResult> ShowAsync(Guid id, int? revision, HttpResponse response, ShopServices shop, CancellationToken cancel)
    {
        IReadOnlyList<RevisionRecord> revisions = await shop.Records.RevisionsAsync(id, cancel);
        RevisionRecord? found = revision is null ? revisions.MaxBy(one => one.Number) : revisions.FirstOrDefault(one => one.Number == revision);
        ReadOutcome<Recipe>? recipe = found is null ? null : RecipeReader.Read(found.Json);
        if (found is null || recipe?.Value is null)
        {
            return Answers.NotFoundPage();
        }

        RoomTemperature? room = await RoomInForce.AtAsync(shop.Records, shop.Time.GetUtcNow(), cancel);
        PickupModel model = RecipeModelBuilder.ToModel((await shop.Recipes.FillLimitsAsync(cancel)).Fill(recipe.Value));
        WindingSetUp setUp = WindingSetUp.For(recipe.Value, model, Forecaster.Predict(model, load: null, cancel: cancel), roomC: room?.TemperatureC ?? WindingSetUp.UsualRoomC) with
        {
            Heading = new SheetHeading(
                await shop.Records.ShopNameAsync(cancel),
                found.Letter + (found.State == RevisionState.Released ? "" : " (draft)"),
                DateOnly.FromDateTime(shop.Time.GetLocalNow().DateTime)),
        };
        response.Headers.ContentSecurityPolicy = s_policy;
        return Results.Text(SetUpSheetHtml.Render(setUp), "text/html; charset=utf-8");
    }
}
