using System.Security.Cryptography;
using System.Text;
using Coilwright.Application.Composition;
using Coilwright.Application.Winding;
using Coilwright.Papers.SetUp;
using Coilwright.Web.Hosting.Access;
using Coilwright.Workshop;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Machines;
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
        $"default-src 'none'; img-src data:; style-src "
        + $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(SetUpSheetStyle.Css)))}'; base-uri "
        + $"'none'; frame-ancestors 'none'";

    public static void MapSetUp(this IEndpointRouteBuilder app)
    {
        foreach (string end in (string[])["", ".pdf"])
        {
            app.MapGet("/recipes/{id:guid}/setup" + end, OfRecipeAsync);
            app.MapGet("/batches/{id:guid}/setup" + end, OfBatchAsync);
        }
    }

    /// <summary>The sheet of a batch: its winder, or another one on which it is wound.</summary>
    private static async Task<IResult> OfBatchAsync(
        Guid id,
        string? machine,
        string? size,
        HttpResponse response,
        ShopServices shop,
        CancellationToken cancel
    )
    {
        if (await shop.SetUps.FindAsync(id, machine, null, cancel) is not { } set)
        {
            return Answers.NotFoundPage();
        }

        WindingSetUp setUp = set.SetUp with { OnlyWhatIsSet = HiddenRecipes.IsHidden(response.HttpContext, set.Run.Status.Batch.RecipeId) };
        if (IsPdf(response))
        {
            return PiecePaperEndpoints.Pdf(SetUpSheet.Of(setUp), size);
        }

        string query = machine is null ? "" : "?machine=" + Uri.EscapeDataString(machine);
        return Sheet(
            setUp,
            [
                ($"/batches/{id}", $"Batch {set.Run.Status.Batch.Name}"),
                ($"/batches/{id}/wind{query}", "At the winder"),
                ($"/batches/{id}/enter", "Enter coils"),
                ($"/batches/{id}/setup.pdf{query}", "As PDF"),
                ("/", "Today"),
            ],
            response
        );
    }

    /// <summary>The sheet of a recipe, on one of the shop's winders where one is chosen.</summary>
    private static async Task<IResult> OfRecipeAsync(
        Guid id,
        int? revision,
        string? machine,
        string? size,
        HttpResponse response,
        ShopServices shop,
        SetUpRecipe sets,
        CancellationToken cancel
    )
    {
        IReadOnlyList<RevisionRecord> revisions = await shop.Records.Recipes.RevisionsAsync(id, cancel);
        RevisionRecord? found = revision is null
            ? revisions.MaxBy(one => one.Number)
            : revisions.FirstOrDefault(one => one.Number == revision);
        ReadOutcome<Recipe>? recipe = found is null ? null : RecipeReader.Read(found.Json);
        if (found is null || recipe?.Value is null)
        {
            return Answers.NotFoundPage();
        }

        RoomTemperature? room = await RoomInForce.AtAsync(shop.Records, shop.Time.GetUtcNow(), cancel);
        IReadOnlyList<Machine> winders = await shop.Machines.ListAsync(cancel);
        Machine? on = winders.FirstOrDefault(one => string.Equals(one.Name, machine?.Trim(), StringComparison.OrdinalIgnoreCase));
        WindingSetUp setUp = sets.SetUp(
            recipe.Value,
            await shop.Recipes.KnownPartsAsync(cancel),
            roomC: room?.TemperatureC ?? WindingSetUp.UsualRoomC,
            on: on,
            cancel: cancel
        ) with
        {
            Heading = new SheetHeading(
                await shop.Records.ShopNameAsync(cancel),
                found.Letter + (found.State == RevisionState.Released ? "" : " (draft)"),
                DateOnly.FromDateTime(shop.Time.GetLocalNow().DateTime)
            ),
        };
        if (IsPdf(response))
        {
            return PiecePaperEndpoints.Pdf(SetUpSheet.Of(setUp), size);
        }

        string here = $"/recipes/{id}/setup?revision={found.Number}",
            chosen = on is null ? "" : "&machine=" + Uri.EscapeDataString(on.Name);
        return Sheet(
            setUp,
            [
                ($"/recipes/{id}?revision={found.Number}", $"{found.RecipeName}, revision {found.Letter}"),
                (here, "For no winder"),
                .. winders.Select(one => ($"{here}&machine={Uri.EscapeDataString(one.Name)}", $"For {one.Name}")),
                ($"/recipes/{id}/setup.pdf?revision={found.Number}{chosen}", "As PDF"),
            ],
            response
        );
    }

    private static bool IsPdf(HttpResponse response) => response.HttpContext.Request.Path.Value!.EndsWith(".pdf", StringComparison.Ordinal);

    private static IResult Sheet(WindingSetUp setUp, IReadOnlyList<(string Address, string Name)> ways, HttpResponse response)
    {
        response.Headers.ContentSecurityPolicy = s_policy;
        return Results.Text(SetUpSheetHtmlWriter.Render(setUp, ways), "text/html; charset=utf-8");
    }
}
