using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Secrets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Which recipes are secret.</summary>
internal static class SecretEndpoints
{
    public static void MapSecrets(this IEndpointRouteBuilder app)
    {
        app.MapGet("/recipes/{id:guid}/secret", async (Guid id, ShopServices shop, SecretRecipeService secrets, CancellationToken cancel) =>
            await PageAsync(id, [], FormValues.Nothing, shop, secrets, cancel)
        );
        app.MapPost("/recipes/{id:guid}/secret", MarkAsync);
    }

    private static async Task<IResult> MarkAsync(
        Guid id,
        HttpRequest request,
        ShopServices shop,
        SecretRecipeService secrets,
        CancellationToken cancel
    )
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        IReadOnlyList<Problem> problems = typed["secret"] is "yes" or "no"
            ? await secrets.MarkAsync(typed.Id, id, typed["secret"] == "yes", typed["reason"], typed["person"], cancel)
            : [new Problem("secret", "say whether it is a secret", typed["secret"], "yes or no")];
        return problems.Count == 0
            ? Results.LocalRedirect($"/recipes/{id}/secret")
            : await PageAsync(id, problems, typed, shop, secrets, cancel);
    }

    private static async Task<IResult> PageAsync(
        Guid id,
        IReadOnlyList<Problem> problems,
        FormValues typed,
        ShopServices shop,
        SecretRecipeService secrets,
        CancellationToken cancel
    )
    {
        IReadOnlyList<RevisionRecord> revisions = await shop.Records.Recipes.RevisionsAsync(id, cancel);
        return revisions.MaxBy(one => one.Number) is { } newest
            ? Answers.Page<SecretPage>(
                new()
                {
                    ["Recipe"] = newest,
                    ["IsSecret"] = (await secrets.RecipesAsync(cancel)).Contains(id),
                    ["Problems"] = problems,
                    ["Typed"] = typed,
                },
                Answers.StatusOf(problems)
            )
            : Answers.NotFoundPage();
    }
}
