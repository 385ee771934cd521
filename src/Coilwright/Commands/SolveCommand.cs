using System.CommandLine;
using Coilwright.Application.Solving;
using Coilwright.Formats.Forecasts;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Solving;

namespace Coilwright.Commands;

/// <summary>coilwright solve RECIPE --want … --vary …: recipes that give what is wanted. Exit 1 when nothing does.</summary>
public static class SolveCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> recipe = new("RECIPE") { Description = "A recipe file (coilwright.recipe/1); - reads standard input" };
        Option<string[]> want = new("--want")
        {
            Description =
                "dcResistance=8.2kΩ, dcResistance=8.2kΩ±2%, dcResistance=8kΩ..8.4kΩ, loadedPeak>=3.2kHz, output=max; as often as needed",
            HelpName = "WANT",
            AllowMultipleArgumentsPerToken = true,
        };
        Option<string[]> varied = new("--vary")
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
        LearningOptions learning = new();
        Command command = new("solve", "Works backwards from targets: which wire, how many turns, which parts give what is wanted")
        {
            recipe,
            want,
            varied,
            load,
            front,
            points,
            json,
        };
        learning.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                Recipe read = await learning.ReadAsync(parsed.GetRequiredValue(recipe), parsed, desk, cancel).ConfigureAwait(false);
                LoadOption chosen = await LoadOption.ReadAsync(parsed.GetValue(load), cancel).ConfigureAwait(false);
                string[] vary = parsed.GetValue(varied) ?? [];
                SolveRequest asked = new(parsed.GetValue(want) ?? [], vary.Length == 0 ? null : string.Join(',', vary), chosen.Circuit)
                {
                    Front = parsed.GetValue(front),
                    Points = parsed.GetValue(points),
                    Mark = "--",
                };
                Solutions answer = (
                    await Progress
                        .ShowAsync(desk, "Searching", () => desk.Use<SolveRecipe>().Solve(read, asked, progress: null, cancel), cancel)
                        .ConfigureAwait(false)
                ).OrRefuse("");
                if (parsed.GetValue(json))
                {
                    await desk.Output.WriteLineAsync(SolutionsJson.Write(answer)).ConfigureAwait(false);
                }
                else
                {
                    SolutionFormatter.Write(desk.Output, read.Name, chosen.Words, answer);
                }

                int found = answer.Met ? ExitCode.Done : ExitCode.AnswerIsNo;
                return answer.Stopped ? ExitCode.Stopped : found;
            }
        );
        return command;
    }
}
