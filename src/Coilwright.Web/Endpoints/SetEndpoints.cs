using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Sets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Pieces matched to sets.</summary>
internal static class SetEndpoints
{
    public static void MapSets(this IEndpointRouteBuilder app)
    {
        app.MapGet("/sets", (HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            PageAsync(
                SetForm.Places(request.Query["place"], request.Query["of"], request.Query["offset"]),
                [],
                FormValues.Nothing,
                shop,
                cancel
            )
        );
        app.MapPost("/sets", JoinAsync);
        app.MapPost("/sets/leave", LeaveAsync);
    }

    private static async Task<IResult> PageAsync(
        IReadOnlyList<SetPlace> places,
        IReadOnlyList<Problem> problems,
        FormValues typed,
        ShopServices shop,
        CancellationToken cancel
    )
    {
        SetProposal? found = places.Count == 0 ? null : await shop.Pieces.Sets.ProposeAsync(places, cancel);
        SetsInShop sets = await shop.Pieces.Sets.InShopAsync(cancel);
        IReadOnlyList<Problem> all = [.. problems, .. problems.Count == 0 ? found?.Problems ?? [] : []];
        return Answers.Page<SetsPage>(
            new()
            {
                ["Places"] = places,
                ["Found"] = found,
                ["Recipes"] =
                    (IReadOnlyList<string>)
                        [
                            .. (await shop.Pieces.Shelf.OpenAsync(cancel))
                                .Where(life => SetMembership.Of(life) is null)
                                .Select(life => life.Recipe.Name)
                                .Distinct(StringComparer.OrdinalIgnoreCase),
                        ],
                ["Sets"] = sets.Sets,
                ["Unreadable"] = sets.Unreadable,
                ["Problems"] = all,
                ["Typed"] = typed,
            },
            all.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity
        );
    }

    private static async Task<IResult> JoinAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        FormValues typed = new(form);
        IReadOnlyList<SetPlace> asked = SetForm.Places(form["place"], form["of"], form["offset"]);
        string chosen = typed["others"].Trim().Length > 0 ? typed["others"] : typed["choice"];
        string[] serials = chosen.Split([',', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (serials.Length != asked.Count)
        {
            return await PageAsync(
                asked,
                [
                    new Problem(
                        "others",
                        serials.Length == 0 ? "no pieces were chosen" : "one serial for each place is needed",
                        chosen.Length > 0 ? chosen : null,
                        string.Join(", ", asked.Select(place => place.Name))
                    ),
                ],
                typed,
                shop,
                cancel
            );
        }

        SetEntry entry = new()
        {
            Id = typed.Id,
            Name = typed["name"],
            Places = [.. asked.Zip(serials, (place, serial) => place with { Of = serial })],
            Why = typed["why"],
            Person = typed["person"],
        };
        (IReadOnlyList<Problem> problems, _) = await shop.Pieces.Sets.JoinAsync(entry, cancel);
        return problems.Count == 0 ? Results.LocalRedirect("/sets") : await PageAsync(asked, problems, typed, shop, cancel);
    }

    private static async Task<IResult> LeaveAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        IReadOnlyList<Problem> problems = await shop.Pieces.Sets.LeaveAsync(
            typed.Id,
            typed.All("piece"),
            typed["reason"],
            typed["person"],
            cancel
        );
        return problems.Count == 0 ? Results.LocalRedirect("/sets") : await PageAsync([], problems, typed, shop, cancel);
    }
}
