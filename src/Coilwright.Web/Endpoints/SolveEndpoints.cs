using Coilwright.Analysis.Solving;
using Coilwright.Analysis.Spread;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Solving;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>A recipe asked backwards, and the spread of a run of it.</summary>
internal static class SolveEndpoints
{
    private const int Samples = 20_000;

    public static void MapSolve(this IEndpointRouteBuilder app)
    {
        app.MapGet("/recipes/{id:guid}/solve", SolveAsync);
        app.MapPost("/recipes/{id:guid}/solve", KeepAsync);
        app.MapGet("/recipes/{id:guid}/spread", SpreadAsync);
    }

    private static async Task<IResult> SolveAsync(Guid id, string? want, string? vary, ShopServices shop, CancellationToken cancel)
    {
        if (await NewestRevision.OfAsync(id, shop, cancel) is not { } found)
        {
            return Answers.NotFoundPage();
        }

        string[] wants = (want ?? "").Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        List<Problem> problems = [];
        Solutions? answer = null;
        if (wants.Length > 0)
        {
            IReadOnlyDictionary<string, double> known = RecipeSolver.Known(found.Recipe, NewestRevision.Load(), cancel);
            Want[] read = [.. wants.Select(typed => WantText.Read("want", typed, known, problems)).OfType<Want>()];
            IReadOnlyList<Varied> varied = VaryText.Read("vary", vary ?? "turns", problems);
            if (problems.Count == 0)
            {
                ReadOutcome<Solutions> outcome = RecipeSolver.Solve(found.Recipe, new SolveQuestion { Wants = read, Vary = varied, Load = NewestRevision.Load() }, cancel);
                answer = outcome.Value;
                problems.AddRange(outcome.Problems);
            }
        }

        return Answers.Page<SolvePage>(
            new() { ["Recipe"] = found.Record, ["Found"] = answer, ["Problems"] = problems, ["Want"] = want ?? "", ["Vary"] = vary ?? "turns" },
            problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity);
    }

    /// <summary>A recipe that was found becomes a draft of the same recipe.</summary>
    private static async Task<IResult> KeepAsync(Guid id, HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        if (await NewestRevision.OfAsync(id, shop, cancel) is not { } found)
        {
            return Answers.NotFoundPage();
        }

        (Guid kept, IReadOnlyList<Problem> problems) = await NewestRevision.KeepAsync(found.Record, form, shop, cancel);
        return problems.Count == 0
            ? Results.LocalRedirect($"/recipes/{kept}?saved=yes")
            : Answers.Page<SolvePage>(new() { ["Recipe"] = found.Record, ["Problems"] = problems }, StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> SpreadAsync(Guid id, ShopServices shop, CancellationToken cancel)
    {
        if (await NewestRevision.OfAsync(id, shop, cancel) is not { } found)
        {
            return Answers.NotFoundPage();
        }

        RunSpread run = RunForecaster.Spread(RecipeModelBuilder.ToModel(found.Recipe), NewestRevision.Load(), RecipeTargets.ForRun(found.Recipe), Samples, seed: 1, cancel: cancel);
        return Answers.Page<SpreadPage>(new() { ["Recipe"] = found.Record, ["Run"] = run });
    }
}
