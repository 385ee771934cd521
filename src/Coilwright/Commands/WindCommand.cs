using System.CommandLine;
using Coilwright.Application.Winding;
using Coilwright.Formats.Winding;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Papers.Pdf;
using Coilwright.Papers.SetUp;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Commands;

/// <summary>coilwright wind RECIPE, or wind --batch NAME: the set-up sheet. Exit 1 when a coil does not fit.</summary>
public static class WindCommand
{
    public static Command Build(CommandContext desk)
    {
        Options options = new();
        Command command = new("wind", "The set-up sheet of the winder")
        {
            options.Recipe,
            options.Batch,
            options.Machine,
            options.Learning.Shop,
            options.Learning.Spool,
            options.Learning.Without,
            options.Room,
            options.Json,
            options.Html,
            options.Pdf,
            options.Size,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                OptionReader typed = new();
                double? roomC = parsed.GetValue(options.Room) is { } room
                    ? typed.Quantity("--room", room, QuantityKind.Temperature, -20, 60, WindingSetUp.UsualRoomC)
                    : null;
                CheckForms(typed, parsed, options);

                if ((parsed.GetValue(options.Recipe) is null) == (parsed.GetValue(options.Batch) is null))
                {
                    typed.Add("RECIPE", "name a recipe file, or a batch with --batch");
                }

                if (
                    parsed.GetValue(options.Batch) is not null
                    && (parsed.GetValue(options.Learning.Spool) is not null || parsed.GetValue(options.Learning.Without))
                )
                {
                    typed.Add(
                        "--batch",
                        "a batch has its own spool and what was learnt as it began",
                        null,
                        "a recipe file with --spool or --without-learning"
                    );
                }

                typed.RefuseIfWrong();
                WindingSetUp setUp = parsed.GetValue(options.Batch) is { } batch
                    ? await OfBatchAsync(batch, parsed, options, roomC, desk, cancel).ConfigureAwait(false)
                    : await OfRecipeAsync(parsed, options, roomC, desk, cancel).ConfigureAwait(false);
                await WriteAsync(desk, setUp, parsed, options, cancel).ConfigureAwait(false);
                return setUp.Fits ? ExitCode.Done : ExitCode.AnswerIsNo;
            }
        );
        return command;
    }

    private static async Task<WindingSetUp> OfBatchAsync(
        string name,
        ParseResult parsed,
        Options options,
        double? roomC,
        CommandContext desk,
        CancellationToken cancel
    )
    {
        await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(options.Learning.Shop), desk, cancel).ConfigureAwait(false);
        Guid id = (await open.FindBatchAsync(name, cancel).ConfigureAwait(false)).Batch.Id;
        string? machine = parsed.GetValue(options.Machine) is { } named
            ? (await open.FindMachineAsync(named, cancel).ConfigureAwait(false)).Name
            : null;
        BatchSetUp set = await open.Services.SetUps.FindAsync(id, machine, roomC, cancel).ConfigureAwait(false)
            ?? throw new InvalidOperationException("A batch without standing.");
        return set.SetUp;
    }

    private static async Task<WindingSetUp> OfRecipeAsync(
        ParseResult parsed,
        Options options,
        double? roomC,
        CommandContext desk,
        CancellationToken cancel
    )
    {
        Recipe recipe = await options.Learning.ReadAsync(parsed.GetValue(options.Recipe)!, parsed, desk, cancel).ConfigureAwait(false);
        Machine? on = await MachineFile
            .FindAsync(parsed.GetValue(options.Machine), parsed.GetValue(options.Learning.Shop), desk, cancel)
            .ConfigureAwait(false);
        WindingSetUp setUp = await Progress
            .ShowAsync(
                desk,
                "Forecasting",
                () =>
                    desk.Use<SetUpRecipe>()
                        .SetUp(recipe, parts: null, parsed.GetValue(options.Machine) ?? "", roomC ?? WindingSetUp.UsualRoomC, on, cancel),
                cancel
            )
            .ConfigureAwait(false);
        return setUp with { Heading = new SheetHeading(Date: DateOnly.FromDateTime(desk.LocalNow.DateTime)) };
    }

    private static void CheckForms(OptionReader typed, ParseResult parsed, Options options)
    {
        bool[] forms = [parsed.GetValue(options.Json), parsed.GetValue(options.Html), parsed.GetValue(options.Pdf) is not null];
        if (forms.Count(form => form) > 1)
        {
            typed.Add("--html", "choose one of --json, --html and --pdf");
        }

        PaperOptions.CheckSize(typed, parsed.GetValue(options.Size));
        if (parsed.GetValue(options.Pdf) is { } path && string.IsNullOrWhiteSpace(path))
        {
            typed.Add("--pdf", "say where the PDF goes");
        }
    }

    private static async Task WriteAsync(
        CommandContext desk,
        WindingSetUp setUp,
        ParseResult parsed,
        Options options,
        CancellationToken cancel
    )
    {
        if (parsed.GetValue(options.Json))
        {
            await desk.Output.WriteLineAsync(SetUpJson.Write(setUp)).ConfigureAwait(false);
        }
        else if (parsed.GetValue(options.Html))
        {
            await desk.Output.WriteLineAsync(SetUpSheetHtmlWriter.Render(setUp)).ConfigureAwait(false);
        }
        else if (parsed.GetValue(options.Pdf) is { } path)
        {
            byte[] pdf = SheetPdf.Render(SetUpSheet.Of(setUp), PaperOptions.PaperOf(parsed.GetValue(options.Size)));
            await PaperOptions.WriteFileAsync(desk, path, pdf, cancel).ConfigureAwait(false);
        }
        else
        {
            SetUpFormatter.Write(desk.Output, setUp);
        }
    }

    private sealed class Options
    {
        public Argument<string?> Recipe { get; } =
            new("RECIPE") { Description = "A recipe file (coilwright.recipe/1); - reads standard input", Arity = ArgumentArity.ZeroOrOne };
        public Option<string?> Batch { get; } =
            new("--batch")
            {
                Description = "A batch of the shop instead of a recipe: its winder, spool, turns and room temperature",
                HelpName = "NAME",
            };
        public Option<string?> Machine { get; } =
            new("--machine")
            {
                Description =
                    "A winder: a machine file (coilwright.machine/1), or its name in the shop of --shop; the batch's own unless said",
                HelpName = "NAME or FILE",
            };
        public LearningOptions Learning { get; } =
            new("The shop whose machines and batches are meant, whose parts are known and whose readings taught it");
        public Option<string?> Room { get; } =
            new("--room")
            {
                Description = "Room temperature the warm figures stand for; for a batch the one in force, else 23 °C, unless said",
                HelpName = "TEMPERATURE",
            };
        public Option<bool> Json { get; } = new("--json") { Description = "Write coilwright.setup/1" };
        public Option<bool> Html { get; } = new("--html") { Description = "Write the printable sheet as one HTML page" };
        public Option<string?> Pdf { get; } = new("--pdf") { Description = "Write the sheet as a PDF to this file", HelpName = "FILE" };
        public Option<string> Size { get; } = PaperOptions.SizeOption();
    }
}
