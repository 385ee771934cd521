using Coilwright.Analysis.Solving;
using Coilwright.Analysis.Spread;
using Coilwright.Physics.Circuit;
using Coilwright.Web.Forms;
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
        if (await NewestAsync(id, shop, cancel) is not { } found)
        {
            return Answers.NotFoundPage();
        }

        string[] wants = (want ?? "").Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        List<Problem> problems = [];
        Solutions? answer = null;
        if (wants.Length > 0)
        {
            IReadOnlyDictionary<string, double> known = RecipeSolver.Known(found.Recipe, Load(), cancel);
            Want[] read = [.. wants.Select(typed => WantText.Read("want", typed, known, problems)).OfType<Want>()];
            IReadOnlyList<Varied> varied = VaryText.Read("vary", vary ?? "turns", problems);
            if (problems.Count == 0)
            {
                ReadOutcome<Solutions> outcome = RecipeSolver.Solve(found.Recipe, new SolveQuestion { Wants = read, Vary = varied, Load = Load() }, cancel);
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
        if (await NewestAsync(id, shop, cancel) is not { } found)
        {
            return Answers.NotFoundPage();
        }

        RecipeOutcome outcome = await shop.Recipes.SaveAsync(id, form["json"].ToString(), "asked backwards", form["person"].ToString(), found.Record.Number, cancel);
        return outcome.Problems.Count == 0
            ? Results.LocalRedirect($"/recipes/{id}?saved=yes")
            : Answers.Page<SolvePage>(new() { ["Recipe"] = found.Record, ["Problems"] = outcome.Problems }, StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> SpreadAsync(Guid id, ShopServices shop, CancellationToken cancel)
    {
        if (await NewestAsync(id, shop, cancel) is not { } found)
        {
            return Answers.NotFoundPage();
        }

        RunSpread run = RunForecaster.Spread(RecipeModelBuilder.ToModel(found.Recipe), Load(), RecipeTargets.ForRun(found.Recipe), Samples, seed: 1, cancel: cancel);
        return Answers.Page<SpreadPage>(new() { ["Recipe"] = found.Record, ["Run"] = run });
    }

    private static LoadCircuit Load() => LoadReader.Read(LoadForm.Default().ToJsonString()).Value!;

    private static async Task<(RevisionRecord Record, Recipe Recipe)?> NewestAsync(Guid id, ShopServices shop, CancellationToken cancel)
    {
        IReadOnlyList<RevisionRecord> revisions = await shop.Records.RevisionsAsync(id, cancel);
        RevisionRecord? newest = revisions.MaxBy(revision => revision.Number);
        return newest is not null && RecipeReader.Read(newest.Json) is { Ok: true, Value: { } recipe } ? (newest, (await shop.Recipes.FillLimitsAsync(cancel)).Fill(recipe)) : null;
    }
}
