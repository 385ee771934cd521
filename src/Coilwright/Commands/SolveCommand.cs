using System.CommandLine;
using Coilwright.Analysis.Solving;
using Coilwright.Formats.Forecasts;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Solving;

namespace Coilwright.Commands;

/// <summary>coilwright solve RECIPE --want … --vary …: recipes that give what is wanted. Exit 1 when nothing does.</summary>
public static class SolveCommand
{
    private const int MostPoints = 500;

    public static Command Build(CommandContext desk)
    {
        Argument<string> recipe = new("RECIPE") { Description = "A recipe file (coilwright.recipe/1); - reads standard input" };
        Option<string[]> want = new("--want")
        {
            Description = "dcResistance=8.2kΩ, dcResistance=8.2kΩ±2%, loadedPeak>=3.2kHz, output=max, output>=+1dB; as often as needed",
            HelpName = "WANT",
            AllowMultipleArgumentsPerToken = true,
        };
        Option<string[]> vary = new("--vary")
        {
            Description = $"What may be varied: {DesignVariableParser.Known}; turns=5000..9000, gauge=\"AWG 42/AWG 43\"",
            HelpName = "LIST",
        };
        Option<string?> load = new("--load")
        {
            Description = "A load file (coilwright.load/1); a usual player's load unless said",
            HelpName = "LOAD",
        };
        Option<string?> front = new("--front")
        {
            Description = "Two or three axes of the trade-off, for example output,loadedPeak or output,-wireMass (a minus: less is better)",
            HelpName = "LIST",
        };
        Option<int> points = new Option<int>("--points")
        {
            Description = "Most recipes on the trade-off front",
            DefaultValueFactory = _ => 40,
        }.AsCount();
        Option<bool> json = new("--json") { Description = "Write coilwright.solutions/1" };
        Command command = new("solve", "Works backwards from targets: which wire, how many turns, which parts give what is wanted")
        {
            recipe,
            want,
            vary,
            load,
            front,
            points,
            json,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                RecipeFile file = await RecipeFile.ReadAsync(parsed.GetRequiredValue(recipe), cancel).ConfigureAwait(false);
                LoadOption chosen = await LoadOption.ReadAsync(parsed.GetValue(load), cancel).ConfigureAwait(false);
                SolveQuestion question = Question(
                    file.Recipe,
                    chosen,
                    parsed.GetValue(want) ?? [],
                    parsed.GetValue(vary) ?? [],
                    parsed.GetValue(front),
                    parsed.GetValue(points),
                    cancel
                );
                Solutions answer = (
                    await Progress
                        .ShowAsync(desk, "Searching", () => RecipeSolver.Solve(file.Recipe, question, cancel: cancel), cancel)
                        .ConfigureAwait(false)
                ).OrRefuse("");
                if (parsed.GetValue(json))
                {
                    await desk.Output.WriteLineAsync(SolutionsJson.Write(answer)).ConfigureAwait(false);
                }
                else
                {
                    SolutionFormatter.Write(desk.Output, file.Recipe.Name, chosen.Words, answer);
                }

                int found = answer.Met ? ExitCode.Done : ExitCode.AnswerIsNo;
                return answer.Stopped ? ExitCode.Stopped : found;
            }
        );
        return command;
    }

    private static SolveQuestion Question(
        Recipe recipe,
        LoadOption chosen,
        string[] wants,
        string[] vary,
        string? front,
        int points,
        CancellationToken cancel
    )
    {
        List<Problem> problems = [];
        IReadOnlyDictionary<string, double> known = RecipeSolver.Known(recipe, chosen.Circuit, cancel);
        Objective[] read = [.. wants.Select(typed => ObjectiveParser.Read("--want", typed, known, problems)).OfType<Objective>()];
        if (wants.Length == 0)
        {
            problems.Add(
                new Problem("--want", "say what is wanted, for example --want dcResistance=8.2kΩ", Allowed: string.Join(", ", known.Keys))
            );
        }

        if (vary.Length == 0)
        {
            problems.Add(
                new Problem("--vary", "say what may be varied, for example --vary turns,gauge", Allowed: DesignVariableParser.Known)
            );
        }

        if (points is < 2 or > MostPoints)
        {
            problems.Add(
                new Problem(
                    "--points",
                    "outside the allowed range",
                    points.ToString(System.Globalization.CultureInfo.InvariantCulture),
                    $"2 to {MostPoints}"
                )
            );
        }

        IReadOnlyList<Varied> varied = vary.Length == 0 ? [] : DesignVariableParser.Read("--vary", string.Join(',', vary), problems);
        IReadOnlyList<FrontAxis> axes = front is null ? [] : ObjectiveParser.Axes("--front", front, known, problems);
        return problems.Count > 0
            ? throw new WrongInputException("", problems)
            : new SolveQuestion
            {
                Wants = read,
                Vary = varied,
                Load = chosen.Circuit,
                Front = axes,
                FrontSize = points,
            };
    }
}
