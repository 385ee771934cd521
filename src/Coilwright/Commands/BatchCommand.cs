using System.CommandLine;
using Coilwright.Formats.Judgements;
using Coilwright.Formats.Records;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Summaries;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Commands;

/// <summary>coilwright batch list, start, show, more, close, reopen, undo-reading: production runs.</summary>
public static class BatchCommand
{
    public static Command Build(CommandContext desk) =>
        new("batch", "Production runs of the shop")
        {
            BuildList(desk),
            BuildStart(desk),
            BuildShow(desk),
            BatchNoteCommand.Build(desk),
            BatchNoteCommand.BuildRun(desk),
            BatchMoreCommand.Build(desk),
            BatchCloseCommand.Build(desk),
            BatchCloseCommand.BuildReopen(desk),
            BatchUndoReadingCommand.Build(desk),
        };

    private static Command BuildList(CommandContext desk)
    {
        Option<string?> shop = ShopOptions.Shop();
        Option<bool> json = ShopOptions.Json();
        Command command = new("list", "Every batch and how far it is") { shop, json };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                IReadOnlyList<RecordStatus<BatchLine>> all = await open.Services.Summaries.EveryAsync(cancel).ConfigureAwait(false);
                await UnreadableFormatter.WriteAsync(desk.Error, all.Unreadable()).ConfigureAwait(false);
                if (parsed.GetValue(json))
                {
                    IReadOnlyList<BatchRecord> records = await open.Services.Records.Batches.AllAsync(cancel).ConfigureAwait(false);
                    Dictionary<Guid, string> names = records.ToDictionary(batch => batch.Id, batch => batch.Name);
                    await desk.Output.WriteLineAsync(BatchListJson.Write(all, names)).ConfigureAwait(false);
                    return ExitCode.Done;
                }

                Table table = new("batch", "recipe", "coil", "done", "pass", "hold", "reject");
                foreach (BatchLine one in all.Readable())
                {
                    table.Add(
                        one.Batch.Name,
                        $"{one.RecipeName} {one.RevisionLetter}",
                        one.Batch.CoilName,
                        one.Summary.CountWords,
                        $"{one.Summary.Pass}",
                        $"{one.Summary.Hold}",
                        $"{one.Summary.Reject}"
                    );
                }

                table.Write(desk.Output, "");
                return ExitCode.Done;
            }
        );
        return command;
    }

    private static Command BuildStart(CommandContext desk)
    {
        Argument<string> recipe = new("RECIPE") { Description = "Name of a recipe in the shop; its newest released revision is taken" };
        Option<string> name = new("--name") { Description = "What the shop calls the batch", Required = true };
        Option<int> quantity = new Option<int>("--quantity") { Description = "Coils wanted, 1 to 10,000", Required = true }.AsCount();
        Option<string?> coil = new("--coil") { Description = "Which coil of the recipe; the first unless said" };
        Option<string> prefix = new("--tags") { Description = "Prefix of the tags: C- gives C-001", DefaultValueFactory = _ => "C-" };
        Option<string> spool = new("--spool") { Description = "Label of the spool", DefaultValueFactory = _ => "" };
        Option<string> machine = new("--machine") { Description = "Name of the winder", DefaultValueFactory = _ => "" };
        EntryOptions entry = new();
        Command command = new("start", "Begins a batch on a released revision") { recipe, name, quantity, coil, prefix, spool, machine };
        entry.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await entry.OpenAsync(parsed, desk, cancel).ConfigureAwait(false);
                RevisionRecord revision = await open.FindReleasedAsync(parsed.GetRequiredValue(recipe), cancel).ConfigureAwait(false);
                Recipe read = RecipeReader.Read(revision.Json).OrRefuse(revision.RecipeName);
                BatchRecord batch = new(
                    Guid.NewGuid(),
                    parsed.GetRequiredValue(name),
                    revision.RecipeId,
                    revision.Number,
                    parsed.GetValue(coil) ?? read.Coils[0].Name,
                    parsed.GetRequiredValue(quantity),
                    parsed.GetRequiredValue(prefix),
                    parsed.GetRequiredValue(spool),
                    parsed.GetRequiredValue(machine),
                    entry.Person(parsed),
                    desk.Time.GetUtcNow()
                );
                IReadOnlyList<Problem> problems = await open.Services.Winding.BeginBatchAsync(batch, cancel).ConfigureAwait(false);
                if (problems.Count > 0)
                {
                    throw new WrongInputException("", problems);
                }

                await WarnAsync(desk, revision, read, await open.Services.Recipes.KnownPartsAsync(cancel).ConfigureAwait(false))
                    .ConfigureAwait(false);

                await desk
                    .Output.WriteLineAsync(
                        $"Batch {batch.Name} begun: {batch.Quantity} coils \"{batch.CoilName}\" of {revision.RecipeName}, "
                            + $"revision {revision.Letter}"
                    )
                    .ConfigureAwait(false);
                return ExitCode.Done;
            }
        );
        return command;
    }

    /// <summary>Tells what should be looked at before anything is wound to a revision.</summary>
    internal static async Task WarnAsync(CommandContext desk, RevisionRecord revision, Recipe recipe, KnownParts parts)
    {
        foreach (Problem warning in BeforeWinding.Warnings(revision, recipe, parts))
        {
            await desk.Error.WriteLineAsync("Before winding starts: " + ProblemFormatter.Line(warning)).ConfigureAwait(false);
        }
    }

    private static Command BuildShow(CommandContext desk)
    {
        Argument<string> batch = new("BATCH") { Description = "Name of the batch" };
        Option<string?> shop = ShopOptions.Shop();
        Option<bool> json = ShopOptions.Json();
        Command command = new("show", "Every coil of a batch with its verdict") { batch, shop, json };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                BatchRecord record = await open.FindBatchRecordAsync(parsed.GetRequiredValue(batch), cancel).ConfigureAwait(false);
                RecordStatus<BatchStatus> status = await RecordStatus
                    .ReadAsync("Batch " + record.Name, () => open.FindBatchAsync($"{record.Id}", cancel), record.Id)
                    .ConfigureAwait(false);
                if (status.Value is not { } standing)
                {
                    StoredBatch? stored = await open.Services.Winding.StoredAsync(record.Id, cancel).ConfigureAwait(false);
                    BatchFormatter.WriteStored(desk.Output, parsed.GetValue(json) ? null : stored);
                    await UnreadableFormatter.WriteAsync(desk.Error, [status.Fault!]).ConfigureAwait(false);
                    return ExitCode.WrongInput;
                }

                if (parsed.GetValue(json))
                {
                    await desk
                        .Output.WriteLineAsync(
                            JudgementJson.Write(
                                [.. standing.Coils.Select(coil => new JudgedPiece(coil.Tag, coil.Verdict))],
                                BatchChart.Of(standing.Coils.Select(coil => (coil.Tag, coil.Verdict)))
                            )
                        )
                        .ConfigureAwait(false);
                }
                else
                {
                    BatchFormatter.Write(desk.Output, standing);
                }

                return ExitCode.Done;
            }
        );
        return command;
    }
}
