using System.Collections.Concurrent;
using Coilwright.Analysis.Solving;
using Coilwright.Web.Endpoints;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Solving;

namespace Coilwright.Web.Forecasts;

/// <summary>Answers questions asked backwards; kept, since pinning asks the same question again.</summary>
internal static class SolveDesk
{
    private const int MostKept = 12;

    private static readonly ConcurrentDictionary<(string Json, string Want, string Vary), ReadOutcome<Solutions>> s_kept = new();

    /// <summary>The answer, or the problems of the question; neither when nothing was wanted.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="want">What is wanted, a line each.</param>
    /// <param name="vary">What may change.</param>
    /// <param name="cancel">Stops it.</param>
    public static ReadOutcome<Solutions> Ask(Recipe recipe, string want, string vary, CancellationToken cancel)
    {
        if (s_kept.TryGetValue((recipe.Json, want, vary), out ReadOutcome<Solutions>? known))
        {
            return known;
        }

        if (s_kept.Count >= MostKept)
        {
            s_kept.Clear();
        }

        return s_kept[(recipe.Json, want, vary)] = Answer(recipe, want, vary, cancel);
    }

    private static ReadOutcome<Solutions> Answer(Recipe recipe, string want, string vary, CancellationToken cancel)
    {
        string[] wants = want.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        if (wants.Length == 0)
        {
            return new(null, []);
        }

        List<Problem> problems = [];
        IReadOnlyDictionary<string, double> known = RecipeSolver.Known(recipe, NewestRevision.Load(), cancel);
        Want[] read = [.. wants.Select(typed => WantText.Read("want", typed, known, problems)).OfType<Want>()];
        IReadOnlyList<Varied> varied = VaryText.Read("vary", vary, problems);
        return problems.Count > 0 ? new(null, problems)
            : RecipeSolver.Solve(recipe, new SolveQuestion { Wants = read, Vary = varied, Load = NewestRevision.Load() }, cancel);
    }
}
