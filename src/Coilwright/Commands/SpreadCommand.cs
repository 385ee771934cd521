using System.CommandLine;
using Coilwright.Analysis.Spread;
using Coilwright.Application.Forecasts;
using Coilwright.Formats.Forecasts;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Commands;

/// <summary>coilwright spread RECIPE: how a production run will scatter, from what, and what would narrow it.</summary>
public static class SpreadCommand
{
    private const int FewestSamples = 100;
    private const int MostSamples = 1_000_000;

    public static Command Build(CommandContext desk)
    {
        Argument<string> recipe = new("RECIPE") { Description = "A recipe file (coilwright.recipe/1); - reads standard input" };
        Option<string?> load = new("--load")
        {
            Description = "A load file (coilwright.load/1); a usual player's load unless said",
            HelpName = "LOAD",
        };
        Option<int> samples = new Option<int>("--samples") { Description = "Pieces to draw", DefaultValueFactory = _ => 20_000 }.AsCount();
        Option<int> seed = new Option<int>("--seed")
        {
            Description = "Seed of the draw; the same seed gives the same answer",
            DefaultValueFactory = _ => 1,
        }.AsCount();
        Option<bool> byTime = new("--by-time") { Description = "The winder stops by the clock instead of by the count" },
            json = new("--json") { Description = "Write coilwright.spread/1" };
        LearningOptions learning = new();
        Command command = new("spread", "The spread of a production run: distribution, causes, and what would narrow it")
        {
            recipe,
            load,
            samples,
            seed,
            byTime,
            json,
        };
        learning.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                int count = parsed.GetValue(samples);
                OptionReader typed = new();
                if (count is < FewestSamples or > MostSamples)
                {
                    typed.Add(
                        "--samples",
                        "outside the allowed range",
                        count.ToString(System.Globalization.CultureInfo.InvariantCulture),
                        "100 to 1,000,000"
                    );
                }

                typed.RefuseIfWrong();
                Recipe read = await learning.ReadAsync(parsed.GetRequiredValue(recipe), parsed, desk, cancel).ConfigureAwait(false);
                LoadOption chosen = await LoadOption.ReadAsync(parsed.GetValue(load), cancel).ConfigureAwait(false);
                RunSpread run = await Progress
                    .ShowAsync(
                        desk,
                        "Drawing the run",
                        () =>
                            desk.Use<SpreadRecipe>()
                                .Draw(read, chosen.Circuit, count, parsed.GetValue(seed), parsed.GetValue(byTime), progress: null, cancel),
                        cancel
                    )
                    .ConfigureAwait(false);
                if (parsed.GetValue(json))
                {
                    await desk.Output.WriteLineAsync(SpreadJson.Write(run)).ConfigureAwait(false);
                }
                else
                {
                    SpreadFormatter.Write(desk.Output, read.Name, chosen.Words, run);
                }

                return run.Stopped ? ExitCode.Stopped : ExitCode.Done;
            }
        );
        return command;
    }
}
