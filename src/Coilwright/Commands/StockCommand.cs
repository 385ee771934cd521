using System.CommandLine;
using Coilwright.Formats.Records;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Stock;

namespace Coilwright.Commands;

/// <summary>coilwright stock list, add, measure, weigh, show: the shop's wire.</summary>
public static class StockCommand
{
    public static Command Build(CommandContext desk) =>
        new("stock", "The shop's wire") { BuildList(desk), BuildAdd(desk), BuildMeasure(desk), BuildWeigh(desk), BuildShow(desk) };

    private static Command BuildList(CommandContext desk)
    {
        Option<string?> shop = ShopOptions.Shop();
        Option<bool> json = ShopOptions.Json();
        Command command = new("list", "Every spool, what it reads and what is left on it") { shop, json };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                IReadOnlyList<SpoolStatus> shelf = await open.Services.Stock.ShelfByCoilAsync(cancel).ConfigureAwait(false);
                if (parsed.GetValue(json))
                {
                    await desk.Output.WriteLineAsync(StockJson.Write(shelf)).ConfigureAwait(false);
                }
                else
                {
                    StockFormatter.WriteShelf(desk.Output, shelf);
                }

                return ExitCode.Done;
            }
        );
        return command;
    }

    private static Command BuildAdd(CommandContext desk)
    {
        Argument<string> label = new("SPOOL") { Description = "Label of the spool" };
        Option<string> gauge = new("--gauge") { Description = "For example \"AWG 42\" or \"0.063 mm\"", Required = true };
        Option<string> insulation = new("--insulation") { Description = "Enamel", DefaultValueFactory = _ => "plain-enamel" };
        Option<string> build = new("--build") { Description = "Film", DefaultValueFactory = _ => "single" };
        Option<string> received = new("--received")
        {
            Description = "Net mass as received, for example 2270g",
            DefaultValueFactory = _ => "",
        };
        Option<string> tare = new("--tare") { Description = "Mass of the empty spool", DefaultValueFactory = _ => "" };
        Option<string> lot = new("--lot") { Description = "What was bought together", DefaultValueFactory = _ => "" };
        Option<string> supplier = new("--supplier") { Description = "What the supplier's label says", DefaultValueFactory = _ => "" };
        EntryOptions entry = new();
        Command command = new("add", "Takes a spool in") { label, gauge, insulation, build, received, tare, lot, supplier };
        entry.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await entry.OpenOrCreateAsync(parsed, desk, cancel).ConfigureAwait(false);
                SpoolRecord spool = new()
                {
                    Id = Guid.NewGuid(),
                    Label = parsed.GetRequiredValue(label),
                    Lot = parsed.GetRequiredValue(lot),
                    SupplierText = parsed.GetRequiredValue(supplier),
                    Gauge = parsed.GetRequiredValue(gauge),
                    Insulation = parsed.GetRequiredValue(insulation),
                    Build = parsed.GetRequiredValue(build),
                    Person = entry.Person(parsed),
                    TimeUtc = desk.Time.GetUtcNow(),
                };
                Refuse(
                    await open
                        .Services.Stock.TakeInAsync(spool, parsed.GetRequiredValue(received), parsed.GetRequiredValue(tare), cancel)
                        .ConfigureAwait(false)
                );
                return await ShowAsync(open, spool.Label, null, 0, false, desk, cancel).ConfigureAwait(false);
            }
        );
        return command;
    }

    private static Command BuildMeasure(CommandContext desk)
    {
        Argument<string> label = new("SPOOL") { Description = "Label of the spool" };
        Option<string> length = new("--length") { Description = "Length measured, for example 10m", Required = true };
        Option<string> resistance = new("--resistance") { Description = "Its resistance, for example 56.2", Required = true };
        Option<string> temperature = new("--temperature")
        {
            Description = "Its temperature; without it the result is doubtful by 2 %",
            DefaultValueFactory = _ => "",
        };
        Option<string?> recipe = new("--recipe") { Description = "A recipe of the shop to decide for: keep turns or keep ohms" };
        EntryOptions entry = new();
        Command command = new("measure", "Records a measured length of a spool") { label, length, resistance, temperature, recipe };
        entry.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await entry.OpenAsync(parsed, desk, cancel).ConfigureAwait(false);
                Refuse(
                    await open
                        .Services.Stock.MeasureAsync(
                            Guid.NewGuid(),
                            parsed.GetRequiredValue(label),
                            parsed.GetRequiredValue(length),
                            parsed.GetRequiredValue(resistance),
                            parsed.GetRequiredValue(temperature),
                            entry.Person(parsed),
                            cancel
                        )
                        .ConfigureAwait(false)
                );
                int exit = await ShowAsync(open, parsed.GetRequiredValue(label), parsed.GetValue(recipe), 0, false, desk, cancel)
                    .ConfigureAwait(false);
                foreach (string line in CautionFormatter.Lines(Cautions.For(Job.MeasuringWire)))
                {
                    await desk.Output.WriteLineAsync(line).ConfigureAwait(false);
                }

                return exit;
            }
        );
        return command;
    }

    private static Command BuildWeigh(CommandContext desk)
    {
        Argument<string> label = new("SPOOL") { Description = "Label of the spool" };
        Option<string> gross = new("--gross") { Description = "Mass of spool and wire, for example 412g", Required = true };
        EntryOptions entry = new();
        Command command = new("weigh", "Records the mass of a spool with its wire") { label, gross };
        entry.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await entry.OpenAsync(parsed, desk, cancel).ConfigureAwait(false);
                Refuse(
                    await open
                        .Services.Stock.WeighAsync(
                            Guid.NewGuid(),
                            parsed.GetRequiredValue(label),
                            parsed.GetRequiredValue(gross),
                            entry.Person(parsed),
                            cancel
                        )
                        .ConfigureAwait(false)
                );
                return await ShowAsync(open, parsed.GetRequiredValue(label), null, 0, false, desk, cancel).ConfigureAwait(false);
            }
        );
        return command;
    }

    private static Command BuildShow(CommandContext desk)
    {
        Argument<string> label = new("SPOOL") { Description = "Label of the spool" };
        Option<string?> recipe = new("--recipe") { Description = "A recipe of the shop: coils left, keep turns or keep ohms" };
        Option<int> coils = new Option<int>("--coils")
        {
            Description = "Will it finish so many coils of the recipe? Exit 1 when not",
        }.AsCount();
        Option<bool> json = ShopOptions.Json();
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("show", "One spool, what it reads, what is left, and what took it") { label, recipe, coils, json, shop };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                return await ShowAsync(
                        open,
                        parsed.GetRequiredValue(label),
                        parsed.GetValue(recipe),
                        parsed.GetValue(coils),
                        parsed.GetValue(json),
                        desk,
                        cancel
                    )
                    .ConfigureAwait(false);
            }
        );
        return command;
    }

    private static async Task<int> ShowAsync(
        OpenShop open,
        string label,
        string? recipe,
        int coils,
        bool json,
        CommandContext desk,
        CancellationToken cancel
    )
    {
        SpoolStatus? spool = await open.Services.Stock.StatusAsync(label, cancel).ConfigureAwait(false);
        if (spool is null)
        {
            string names = string.Join(
                ", ",
                (await open.Services.Records.Stock.SpoolsAsync(cancel).ConfigureAwait(false)).Take(20).Select(one => one.Label)
            );
            throw WrongInputException.About("SPOOL", $"there is no spool \"{label}\" in this shop", names.Length > 0 ? names : "none yet");
        }

        CoilPlan? plan = null;
        if (recipe is not null)
        {
            RevisionRecord revision = await open.FindRecipeAsync(recipe, null, cancel).ConfigureAwait(false);
            plan = CoilPlan.Of(
                revision,
                RecipeReader.Read(revision.Json).OrRefuse(revision.RecipeName).Coils[0].Name,
                await open.Services.Recipes.KnownPartsAsync(cancel).ConfigureAwait(false)
            );
        }

        if (json)
        {
            await desk.Output.WriteLineAsync(StockJson.Write([spool], plan, coils)).ConfigureAwait(false);
        }
        else
        {
            StockFormatter.WriteSpool(desk.Output, spool, plan, coils);
        }

        return coils > 0 && plan is not null && spool.WillFinish(coils, plan.SetUp.WireLength.Value) == "no"
            ? ExitCode.AnswerIsNo
            : ExitCode.Done;
    }

    private static void Refuse(IReadOnlyList<Problem> problems)
    {
        if (problems.Count > 0)
        {
            throw new WrongInputException("", problems);
        }
    }
}
