using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Quantities;
using Coilwright.Analysis.Solving;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Solving;

/// <summary>
/// Finds recipes that give what is wanted: looks at every allowed wire, part and count of turns, and forecasts in full what it returns.
/// </summary>
public static class RecipeSolver
{
    /// <summary>Most pickups (without wire and turns) that are solved; more are refused, since each is several field solutions.</summary>
    public const int MostFamilies = 400;

    /// <summary>Recipes forecast in full when the person does not want to wait any longer.</summary>
    private const int FewWhenStopped = 3;

    private static readonly Choice[] s_sizes = [Choice.WindingHeight, Choice.CoreWidth, Choice.CoreLength];

    /// <summary>Names that can be wanted of a recipe, with the values it has now; NaN where one does not exist yet.</summary>
    public static IReadOnlyDictionary<string, double> Known(
        Recipe recipe,
        Physics.Circuit.LoadCircuit load,
        CancellationToken cancel = default
    ) =>
        DesignSearch
            .QuantitiesOf(RecipeModelBuilder.ToModel(recipe), load, cancel)
            .ToDictionary(quantity => quantity.Name, quantity => quantity.Value, StringComparer.Ordinal);

    /// <summary>Answers a question, or tells what is wrong with it; stopped, it answers from what was looked at by then.</summary>
    /// <param name="recipe">The recipe asked about.</param>
    /// <param name="question">What is wanted, and what may change.</param>
    /// <param name="progress">Told the part of the search that is done, 0 to 1.</param>
    /// <param name="cancel">Stops it.</param>
    public static ReadOutcome<Solutions> Solve(
        Recipe recipe,
        SolveQuestion question,
        IProgress<double>? progress = null,
        CancellationToken cancel = default
    )
    {
        Variants variants = new(recipe, question.Vary);
        if (variants.Models.Count > MostFamilies)
        {
            return new ReadOutcome<Solutions>(
                null,
                [
                    new Problem(
                        "--vary",
                        "too much is varied at once",
                        $"{variants.Models.Count} different pickups",
                        $"at most {MostFamilies}; give shorter lists or vary fewer sizes"
                    ),
                ]
            );
        }

        DesignSpace space = SpaceOf(recipe, question, variants);
        DesignAnswer answer = DesignSearch.Run(space, progress, cancel);
        if (!answer.Stopped && question.Vary.Any(one => s_sizes.Contains(one.What)) && answer.Solutions.Count > 0)
        {
            // Once more with the sizes about the best: their grid is coarse.
            Variants nearer = new(recipe, question.Vary, About(variants, answer.Solutions[0], question.Vary));
            DesignSpace closer = SpaceOf(recipe, question, nearer);
            if (
                nearer.Models.Count <= MostFamilies
                && DesignSearch.Run(closer, progress, cancel) is var second
                && !(answer.Met && !second.Met)
            )
            {
                (variants, space, answer) = (nearer, closer, second);
            }
        }

        answer = answer.Stopped ? answer with { Solutions = [.. answer.Solutions.Take(FewWhenStopped)], Front = [] } : answer;
        return new ReadOutcome<Solutions>(
            Whole(recipe, question, variants, space, answer, answer.Stopped ? CancellationToken.None : cancel),
            []
        );
    }

    private static DesignSpace SpaceOf(Recipe recipe, SolveQuestion question, Variants variants)
    {
        Varied? turns = question.Vary.FirstOrDefault(one => one.What == Choice.Turns);
        int now = (int)Math.Round(recipe.Coils[0].Winding.Turns);
        (int fewest, int most) = UsualTurns(now);
        return new DesignSpace
        {
            Families = variants.Models,
            Wires = variants.Wires,
            FewestTurns = turns is null ? now : (int)(turns.Low ?? fewest),
            MostTurns = turns is null ? now : (int)(turns.High ?? most),
            Load = question.Load,
            Wants = question.Wants,
            Front = question.Front.Count > 0 ? question.Front : UsualFront(recipe, question),
            FrontSize = question.FrontSize,
            Solutions = question.Solutions,
            Threads = question.Threads,
        };
    }

    /// <summary>Turns that are looked at when no ends are given.</summary>
    internal static (int Fewest, int Most) UsualTurns(int now) => (Math.Max(100, now / 4), Math.Min(100_000, 5 * now));

