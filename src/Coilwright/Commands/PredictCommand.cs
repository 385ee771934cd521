using System.CommandLine;
using Coilwright.Analysis.Forecasts;
using Coilwright.Application.Forecasts;
using Coilwright.Formats.Forecasts;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Physics.BoundaryElements;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Commands;

/// <summary>coilwright predict RECIPE: what the pickup will measure.</summary>
public static class PredictCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> recipe = new("RECIPE") { Description = "A recipe file (coilwright.recipe/1); - reads standard input" };
        Option<string?> load = new("--load") { Description = "A load file (coilwright.load/1): controls, cable, input", HelpName = "LOAD" };
        Option<string?> at = new("--at")
        {
            Description = "Frequencies of inductance and AC resistance, for example 120Hz,1kHz,8kHz",
            HelpName = "LIST",
        };
        Option<string?> jig = new("--jig")
        {
            Description = "Distance over each pole's top at which its field is given; 1 mm unless said, our assumption",
            HelpName = "DISTANCE",
        };
        Option<bool> accurate = new("--accurate") { Description = "Take the accurate field engine; slower" };
        Option<bool> sensitivity = new("--sensitivity")
        {
            Description = "Add what one per cent of wire, a gauge, 100 turns, a millimetre of height or the poles would change",
        };
        Option<bool> json = new("--json") { Description = "Write coilwright.prediction/1" };
        LearningOptions learning = new();
        Command command = new("predict", "What the pickup will measure, with intervals")
        {
            recipe,
            load,
            at,
            jig,
            accurate,
            sensitivity,
            json,
        };
        learning.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                OptionReader typed = new();
                IReadOnlyList<double>? frequenciesHz = typed.Frequencies("--at", parsed.GetValue(at), 10, 20_000);
                double jigM = typed.Quantity("--jig", parsed.GetValue(jig), QuantityKind.Length, 1e-4, 0.05, unsaid: 1e-3);
                typed.RefuseIfWrong();
                Recipe read = await learning.ReadAsync(parsed.GetRequiredValue(recipe), parsed, desk, cancel).ConfigureAwait(false);
                LoadCircuit? circuit = await RecipeFile.ReadLoadAsync(parsed.GetValue(load), cancel).ConfigureAwait(false);
                ForecastOptions options = new() { JigM = jigM };
                options = frequenciesHz is null ? options : options with { FrequenciesHz = frequenciesHz };
                options = parsed.GetValue(accurate) ? options with { Engine = new AccurateFieldEngine() } : options;
                ForecastRecipe forecast = desk.Use<ForecastRecipe>();
                Prediction prediction = await Progress
                    .ShowAsync(desk, "Forecasting", () => forecast.Forecast(read, circuit, options, cancel), cancel)
                    .ConfigureAwait(false);
                if (parsed.GetValue(sensitivity))
                {
                    prediction = prediction with
                    {
                        Sensitivity = await Progress
                            .ShowAsync(desk, "Changing one thing at a time", () => forecast.Changes(read, circuit, options, cancel), cancel)
                            .ConfigureAwait(false),
                    };
                }

                if (parsed.GetValue(json))
                {
                    await desk.Output.WriteLineAsync(PredictionJson.Write(prediction)).ConfigureAwait(false);
                }
                else
                {
                    PredictionFormatter.Write(desk.Output, read.Name, prediction);
                }

                return ExitCode.Done;
            }
        );
        return command;
    }
}
