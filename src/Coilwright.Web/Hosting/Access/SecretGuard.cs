using Coilwright.Application.Composition;
using Coilwright.Web.Endpoints;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.People;
using Coilwright.Workshop.Secrets;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Hosting.Access;

/// <summary>Keeps secret recipes from those who have no right to them.</summary>
public sealed class SecretGuard(RequestDelegate next)
{
    public async Task InvokeAsync(HttpContext context, SecretRecipeService secrets, ShopServices shop, IPeopleRecords people)
    {
        if (
            context.SignedIn() is not { } person
            || person.May(Right.Secrets)
            || await secrets.RecipesAsync(context.RequestAborted) is not { Count: > 0 } hidden
        )
        {
            await next(context);
            return;
        }

        string pattern = (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "";
        IReadOnlySet<Guid> batches = pattern == "/" ? await BatchesAsync(hidden, shop, context.RequestAborted) : new HashSet<Guid>();
        context.Features.Set(new HiddenRecipes(hidden, batches));
        if (SecretRoutes.IsChart(pattern))
        {
            bool isNamed = Guid.TryParse(context.Request.Query["recipe"], out Guid charted);
            await (
                isNamed && !hidden.Contains(charted) && !await IsOfHiddenAsync(context, shop, hidden) ? next(context) : RefuseAsync(context)
            );
            return;
        }

        if (SecretRoutes.IsPaper(pattern))
        {
            await (await IsOpenPaperAsync(context, shop, hidden) ? next(context) : RefuseAsync(context));
            return;
        }

        BatchRecord? batch = SecretRoutes.IsBatch(pattern)
            ? await shop.Records.Batches.FindAsync(IdOf(context), context.RequestAborted)
            : null;
        bool isHidden = SecretRoutes.IsRecipe(pattern)
            ? hidden.Contains(IdOf(context))
            : batch is not null && hidden.Contains(batch.RecipeId);
        if (!isHidden)
        {
            await next(context);
        }
        else if (batch is not null && SecretRoutes.IsWork(pattern))
        {
            await next(context);
        }
        else if (batch is not null && SecretRoutes.IsWinder(pattern) && await RunsAsync(batch, shop, context.RequestAborted))
        {
            await people.AddEventAsync(Look(batch, person, shop.Time.GetUtcNow(), context.Request.Path), context.RequestAborted);
            await next(context);
        }
        else
        {
            await RefuseAsync(context);
        }
    }

    /// <summary>A chart may also be narrowed to a batch: one of a secret recipe is refused, whatever recipe is named beside it.</summary>
    private static async Task<bool> IsOfHiddenAsync(HttpContext context, ShopServices shop, IReadOnlySet<Guid> hidden) =>
        Guid.TryParse(context.Request.Query["batch"], out Guid id)
        && await shop.Records.Batches.FindAsync(id, context.RequestAborted) is { } batch
        && hidden.Contains(batch.RecipeId);

    private static async Task<bool> IsOpenPaperAsync(HttpContext context, ShopServices shop, IReadOnlySet<Guid> hidden)
    {
        string serial = context.Request.RouteValues["serial"]?.ToString() ?? "",
            paper = context.Request.RouteValues["paper"]?.ToString() ?? "";
        return SecretRoutes.IsOpenPaper(paper)
            || await shop.Pieces.Shelf.FindAsync(serial, context.RequestAborted) is not { } life
            || !hidden.Contains(life.Piece.RecipeId);
    }

    private static async Task<IReadOnlySet<Guid>> BatchesAsync(IReadOnlySet<Guid> hidden, ShopServices shop, CancellationToken cancel) =>
        (await shop.Records.Batches.AllAsync(cancel)).Where(batch => hidden.Contains(batch.RecipeId)).Select(batch => batch.Id).ToHashSet();

    private static async Task<bool> RunsAsync(BatchRecord batch, ShopServices shop, CancellationToken cancel) =>
        await shop.Winding.StatusAsync(batch.Id, cancel) is { State: BatchState.UnderWay };

    private static Guid IdOf(HttpContext context) =>
        Guid.TryParse(context.Request.RouteValues["id"]?.ToString(), out Guid id) ? id : Guid.Empty;

    private static AccountEventRecord Look(BatchRecord batch, SignedIn person, DateTimeOffset now, string address) =>
        new()
        {
            Id = Guid.NewGuid(),
            Act = AccountAct.SecretSeen,
            About = "batch " + batch.Name,
            Detail = address.Contains("/setup", StringComparison.Ordinal) ? "on the sheet" : "at the winder",
            Person = person.Name,
            TimeUtc = now,
        };

    private static Task RefuseAsync(HttpContext context)
    {
        const string Words = "This is about a recipe that the shop keeps secret. An engineer or an owner can open it.";
        return context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal)
            ? Refusal.WriteAsync(context, StatusCodes.Status403Forbidden, "recipe", Words)
            : (
                (IResult)
                    Answers.Page<MessagePage>(new() { ["Title"] = "A secret recipe", ["Text"] = Words }, StatusCodes.Status403Forbidden)
            ).ExecuteAsync(context);
    }
}
