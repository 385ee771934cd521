using System.Globalization;
using Coilwright.Analysis.Solving;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Solving;

namespace Coilwright.Application.Solving;

/// <summary>A person says what is wanted and what may change, and gets recipes that give it.</summary>
public sealed class SolveRecipe
{
    private const int FewestPoints = 2,
        MostPoints = 500;

    /// <summary>Reads the question and answers it; everything that is wrong with it is told at once.</summary>
    /// <param name="recipe">The recipe asked about.</param>
    /// <param name="asked">The question.</param>
    /// <param name="progress">Told the part of the search that is done, 0 to 1.</param>
    /// <param name="cancel">Stops it; what was looked at by then is the answer.</param>
    public ReadOutcome<Solutions> Solve(Recipe recipe, SolveRequest asked, IProgress<double>? progress, CancellationToken cancel)
    {
        ReadOutcome<SolveQuestion> question = Read(recipe, asked, cancel);
        return question.Value is { } read
            ? RecipeSolver.Solve(recipe, read, progress, cancel)
            : new ReadOutcome<Solutions>(null, question.Problems);
    }

    private static ReadOutcome<SolveQuestion> Read(Recipe recipe, SolveRequest asked, CancellationToken cancel)
    {
        string want = asked.Mark + "want",
            vary = asked.Mark + "vary";
        List<Problem> problems = [];
        IReadOnlyDictionary<string, double> known = RecipeSolver.Known(recipe, asked.Load, cancel);
        Objective[] wants = [.. asked.Wants.Select(typed => ObjectiveParser.Read(want, typed, known, problems)).OfType<Objective>()];
        problems.AddRange(Missing(asked, want, vary, known));
        IReadOnlyList<Varied> varied = asked.Vary is null ? [] : DesignVariableParser.Read(vary, asked.Vary, problems);
        IReadOnlyList<FrontAxis> axes = asked.Front is null ? [] : ObjectiveParser.Axes(asked.Mark + "front", asked.Front, known, problems);
        SolveQuestion question = new()
        {
            Wants = wants,
            Now = known,
            Vary = varied,
            Load = asked.Load,
            Front = axes,
            Threads = asked.Threads,
        };
        question = asked.Points is { } points ? question with { FrontSize = points } : question;
        return new ReadOutcome<SolveQuestion>(problems.Count > 0 ? null : question, problems);
    }

    private static IEnumerable<Problem> Missing(SolveRequest asked, string want, string vary, IReadOnlyDictionary<string, double> known)
    {
        if (asked.Wants.Count == 0)
        {
            yield return new Problem(
                want,
                $"say what is wanted, for example {want} dcResistance=8.2kΩ",
                Allowed: string.Join(", ", known.Keys)
            );
        }

        if (asked.Vary is null)
        {
            yield return new Problem(vary, $"say what may be varied, for example {vary} turns,gauge", Allowed: DesignVariableParser.Known);
        }

        if (asked.Points is < FewestPoints or > MostPoints)
        {
            yield return new Problem(
                asked.Mark + "points",
                "outside the allowed range",
                asked.Points.Value.ToString(CultureInfo.InvariantCulture),
                $"{FewestPoints} to {MostPoints}"
            );
        }
    }
}