    private static IReadOnlyList<NearestToWant> Nearest(
        SolveQuestion question,
        Variants variants,
        DesignAnswer answer,
        IReadOnlyList<double> baseTurns
    ) =>
        [
            .. question
                .Wants.Zip(answer.NearestEach)
                .Where(pair => pair.First.IsLimit && pair.Second is not null)
                .Select(pair => new NearestToWant(pair.First, variants.Write(pair.Second!, baseTurns).Changes, pair.Second!.Values)),
        ];

    /// <summary>What is wanted most or least first, then output and the loaded peak, then wire; two axes.</summary>
    private static IReadOnlyList<FrontAxis> UsualFront(Recipe recipe, SolveQuestion question) =>
        [
            .. question
                .Wants.Where(want => !want.IsLimit)
                .Select(want => new FrontAxis(want.Quantity, want.Kind == ObjectiveKind.Most))
                .Concat(recipe.Strings is null ? [new FrontAxis(QuantityKey.Inductance, true)] : [new FrontAxis(QuantityKey.Output, true)])
                .Concat([new FrontAxis(QuantityKey.LoadedPeak, true), new FrontAxis(QuantityKey.WireMass, false)])
                .DistinctBy(axis => axis.Quantity)
                .Take(Math.Max(2, Math.Min(3, question.Wants.Count(want => !want.IsLimit)))),
        ];

    /// <summary>A third of each size's range about the best design's.</summary>
    private static Dictionary<Choice, (double Low, double High)> About(Variants variants, Design best, IReadOnlyList<Varied> vary)
    {
        Dictionary<Choice, (double Low, double High)> about = [];
        foreach (Choice what in vary.Select(one => one.What).Where(what => s_sizes.Contains(what)))
        {
            double[] tried =
            [
                .. Enumerable
                    .Range(0, variants.Models.Count)
                    .Select(family => variants.SizeOf(family, what))
                    .OfType<double>()
                    .Distinct()
                    .Order(),
            ];
            if (variants.SizeOf(best.Family, what) is { } at && tried.Length > 1)
            {
                double step = (tried[^1] - tried[0]) / (tried.Length - 1);
                about[what] = (Math.Max(tried[0], at - step), Math.Min(tried[^1], at + step));
            }
        }

        return about;
    }

    private static Solutions Whole(
        Recipe recipe,
        SolveQuestion question,
        Variants variants,
        DesignSpace space,
        DesignAnswer answer,
        CancellationToken cancel
    )
    {
        double[] baseTurns = [.. recipe.Coils.Select(coil => coil.Winding.Turns)];
        Solution[] all = new Solution[answer.Solutions.Count + answer.Front.Count];
        Parallel.For(0, all.Length, new ParallelOptions { CancellationToken = cancel, MaxDegreeOfParallelism = question.Threads }, k =>
        {
            Design design = k < answer.Solutions.Count ? answer.Solutions[k] : answer.Front[k - answer.Solutions.Count];
            (string json, IReadOnlyDictionary<string, object> changes) = variants.Write(design, baseTurns);
            Recipe written = RecipeReader.Read(json) is { Ok: true, Value: { } read }
                ? read with
                {
                    SizeRules = recipe.SizeRules,
                    Learning = recipe.Learning,
                }
                : throw new InvalidOperationException("A recipe that was found cannot be read.");
            PickupModel model = RecipeModelBuilder.ToModel(written);
            Prediction prediction = Forecaster.Predict(model, question.Load, cancel: cancel);
            IReadOnlyDictionary<string, double> values = prediction.NamedValues;
            all[k] = new Solution(
                changes,
                json,
                prediction,
                values,
                [
                    .. question
                        .Wants.Where(want => want.Miss(values.GetValueOrDefault(want.Quantity, double.NaN)) > 0)
                        .Select(want => want.Quantity),
                ]
            );
        });
        Solution[] ranked = all[..answer.Solutions.Count];
        Solution[] meeting = [.. ranked.Where(solution => solution.Missed.Count == 0)];
        return new Solutions
        {
            Met = answer.Met && meeting.Length > 0,
            Ranked = answer.Met && meeting.Length > 0 ? meeting : ranked,
            Front = [.. all[answer.Solutions.Count..].Where(solution => solution.Missed.Count == 0)],
            Axes = space.Front,
            Wants = question.Wants,
            Binding = answer.Binding,
            NearestEach = Nearest(question, variants, answer, baseTurns),
            Now = question.Now,
            Notes = variants.Notes,
            Searched = answer.Searched,
            Stopped = answer.Stopped,
        };
    }
}
