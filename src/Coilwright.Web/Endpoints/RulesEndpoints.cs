using System.Text.Json.Nodes;
using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Rules;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>The shop's own rules, by a form or as a document.</summary>
internal static class RulesEndpoints
{
    public static void MapRules(this IEndpointRouteBuilder app)
    {
        app.MapGet("/shop/rules", async (string? saved, ShopServices shop, CancellationToken cancel) =>
            await PageAsync(null, [], "", saved is not null, shop, cancel)
        );
        app.MapPost("/shop/rules/form", KeepAsync);
        app.MapPost("/shop/rules", KeepDocumentAsync);
    }

    /// <param name="typed">What stood in a form that was refused; null for the rules that hold.</param>
    /// <param name="problems">Why it was.</param>
    /// <param name="person">Who sent it.</param>
    /// <param name="saved">True right after rules were kept.</param>
    /// <param name="shop">The shop.</param>
    /// <param name="cancel">Gives up.</param>
    private static async Task<IResult> PageAsync(
        JsonNode? typed,
        IReadOnlyList<Problem> problems,
        string person,
        bool saved,
        ShopServices shop,
        CancellationToken cancel
    )
    {
        ShopRulesRecord? record = await shop.Records.Rules.NewestAsync(cancel);
        JsonNode today = record is null ? new JsonObject() : JsonNode.Parse(record.Json)!;
        return Answers.Page<RulesPage>(
            new()
            {
                ["Document"] = typed ?? today,
                ["Today"] = today,
                ["Record"] = record,
                ["Problems"] = problems,
                ["Saved"] = saved,
                ["Person"] = person,
            },
            Answers.StatusOf(problems)
        );
    }

    private static async Task<IResult> KeepAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        FormValues typed = new(form);
        JsonObject document = RulesForm.Apply(await shop.Pieces.Shelf.Rules.TextAsync(cancel), form);
        IReadOnlyList<Problem> problems = await shop.Pieces.Shelf.Rules.KeepTypedAsync(
            typed.Id,
            SettingsForm.Write(document),
            Guid.TryParse(typed["seen"], out Guid seen) ? seen : null,
            typed["person"],
            cancel
        );
        return problems.Count == 0
            ? Results.LocalRedirect("/shop/rules?saved=yes")
            : await PageAsync(document, problems, typed["person"], false, shop, cancel);
    }

    private static async Task<IResult> KeepDocumentAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        IReadOnlyList<Problem> problems = await shop.Pieces.Shelf.Rules.KeepAsync(typed.Id, typed["json"], typed["person"], cancel);
        return problems.Count == 0
            ? Results.LocalRedirect("/shop/rules?saved=yes")
            : FileEndpoints.Refused(problems, typed["json"], typed["person"]);
    }
}
