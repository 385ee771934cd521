using System.Text.Json.Nodes;
using Coilwright.Application.Composition;
using Coilwright.Application.Forecasts;
using Coilwright.Web.Forms;
using Coilwright.Web.Hosting;
using Coilwright.Web.Pages;
using Coilwright.Web.Views;
using Coilwright.Web.Views.Forecasts;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
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
        app.MapPost("/recipes/{id:guid}/preview", PreviewAsync).WithMetadata(new ChangesNothing());
        app.MapPost("/recipes/{id:guid}/forecast", ForecastAsync).WithMetadata(new ChangesNothing());
        app.MapPost(
                "/recipes/{id:guid}/sensitivity",
                async (Guid id, HttpRequest request, ShopServices shop, ForecastRecipe forecast, CancellationToken cancel) =>
                    await SensitivityAsync(id, request, shop, forecast, cancel) is { } asked
                        ? Answers.Page<SensitivityPage>(new() { ["Recipe"] = asked.Base, ["View"] = asked.View })
                        : Answers.NotFoundPage()
            )
            .WithMetadata(new ChangesNothing());
        app.MapPost(
                "/recipes/{id:guid}/sensitivity/panel",
                async (Guid id, HttpRequest request, ShopServices shop, ForecastRecipe forecast, CancellationToken cancel) =>
                    await SensitivityAsync(id, request, shop, forecast, cancel) is { } asked
                        ? (IResult)Answers.Page<SensitivityPanel>(new() { ["View"] = asked.View })
                        : Results.NotFound()
            )
            .WithMetadata(new ChangesNothing());
        app.MapPost("/recipes/{id:guid}/response.csv", ResponseAsync).WithMetadata(new ChangesNothing());
        app.MapPost("/recipes/{id:guid}/release", ReleaseAsync);
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
        int? revision,
        string? saved,
        string? draft,
        ShopServices shop,
        ForecastRecipe forecast,
        CancellationToken cancel
    )
    {
        IReadOnlyList<RevisionRecord> revisions = await shop.Records.Recipes.RevisionsAsync(id, cancel);
        RevisionRecord? recipe = revisions.FirstOrDefault(one => one.Number == (revision ?? revisions.Max(each => each.Number)));
        bool asSaved = revision is not null && draft is null;
        return recipe is null
            ? (IResult)Answers.NotFoundPage()
            : Page(
                forecast,
                recipe,
                revisions,
                await shop.Recipes.FillLimitsAsync(cancel),
                recipe.Json,
                LoadForm.Default(),
                [],
                null,
                saved is not null,
                asSaved
            );
    }

    private static async Task<IResult> SaveAsync(
        Guid id,
        HttpRequest request,
        ShopServices shop,
        ForecastRecipe forecast,
        CancellationToken cancel
    )
    {
        if (await PostedAsync(id, request, shop, cancel) is not { } posted)
        {
            return Answers.NotFoundPage();
        }

        string json = RecipeForm.Apply(posted.Base.Json, posted.Form);
        RecipeOutcome outcome = await shop.Recipes.SaveAsync(
            id,
            json,
            posted.Form["reason"].ToString(),
            posted.Form["person"].ToString(),
            posted.Base.Number,
            cancel,
            FormValue.Time(posted.Form["baseTime"].ToString())
        );
        return outcome.Problems.Count == 0
            ? Results.LocalRedirect($"/recipes/{id}?saved=yes")
            : Page(
                forecast,
                posted.Base,
                posted.Revisions,
                posted.Limits,
                json,
                LoadForm.Read(posted.Form),
                outcome.Problems,
                posted.Form,
                false
            );
    }

    private static async Task<IResult> PreviewAsync(
        Guid id,
        HttpRequest request,
        ShopServices shop,
        ForecastRecipe forecast,
        CancellationToken cancel
    ) =>
        await PostedAsync(id, request, shop, cancel) is { } posted
            ? Page(
                forecast,
                posted.Base,
                posted.Revisions,
                posted.Limits,
                RecipeForm.Apply(posted.Base.Json, posted.Form),
                LoadForm.Read(posted.Form),
                [],
                posted.Form,
                false
            )
            : Answers.NotFoundPage();

    private static async Task<IResult> ForecastAsync(
        Guid id,
        HttpRequest request,
        ShopServices shop,
        ForecastRecipe forecast,
        CancellationToken cancel
    )
    {
        if (await PostedAsync(id, request, shop, cancel) is not { } posted)
        {
            return Results.NotFound();
        }

        ForecastViewModel view = ViewOf(posted, forecast);
        return Answers.Page<ForecastPanel>(new() { ["View"] = view, ["Action"] = $"/recipes/{id}" });
    }

    private static async Task<(RevisionRecord Base, SensitivityViewModel View)?> SensitivityAsync(
        Guid id,
        HttpRequest request,
        ShopServices shop,
        ForecastRecipe forecast,
        CancellationToken cancel
    ) =>
        await PostedAsync(id, request, shop, cancel) is { } posted
            ? (
                posted.Base,
                SensitivityViewModel.Of(
                    forecast.Changes(
                        RecipeForm.Apply(posted.Base.Json, posted.Form),
                        LoadForm.Read(posted.Form).ToJsonString(),
                        posted.Limits,
                        cancel
                    )
                )
            )
            : null;

    private static async Task<IResult> ResponseAsync(
        Guid id,
        HttpRequest request,
        ShopServices shop,
        ForecastRecipe forecast,
        CancellationToken cancel
    )
    {
        if (await PostedAsync(id, request, shop, cancel) is not { } posted)
        {
            return Results.NotFound();
        }

        ForecastViewModel view = ViewOf(posted, forecast);
        return view.Response is { } response
            ? Results.Text(response.Csv(), "text/csv; charset=utf-8")
            : Results.UnprocessableEntity(view.Problems);
    }

    private static async Task<IResult> ReleaseAsync(
        Guid id,
        HttpRequest request,
        ShopServices shop,
        ForecastRecipe forecast,
        CancellationToken cancel
    )
    {
        if (await PostedAsync(id, request, shop, cancel, "number") is not { } posted)
        {
            return Answers.NotFoundPage();
        }

        RecipeOutcome outcome = await shop.Recipes.ReleaseAsync(id, posted.Base.Number, posted.Form["person"].ToString(), cancel);
        return outcome.Problems.Count == 0
            ? Results.LocalRedirect($"/recipes/{id}?saved=yes")
            : Page(
                forecast,
                posted.Base,
                posted.Revisions,
                posted.Limits,
                posted.Base.Json,
                LoadForm.Default(),
                outcome.Problems,
                null,
                false
            );
    }

    private static ForecastViewModel ViewOf(Posted posted, ForecastRecipe forecast) =>
        ForecastView.Of(
            forecast.Forecast(RecipeForm.Apply(posted.Base.Json, posted.Form), LoadForm.Read(posted.Form).ToJsonString(), posted.Limits)
        );

    private sealed record Posted(RevisionRecord Base, IReadOnlyList<RevisionRecord> Revisions, FillLimits Limits, IFormCollection Form);

    /// <summary>The form and the revision it was filled in on; null when there is no such revision.</summary>
    private static async Task<Posted?> PostedAsync(
        Guid id,
        HttpRequest request,
        ShopServices shop,
        CancellationToken cancel,
        string field = "base"
    )
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        IReadOnlyList<RevisionRecord> revisions = await shop.Records.Recipes.RevisionsAsync(id, cancel);
        RevisionRecord? found = revisions.FirstOrDefault(one =>
            one.Number.ToString(System.Globalization.CultureInfo.InvariantCulture) == form[field].ToString()
        );
        return found is null ? null : new Posted(found, revisions, await shop.Recipes.FillLimitsAsync(cancel), form);
    }

    private static RazorComponentResult Page(
        ForecastRecipe forecast,
        RevisionRecord recipe,
        IReadOnlyList<RevisionRecord> revisions,
        FillLimits limits,
        string json,
        JsonNode load,
        IReadOnlyList<Problem> problems,
        IFormCollection? form,
        bool saved,
        bool asSaved = false
    ) =>
        Answers.Page<RecipePage>(
            new()
            {
                ["Recipe"] = recipe,
                ["Revisions"] = revisions,
                ["Document"] = JsonNode.Parse(json),
                ["Load"] = load,
                ["View"] = ForecastView.Of(forecast.Forecast(json, load.ToJsonString(), limits)),
                ["Problems"] = problems,
                ["Saved"] = saved,
                ["AsSaved"] = asSaved,
                ["Reason"] = form?["reason"].ToString() ?? "",
                ["Person"] = form?["person"].ToString() ?? "",
            },
            problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity
        );
}
