using System.CommandLine;
using Coilwright.Input;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;

namespace Coilwright.Commands;

/// <summary>The option of <c>read</c> that says what a coil really had, once it was found out.</summary>
internal sealed class ReadCause
{
    private readonly Option<string> _was = new("--was")
    {
        Description = "What the coil really had, once it was found out; nothing else is recorded. One of: " + CauseNames.Allowed,
        HelpName = "CAUSE",
        DefaultValueFactory = _ => "",
    };

    public void AddTo(Command command) => command.Add(_was);

    public bool IsAsked(ParseResult parsed) => parsed.GetRequiredValue(_was).Length > 0;

    /// <summary>Records it, or refuses.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="open">The shop.</param>
    /// <param name="standing">The batch.</param>
    /// <param name="coil">The coil's tag, a reading if one was given too, and who says so.</param>
    /// <param name="output">Takes what was recorded.</param>
    /// <param name="cancel">Ends the work.</param>
    public async Task<int> RecordAsync(
        ParseResult parsed,
        OpenShop open,
        BatchStatus standing,
        (string Tag, string? Reading, string Person) coil,
        TextWriter output,
        CancellationToken cancel
    )
    {
        if (coil.Reading is { } reading)
        {
            throw WrongInputException.About("--was", "give either a reading or what the coil really had", reading);
        }

        IReadOnlyList<Problem> problems = await open
            .Services.Run.RecordEventAsync(
                new BatchEventEntry
                {
                    Id = Guid.NewGuid(),
                    BatchId = standing.Batch.Id,
                    Kind = BatchEventKind.CauseFound,
                    Tag = coil.Tag,
                    Choice = parsed.GetRequiredValue(_was),
                    Person = coil.Person,
                },
                cancel
            )
            .ConfigureAwait(false);
        if (problems.Count > 0)
        {
            throw new WrongInputException("", problems);
        }

        string label = KeyLabels.Of(CauseNames.KeyOf(parsed.GetRequiredValue(_was))!);
        await output
            .WriteLineAsync($"{BatchTags.Tidy(standing.Batch, coil.Tag)}: really {label}. The shop's next coils are weighed with it.")
            .ConfigureAwait(false);
        return ExitCode.Done;
    }
}
