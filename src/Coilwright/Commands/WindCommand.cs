using System.CommandLine;
using Coilwright.Analysis.Forecasts;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Commands;

/// <summary>coilwright wind RECIPE, or wind --batch NAME: the set-up sheet. Exit 1 when a coil does not fit.</summary>
public static class WindCommand
{
    private static readonly Argument<string?> s_recipe = new("RECIPE") { Description = "A recipe file (coilwright.recipe/1); - reads standard input", Arity = ArgumentArity.ZeroOrOne };
    private static readonly Option<string?> s_batch = new("--batch") { Description = "A batch of the shop instead of a recipe: its winder, spool, turns and room temperature", HelpName = "NAME" };
    private static readonly Option<string?> s_machine = new("--machine") { Description = "A winder: a machine file (coilwright.machine/1), or its name in the shop of --shop; the batch's own unless said", HelpName = "NAME or FILE" };
    private static readonly Option<string?> s_shop = new("--shop") { Description = "The shop whose machines and batches are meant", HelpName = "FILE" };
    private static readonly Option<string?> s_room = new("--room") { Description = "Room temperature the warm figures stand for; for a batch the one in force, else 23 °C, unless said", HelpName = "TEMPERATURE" };
    private static readonly Option<bool> s_json = new("--json") { Description = "Write coilwright.setup/1" };
    private static readonly Option<bool> s_html = new("--html") { Description = "Write the printable sheet as one HTML page" };

    public static Command Build(Desk desk)
    {
        Command command = new("wind", "The set-up sheet of the winder") { s_recipe, s_batch, s_machine, s_shop, s_room, s_json, s_html };
        command.SetAction(async (parsed, cancel) =>
        {
            TypedOptions typed = new();
            double? roomC = parsed.GetValue(s_room) is { } room ? typed.Quantity("--room", room, QuantityKind.Temperature, -20, 60, WindingSetUp.UsualRoomC) : null;
            if (parsed.GetValue(s_json) && parsed.GetValue(s_html))
            {
                typed.Add("--html", "choose one of --json and --html");
            }

            if (parsed.GetValue(s_recipe) is null == parsed.GetValue(s_batch) is null)
            {
                typed.Add("RECIPE", "name a recipe file, or a batch with --batch");
            }

            typed.RefuseIfWrong();
            WindingSetUp setUp = parsed.GetValue(s_batch) is { } batch
                ? await OfBatchAsync(batch, parsed, roomC, desk, cancel).ConfigureAwait(false)
                : await OfRecipeAsync(parsed, roomC, desk, cancel).ConfigureAwait(false);
            await WriteAsync(desk, setUp, parsed.GetValue(s_json), parsed.GetValue(s_html)).ConfigureAwait(false);
            return setUp.Fits ? ExitCode.Done : ExitCode.AnswerIsNo;
        });
        return command;
    }

    private static async Task<WindingSetUp> OfBatchAsync(string name, ParseResult parsed, double? roomC, Desk desk, CancellationToken cancel)
    {
        await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(s_shop), desk, cancel).ConfigureAwait(false);
        Guid id = (await open.FindBatchAsync(name, cancel).ConfigureAwait(false)).Batch.Id;
        string? machine = parsed.GetValue(s_machine) is { } named ? (await open.FindMachineAsync(named, cancel).ConfigureAwait(false)).Name : null;
        BatchSetUp set = await open.Services.SetUps.FindAsync(id, machine, roomC, cancel).ConfigureAwait(false) ?? throw new InvalidOperationException("A batch without standing.");
        return set.SetUp;
    }

    private static async Task<WindingSetUp> OfRecipeAsync(ParseResult parsed, double? roomC, Desk desk, CancellationToken cancel)
    {
        RecipeFile file = await RecipeFile.ReadAsync(parsed.GetValue(s_recipe)!, cancel).ConfigureAwait(false);
        Machine? on = await MachineFile.FindAsync(parsed.GetValue(s_machine), parsed.GetValue(s_shop), desk, cancel).ConfigureAwait(false);
        Prediction prediction = await Progress.ShowAsync(desk, "Forecasting", () => Forecaster.Predict(file.Model, load: null, cancel: cancel), cancel).ConfigureAwait(false);
        return WindingSetUp.For(file.Recipe, file.Model, prediction, parsed.GetValue(s_machine) ?? "", roomC ?? WindingSetUp.UsualRoomC, on) with
        {
            Heading = new SheetHeading(Date: DateOnly.FromDateTime(desk.LocalNow.DateTime)),
        };
    }

    private static async Task WriteAsync(Desk desk, WindingSetUp setUp, bool json, bool html)
    {
        if (json)
        {
            await desk.Output.WriteLineAsync(SetUpJson.Write(setUp)).ConfigureAwait(false);
        }
        else if (html)
        {
            await desk.Output.WriteLineAsync(Papers.SetUp.SetUpSheetHtml.Render(setUp)).ConfigureAwait(false);
        }
        else
        {
            PlainSetUp.Write(desk.Output, setUp);
        }
    }
}
