using System.CommandLine;
using Coilwright.Analysis.Forecasts;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Commands;

/// <summary>coilwright wind RECIPE: the set-up sheet. Exit 1 when a coil does not fit.</summary>
public static class WindCommand
{
    public static Command Build(Desk desk)
    {
        Argument<string> recipe = new("RECIPE") { Description = "A recipe file (coilwright.recipe/1); - reads standard input" };
        Option<string?> machine = new("--machine") { Description = "A winder: a machine file (coilwright.machine/1), or its name in the shop of --shop", HelpName = "NAME or FILE" };
        Option<string?> shop = new("--shop") { Description = "The shop whose machines are meant", HelpName = "FILE" };
        Option<string?> room = new("--room") { Description = "Room temperature the warm figures stand for; 23 °C unless said", HelpName = "TEMPERATURE" };
        Option<bool> json = new("--json") { Description = "Write coilwright.setup/1" };
        Option<bool> html = new("--html") { Description = "Write the printable sheet as one HTML page" };
        Command command = new("wind", "The set-up sheet of the winder") { recipe, machine, shop, room, json, html };
        command.SetAction(async (parsed, cancel) =>
        {
            TypedOptions typed = new();
            double roomC = typed.Quantity("--room", parsed.GetValue(room), QuantityKind.Temperature, -20, 60, WindingSetUp.UsualRoomC);
            if (parsed.GetValue(json) && parsed.GetValue(html))
            {
                typed.Add("--html", "choose one of --json and --html");
            }

            typed.RefuseIfWrong();
            RecipeFile file = await RecipeFile.ReadAsync(parsed.GetRequiredValue(recipe), cancel).ConfigureAwait(false);
            Machine? on = await MachineFile.FindAsync(parsed.GetValue(machine), parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
            Prediction prediction = await Progress.ShowAsync(desk, "Forecasting", () => Forecaster.Predict(file.Model, load: null, cancel: cancel), cancel).ConfigureAwait(false);
            WindingSetUp setUp = WindingSetUp.For(file.Recipe, file.Model, prediction, parsed.GetValue(machine) ?? "", roomC, on) with
            {
                Heading = new SheetHeading(Date: DateOnly.FromDateTime(desk.LocalNow.DateTime)),
            };
            if (parsed.GetValue(json))
            {
                await desk.Output.WriteLineAsync(SetUpJson.Write(setUp)).ConfigureAwait(false);
            }
            else if (parsed.GetValue(html))
            {
                await desk.Output.WriteLineAsync(Papers.SetUp.SetUpSheetHtml.Render(setUp)).ConfigureAwait(false);
            }
            else
            {
                PlainSetUp.Write(desk.Output, setUp);
            }

            return setUp.Fits ? ExitCode.Done : ExitCode.AnswerIsNo;
        });
        return command;
    }
}
