using Coilwright.Application.Composition;
using Coilwright.Application.Solving;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Solving.Variations;
using Coilwright.Workshop.Stock;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Ready questions about a recipe: a spool that is off, and variants.</summary>
internal static class VariantEndpoints
{
    public static void MapVariants(this IEndpointRouteBuilder app)
    {
        app.MapGet(
            "/recipes/{id:guid}/hold",
            async (Guid id, string? spool, string? ohmPerM, ShopServices shop, ChooseForSpool choose, CancellationToken cancel) =>
                await HoldAsync(id, spool, ohmPerM, [], shop, choose, cancel)
        );
        app.MapPost(
            "/recipes/{id:guid}/hold",
            async (Guid id, HttpRequest request, ShopServices shop, ChooseForSpool choose, CancellationToken cancel) =>
                await KeptAsync(id, request, shop, problems => HoldAsync(id, null, null, problems, shop, choose, cancel), cancel)
        );
        app.MapGet(
            "/recipes/{id:guid}/variants",
            async (Guid id, string? ask, string? value, ShopServices shop, VaryRecipe vary, CancellationToken cancel) =>
                await VariantsAsync(id, (ask, value ?? ""), [], shop, vary, cancel)
        );
        app.MapPost(
            "/recipes/{id:guid}/variants",
            async (Guid id, HttpRequest request, ShopServices shop, VaryRecipe vary, CancellationToken cancel) =>
                await KeptAsync(id, request, shop, problems => VariantsAsync(id, (null, ""), problems, shop, vary, cancel), cancel)
        );
    }

    private static async Task<IResult> HoldAsync(
        Guid id,
        string? spool,
        string? ohmPerM,
        IReadOnlyList<Problem> problems,
        ShopServices shop,
        ChooseForSpool choose,
        CancellationToken cancel
    )
    {
        if (await NewestRevision.OfAsync(id, shop, cancel) is not { } found)
        {
            return Answers.NotFoundPage();
        }

        IReadOnlyList<SpoolStatus> shelf = await shop.Stock.ShelfAsync(cancel);
        HoldForm form = HoldForm.Of(spool, ohmPerM, shelf, found.Recipe);
        form = form with { Problems = [.. problems, .. form.Problems] };
        Workshop.Solving.SpoolChoice? choice = form.Read is { } read
            ? choose.Choose(found.Recipe, read, NewestRevision.Load(), cancel)
            : null;
        return Answers.Page<HoldPage>(
            new()
            {
                ["Recipe"] = found.Record,
                ["Form"] = form,
                ["Shelf"] = shelf,
                ["Choice"] = choice,
            },
            StatusOf(form.Problems)
        );
    }

    private static async Task<IResult> VariantsAsync(
        Guid id,
        (string? Ask, string Value) asked,
        IReadOnlyList<Problem> earlier,
        ShopServices shop,
        VaryRecipe vary,
        CancellationToken cancel
    )
    {
        if (await NewestRevision.OfAsync(id, shop, cancel) is not { } found)
        {
            return Answers.NotFoundPage();
        }

        ReadOutcome<Variation>? outcome = asked.Ask is { } ask
            ? vary.Vary(found.Recipe, ask, asked.Value, NewestRevision.Load(), cancel)
            : null;
        Problem[] problems = [.. earlier, .. outcome?.Problems ?? []];
        VariationQuestion? question = VariationQuestion.Find(asked.Ask ?? "");
        string typed = string.IsNullOrWhiteSpace(asked.Value) ? question?.Usual ?? "" : asked.Value.Trim();
        return Answers.Page<VariantsPage>(
            new()
            {
                ["Recipe"] = found.Record,
                ["Asked"] = question,
                ["Typed"] = typed,
                ["Answer"] = outcome?.Value,
                ["Problems"] = problems,
            },
            StatusOf(problems)
        );
    }

    private static async Task<IResult> KeptAsync(
        Guid id,
        HttpRequest request,
        ShopServices shop,
        Func<IReadOnlyList<Problem>, Task<IResult>> again,
        CancellationToken cancel
    )
    {
        if (await NewestRevision.OfAsync(id, shop, cancel) is not { } found)
        {
            return Answers.NotFoundPage();
        }

        (Guid kept, IReadOnlyList<Problem> problems) = await NewestRevision.KeepAsync(
            found.Record,
            await request.ReadFormAsync(cancel),
            shop,
            cancel
        );
        return problems.Count == 0 ? Results.LocalRedirect($"/recipes/{kept}?saved=yes") : await again(problems);
    }

    private static int StatusOf(IReadOnlyList<Problem> problems) =>
        problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity;
}
