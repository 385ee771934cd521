using Coilwright.Application.Composition;
using Coilwright.Application.Magnets;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Magnets: the field over the poles, and what is charged.</summary>
internal static class MagnetEndpoints
{
    public static void MapMagnets(this IEndpointRouteBuilder app)
    {
        app.MapGet("/magnets", async (string? show, ReadMagnets magnets, CancellationToken cancel) =>
            await PageAsync(show ?? "", [], FormValues.Nothing, magnets, cancel)
        );
        app.MapPost("/magnets/charge", ChargeAsync);
    }

    private static async Task<IResult> PageAsync(
        string show,
        IReadOnlyList<Problem> problems,
        FormValues typed,
        ReadMagnets magnets,
        CancellationToken cancel
    ) =>
        Answers.Page<MagnetsPage>(
            new()
            {
                ["Board"] = await magnets.ReadAsync(show, cancel),
                ["Problems"] = problems,
                ["Typed"] = typed,
            },
            Answers.StatusOf(problems)
        );

    private static async Task<IResult> ChargeAsync(HttpRequest request, ShopServices shop, ReadMagnets magnets, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        IReadOnlyList<Problem> problems = await shop.Pieces.Magnets.ChargeAsync(
            typed.Id,
            typed.All("piece"),
            ChargeForm.Read(typed),
            typed["why"],
            typed["person"],
            cancel
        );
        return problems.Count == 0 ? Results.LocalRedirect("/magnets") : await PageAsync("", problems, typed, magnets, cancel);
    }
}
