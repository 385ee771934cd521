using System.Globalization;
using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Coils become pieces.</summary>
internal static class AssemblyEndpoints
{
    public static void MapAssembly(this IEndpointRouteBuilder app)
    {
        app.MapGet("/assembly", async (Guid? recipe, string? by, ShopServices shop, CancellationToken cancel) =>
            await PageAsync(recipe, by, [], [], FormValues.Nothing, shop, cancel)
        );
        app.MapPost("/assembly", MakeAsync);
    }

    private static async Task<IResult> PageAsync(
        Guid? recipeId,
        string? by,
        List<Problem> problems,
        List<string> made,
        FormValues typed,
        ShopServices shop,
        CancellationToken cancel
    )
    {
        List<RevisionRecord> recipes = [];
        foreach (RevisionRecord newest in await shop.Records.Recipes.NewestAsync(cancel))
        {
            if (
                (await shop.Records.Recipes.RevisionsAsync(newest.RecipeId, cancel)).LastOrDefault(one =>
                    one.State == RevisionState.Released
                ) is
                { } released
            )
            {
                recipes.Add(released);
            }
        }

        string pairedBy = CoilService.PairedBy.Contains(by ?? "") ? by! : CoilService.PairedBy[0];
        RevisionRecord? chosen = recipes.FirstOrDefault(one => one.RecipeId == recipeId);
        IReadOnlyList<ProposedPiece> proposed = [];
        IReadOnlyList<CoilAtHand> left = [];
        if (chosen is not null && RecipeReader.Read(chosen.Json).Value is { } recipe)
        {
            (proposed, left) = CoilService.Propose(
                recipe,
                await shop.Pieces.Coils.AtHandAsync(chosen.RecipeId, held: false, cancel),
                pairedBy
            );
        }

        return Answers.Page<AssemblyPage>(
            new()
            {
                ["Recipes"] = recipes,
                ["Chosen"] = chosen,
                ["By"] = pairedBy,
                ["Proposed"] = proposed,
                ["Left"] = left,
                ["Unreadable"] = chosen is null
                    ? []
                    : (await shop.Winding.StatusesAsync(await shop.Records.Summaries.UnreadableAsync(cancel), cancel)).Unreadable(),
                ["Problems"] = (IReadOnlyList<Problem>)problems,
                ["Made"] = (IReadOnlyList<string>)made,
                ["Typed"] = typed,
            },
            problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity
        );
    }

    private static async Task<IResult> MakeAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        string[] sets = typed["coils"].Trim().Length > 0 ? [typed["coils"]] : [.. typed.All("set")];
        List<Problem> problems =
            sets.Length == 0
                ? [new Problem("coils", "no coils were ticked or typed", null, "tick a pair, or type batch/tag of each coil")]
                : [];
        if (typed["coils"].Trim().Length > 0 && typed["overruled"].Trim().Length == 0)
        {
            problems.Add(new Problem("overruled", "coils other than the proposed ones need a reason", null, "a few words"));
        }

        List<string> made = [];
        for (int at = 0; at < sets.Length && problems.Count == 0; at++)
        {
            (IReadOnlyList<Problem> wrong, PieceRecord? piece) = await shop.Pieces.Assembly.MakeAsync(
                new AssemblyEntry
                {
                    Id = ReadingChain.IdWithin(typed.Id, at.ToString(CultureInfo.InvariantCulture)),
                    Coils = sets[at].Split([',', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries),
                    Serial = sets.Length == 1 ? typed["serial"] : "",
                    MagnetLot = typed["magnets"],
                    Lots = typed["lots"].Split('\n'),
                    Options = typed["options"].Split('\n'),
                    Overruled = typed["overruled"],
                    Person = typed["person"],
                },
                cancel
            );
            problems.AddRange(wrong);
            made.AddRange(piece is null ? [] : [piece.Serial]);
        }

        Guid? recipe = Guid.TryParse(typed["recipe"], out Guid id) ? id : null;
        FormValues again = problems.Count > 0 ? typed : FormValues.Nothing;
        return problems.Count == 0 && made.Count == 1
            ? Results.LocalRedirect($"/pieces/{Uri.EscapeDataString(made[0])}?done=assembly")
            : await PageAsync(recipe, typed["by"], problems, made, again, shop, cancel);
    }
}
