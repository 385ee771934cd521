using System.CommandLine;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Commands;

/// <summary>coilwright read BATCH RESISTANCE: records a coil at the winder. Exit 1 when it is rejected.</summary>
public static class ReadCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> batch = new("BATCH") { Description = "Name of the batch" };
        Argument<string?> resistance = new("RESISTANCE")
        {
            Description = "As the meter says: 7.43k, 7k43, 7430, open",
            Arity = ArgumentArity.ZeroOrOne,
        };
        ReadCause cause = new();
        Option<string?> tag = new("--tag") { Description = "The coil's tag; the next one unless said" };
        Option<string> temperature = new("--temperature")
        {
            Description = "Of the coil; the room's unless said",
            DefaultValueFactory = _ => "",
        };
        Option<string?> room = new("--room") { Description = "Enters the room's temperature first; kept for two hours" };
        Option<string> inductance = new("--inductance") { Description = "If it was measured", DefaultValueFactory = _ => "" };
        Option<string> at = new("--at") { Description = "Frequency of the inductance; 1 kHz unless said", DefaultValueFactory = _ => "" };
        Option<string> turns = new("--turns") { Description = "What the counter showed", DefaultValueFactory = _ => "" };
        Option<string> instrument = new("--instrument") { Description = "Name of the meter", DefaultValueFactory = _ => "" };
        ReadCorrection correction = new();
        EntryOptions entry = new();
        Command command = new("read", "Records a coil and gives the verdict")
        {
            batch,
            resistance,
            tag,
            temperature,
            room,
            inductance,
            at,
            turns,
            instrument,
        };
        entry.AddTo(command);
        correction.AddTo(command);
        cause.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await entry.OpenAsync(parsed, desk, cancel).ConfigureAwait(false);
                BatchStatus standing = await open.FindBatchAsync(parsed.GetRequiredValue(batch), cancel).ConfigureAwait(false);
                if (parsed.GetValue(room) is { } typedRoom)
                {
                    Refuse(
                        await open.Services.Winding.SetRoomTemperatureAsync(typedRoom, entry.Person(parsed), cancel).ConfigureAwait(false)
                    );
                }

                if (cause.IsAsked(parsed))
                {
                    return await cause
                        .RecordAsync(
                            parsed,
                            open,
                            standing,
                            (parsed.GetValue(tag) ?? "", parsed.GetValue(resistance), entry.Person(parsed)),
                            desk.Output,
                            cancel
                        )
                        .ConfigureAwait(false);
                }

                bool corrects = correction.IsAsked(parsed);
                CoilEntry typed = new()
                {
                    Id = Guid.NewGuid(),
                    BatchId = standing.Batch.Id,
                    Tag = parsed.GetValue(tag)
                        ?? (corrects ? null : standing.NextTag)
                        ?? throw WrongInputException.About(
                            "--tag",
                            corrects ? "say which coil is corrected" : $"batch {standing.Batch.Name}: {standing.CountWords}",
                            corrects
                                ? null
                                : $"the tag of a coil to read again; or first coilwright batch more "
                                    + $"{standing.Batch.Name} COUNT --reason TEXT"
                        ),
                    Proposed = !corrects && parsed.GetValue(tag) is null,
                    Resistance = parsed.GetValue(resistance)
                        ?? throw WrongInputException.About("RESISTANCE", "what does the meter say?", "7.43k, 7k43, 7430, open"),
                    Temperature = parsed.GetRequiredValue(temperature),
                    Inductance = parsed.GetRequiredValue(inductance),
                    InductanceAt = parsed.GetRequiredValue(at),
                    Turns = parsed.GetRequiredValue(turns),
                    Instrument = parsed.GetRequiredValue(instrument),
                    Person = entry.Person(parsed),
                };
                WindingService winding = open.Services.Winding;
                CoilEntryOutcome outcome = corrects
                    ? await winding.CorrectCoilAsync(correction.Read(parsed, standing, typed), cancel).ConfigureAwait(false)
                    : await RecordAsync(winding, typed, cancel).ConfigureAwait(false);
                return await AnswerAsync(desk, outcome).ConfigureAwait(false);
            }
        );
        return command;
    }

    /// <summary>Nobody has written a tag on the coil yet: one that another bench used meanwhile gives way to the next.</summary>
    private static async Task<CoilEntryOutcome> RecordAsync(WindingService winding, CoilEntry typed, CancellationToken cancel)
    {
        CoilEntryOutcome outcome = await winding.RecordCoilAsync(typed, cancel).ConfigureAwait(false);
        while (outcome.Problems is [{ Field: "tag", Readings: [{ } free] }] && typed.Proposed)
        {
            typed = typed with { Tag = free };
            outcome = await winding.RecordCoilAsync(typed, cancel).ConfigureAwait(false);
        }

        return outcome;
    }

    private static async Task<int> AnswerAsync(CommandContext desk, CoilEntryOutcome outcome)
    {
        Refuse(outcome.Problems);
        CoilDossier coil = outcome.Coil ?? throw new InvalidOperationException("An entry without problems has a coil.");
        string spool = coil.Origin.Doubt.Length > 0 ? $" Spool {coil.Origin.Spool}: {coil.Origin.Doubt}." : "";
        await desk
            .Output.WriteLineAsync(
                $"{coil.Tag}: {VerdictFormatter.Word(coil.Verdict.Kind)}. {outcome.Echo}. {VerdictFormatter.Why(coil.Verdict)}.{spool}"
            )
            .ConfigureAwait(false);
        foreach (string rule in outcome.Signals)
        {
            await desk
                .Output.WriteLineAsync($"Signal of the run at {coil.Tag}: {rule}; {VerdictAdvice.DriftChecks}.")
                .ConfigureAwait(false);
        }

        if (outcome.NextTag is { } next)
        {
            await desk.Output.WriteLineAsync($"Next: {next}").ConfigureAwait(false);
        }

        return coil.Verdict.Kind == VerdictKind.Reject ? ExitCode.AnswerIsNo : ExitCode.Done;
    }

    private static void Refuse(IReadOnlyList<Problem> problems)
    {
        if (problems.Count > 0)
        {
            throw new WrongInputException("", problems);
        }
    }
}
