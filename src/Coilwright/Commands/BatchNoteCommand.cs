using System.CommandLine;
using System.Globalization;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Commands;

/// <summary>coilwright batch note BATCH WHAT, batch tags BATCH, batch run BATCH: what happens at the winder besides readings.</summary>
internal static class BatchNoteCommand
{
    private static readonly Dictionary<string, BatchEventKind> s_words = new(StringComparer.Ordinal)
    {
        ["begin"] = BatchEventKind.Begun,
        ["pause"] = BatchEventKind.Paused,
        ["break"] = BatchEventKind.Broken,
        ["resume"] = BatchEventKind.Resumed,
        ["splice"] = BatchEventKind.Spliced,
        ["finish-low"] = BatchEventKind.FinishedLow,
        ["scrap"] = BatchEventKind.Scrapped,
        ["spool"] = BatchEventKind.SpoolTaken,
        ["release"] = BatchEventKind.Released,
        ["undo"] = BatchEventKind.Undone,
    };

    public static Command Build(CommandContext desk)
    {
        Argument<string> batch = new("BATCH") { Description = "Name of the batch" };
        Argument<string> what = new("WHAT") { Description = string.Join(", ", s_words.Keys) };
        what.AcceptOnlyFromAmong([.. s_words.Keys]);
        Option<string> tag = Text("--tag", "The coil; the only one it can mean unless said"),
            counter = Text("--counter", "What the counter shows");
        Option<string> spool = Text("--spool", "Label of the spool put on"),
            choice = Text("--choice", "hold-turns or hold-ohms"),
            turns = Text("--turns", "Turns to wind when ohms are held");
        Option<string> machine = Text("--machine", "Name of the winder"),
            note = Text("--note", "Why");
        EntryOptions entry = new();
        Command command = new("note", "Notes what happened at the winder, and shows how the batch stands")
        {
            batch,
            what,
            tag,
            counter,
            spool,
            choice,
            turns,
            machine,
            note,
        };
        entry.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await entry.OpenAsync(parsed, desk, cancel).ConfigureAwait(false);
                Guid id = (await open.FindBatchAsync(parsed.GetRequiredValue(batch), cancel).ConfigureAwait(false)).Batch.Id;
                BatchEventKind kind = s_words[parsed.GetRequiredValue(what)];
                string who = entry.Person(parsed);
                IReadOnlyList<Problem> problems =
                    kind == BatchEventKind.Undone
                        ? await open.Services.Run.UndoLastAsync(id, Guid.NewGuid(), who, cancel).ConfigureAwait(false)
                        : await open
                            .Services.Run.RecordEventAsync(
                                new BatchEventEntry
                                {
                                    Id = Guid.NewGuid(),
                                    BatchId = id,
                                    Kind = kind,
                                    Tag = parsed.GetRequiredValue(tag),
                                    Counter = parsed.GetRequiredValue(counter),
                                    Spool = parsed.GetRequiredValue(spool),
                                    Choice = parsed.GetRequiredValue(choice),
                                    Turns = parsed.GetRequiredValue(turns),
                                    Machine = parsed.GetRequiredValue(machine),
                                    Note = parsed.GetRequiredValue(note),
                                    Person = who,
                                },
                                cancel
                            )
                            .ConfigureAwait(false);
                if (problems.Count > 0)
                {
                    throw new WrongInputException("", problems);
                }

                WriteRun(
                    desk.Output,
                    await open.Services.Run.StatusAsync(id, cancel).ConfigureAwait(false)
                        ?? throw new InvalidOperationException("A batch without standing.")
                );
                return ExitCode.Done;
            }
        );
        return command;
    }

    public static Command BuildRun(CommandContext desk)
    {
        Argument<string> batch = new("BATCH") { Description = "Name of the batch" };
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("run", "What is on the spindles, and what can be done about a break") { batch, shop };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                Guid id = (await open.FindBatchAsync(parsed.GetRequiredValue(batch), cancel).ConfigureAwait(false)).Batch.Id;
                WriteRun(
                    desk.Output,
                    await open.Services.Run.StatusAsync(id, cancel).ConfigureAwait(false)
                        ?? throw new InvalidOperationException("A batch without standing.")
                );
                return ExitCode.Done;
            }
        );
        return command;
    }

    private static void WriteRun(TextWriter writer, BatchProgress run)
    {
        writer.WriteLine(
            $"Batch {run.Status.Batch.Name}: {run.Status.CountWords}, "
                + $"{(run.History.Release is null ? "series not released yet" : "series released")}"
                + (run.History.Spool.Length > 0 ? $", spool {run.History.Spool}" : "")
        );
        foreach (CoilOnSpindle coil in run.History.OnSpindles)
        {
            string at = coil.Turns is { } turns
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $" at {coil.Counter:#,##0} counted, {turns:#,##0} of {run.WantedTurns:#,##0} real turns"
                )
                : "";
            writer.WriteLine(
                $"  {coil.Tag} on {(coil.Machine.Length > 0 ? coil.Machine : "a winder")}: "
                    + $"{coil.State.ToString().ToLowerInvariant()}{at}{(coil.Spliced ? ", spliced" : "")}"
            );
            if (coil is { State: SpindleState.Broken, Turns: { } broken })
            {
                foreach (BreakChoice choice in BreakChoice.At(run.Plan, run.Plan.SetUp with { Turns = run.WantedTurns }, broken))
                {
                    writer.WriteLine("    " + choice.Words);
                }
            }
        }

        string none = run.Status.Closing is { } closing ? $"  {closing.Sentence}" : "  every coil is wound or on a spindle";
        writer.WriteLine(run.NextToBegin is { } next ? $"  next to begin: {next}" : none);
        writer.WriteLine($"  events: {string.Join("; ", run.History.InForce.TakeLast(6).Select(one => one.Sentence))}");
        foreach (string line in CautionFormatter.Lines(Cautions.For(Job.Winding)))
        {
            writer.WriteLine(line);
        }
    }

    private static Option<string> Text(string name, string description) =>
        new(name) { Description = description, DefaultValueFactory = _ => "" };
}
