using System.Text;
using Coilwright.Application.Composition;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Files;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Files that are brought in: chosen from the disk, or pasted.</summary>
internal static class FileEndpoints
{
    /// <summary>What pasted text is called beside files that have names.</summary>
    private const string Pasted = "pasted text";

    public static void MapFiles(this IEndpointRouteBuilder app)
    {
        app.MapGet("/shop/files", () => Page([], "", ""));
        app.MapPost("/shop/files", KeepAsync);
    }

    /// <summary>The page that shows what is wrong with text that was sent as a file.</summary>
    public static IResult Refused(IReadOnlyList<Problem> problems, string json, string person) =>
        Page([new FileOutcome(Pasted, "", "", null, problems)], json, person);

    private static RazorComponentResult Page(IReadOnlyList<FileOutcome> outcomes, string pasted, string person) =>
        Answers.Page<FilesPage>(
            new()
            {
                ["Outcomes"] = outcomes,
                ["Pasted"] = pasted,
                ["Person"] = person,
            },
            Answers.StatusOf([.. outcomes.SelectMany(one => one.Problems)])
        );

    private static async Task<IResult> KeepAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        string pasted = form["json"].ToString(),
            person = form["person"].ToString();
        FileIntake intake = new(shop.Recipes, shop.Machines, shop.Pieces.Shelf.Rules);
        List<FileOutcome> outcomes = [];
        foreach (IFormFile file in form.Files.Where(file => file.Length > 0))
        {
            using StreamReader reader = new(file.OpenReadStream(), Encoding.UTF8);
            outcomes.Add(await intake.KeepAsync(file.FileName, await reader.ReadToEndAsync(cancel), person, cancel));
        }

        if (pasted.Trim().Length > 0)
        {
            outcomes.Add(await intake.KeepAsync(Pasted, pasted, person, cancel));
        }

        if (outcomes.Count == 0)
        {
            outcomes.Add(
                new FileOutcome("", "", "", null, [new Problem("files", "choose a file, or paste one", null, "one file or more")])
            );
        }

        string again = outcomes.Any(one => one.FileName == Pasted && one.Problems.Count > 0) ? pasted : "";
        return outcomes is [{ RecipeId: { } recipe }]
            ? Results.LocalRedirect($"/recipes/{recipe}?saved=yes")
            : Page(outcomes, again, person);
    }
}
