using System.CommandLine;
using Coilwright.Application.Learning;
using Coilwright.Formats.Learning;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Learning;

namespace Coilwright.Commands;

/// <summary>
/// coilwright learn --propose, --accept N, --decline N, --close LINE or --list: what the shop's readings teach its forecasts. Exit 1 when
/// nothing is proposed.
/// </summary>
internal static class LearnCommand
{
    public static Command Build(CommandContext desk)
    {
        Options options = new();
        Command command = new("learn", "What the shop's readings teach its forecasts: proposed, accepted, ended")
        {
            options.Propose,
            options.Accept,
            options.Decline,
            options.Close,
            options.List,
            options.Reason,
            options.Json,
        };
        options.Entry.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                OptionReader typed = new();
                Check(typed, parsed, options);
                typed.RefuseIfWrong();
                await using OpenShop open = await OpenAsync(options, parsed, desk, cancel).ConfigureAwait(false);
                LearningStatus status = await DoAsync(open.Use<LearnFromReadings>(), parsed, options, cancel).ConfigureAwait(false);
                if (parsed.GetValue(options.Json))
                {
                    await desk.Output.WriteLineAsync(LearntJson.Write(status)).ConfigureAwait(false);
                }
                else
                {
                    LearningFormatter.Write(desk.Output, status, parsed.GetValue(options.Propose));
                }

                return parsed.GetValue(options.Propose) && status.Waiting is null ? ExitCode.AnswerIsNo : ExitCode.Done;
            }
        );
        return command;
    }

    /// <summary>A list stores nothing, so it asks nothing about the clock.</summary>
    private static Task<OpenShop> OpenAsync(Options options, ParseResult parsed, CommandContext desk, CancellationToken cancel) =>
        parsed.GetValue(options.List) ? options.Entry.LookAsync(parsed, desk, cancel) : options.Entry.OpenAsync(parsed, desk, cancel);

    private static async Task<LearningStatus> DoAsync(
        LearnFromReadings learn,
        ParseResult parsed,
        Options options,
        CancellationToken cancel
    )
    {
        string person = options.Entry.Person(parsed),
            reason = parsed.GetValue(options.Reason) ?? "";
        if (parsed.GetValue(options.Propose))
        {
            return await learn.ProposeAsync(reason, person, cancel).ConfigureAwait(false);
        }

        IReadOnlyList<Problem> problems = [];
        if (parsed.GetValue(options.Accept) is { } accept)
        {
            problems = await learn.AcceptAsync(accept, reason, person, cancel).ConfigureAwait(false);
        }
        else if (parsed.GetValue(options.Decline) is { } decline)
        {
            problems = await learn.DeclineAsync(decline, reason, person, cancel).ConfigureAwait(false);
        }
        else if (parsed.GetValue(options.Close) is { } line)
        {
            problems = await learn.CloseAsync(line, reason, person, cancel).ConfigureAwait(false);
        }

        ShopAction.Refuse([.. problems.Select(problem => problem with { Field = "--" + problem.Field })]);
        return await learn.ListAsync(cancel).ConfigureAwait(false);
    }

    private static void Check(OptionReader typed, ParseResult parsed, Options options)
    {
        bool[] acts =
        [
            parsed.GetValue(options.Propose),
            parsed.GetValue(options.Accept) is not null,
            parsed.GetValue(options.Decline) is not null,
            parsed.GetValue(options.Close) is not null,
            parsed.GetValue(options.List),
        ];
        if (acts.Count(act => act) != 1)
        {
            typed.Add("learn", "say one thing to do", null, "--propose, --accept N, --decline N, --close LINE or --list");
        }

        bool decides = acts[1] || acts[2] || acts[3];
        if (decides && string.IsNullOrWhiteSpace(parsed.GetValue(options.Reason)))
        {
            typed.Add("--reason", "say why: it is kept with the record", null, "a few words");
        }

        if (acts[4] && parsed.GetValue(options.Reason) is not null)
        {
            typed.Add("--reason", "a list needs no reason", null, "--propose, --accept N, --decline N or --close LINE");
        }
    }

    private sealed class Options
    {
        public Option<bool> Propose { get; } =
            new("--propose") { Description = "Works out what all coils show, and keeps it as a numbered proposal when it is new" };
        public Option<int?> Accept { get; } =
            new Option<int?>("--accept")
            {
                Description = "The proposed set of this number holds for later forecasts",
                HelpName = "N",
            }.AsCount();
        public Option<int?> Decline { get; } =
            new Option<int?>("--decline") { Description = "The proposed set of this number does not hold", HelpName = "N" }.AsCount();
        public Option<string?> Close { get; } =
            new("--close")
            {
                Description = "Ends a line, for example of a bobbin with a new tool: coils from now on begin another",
                HelpName = "LINE",
            };
        public Option<bool> List { get; } = new("--list") { Description = "Sets and lines on record" };
        public Option<string?> Reason { get; } =
            new("--reason") { Description = "Why, for --accept, --decline and --close", HelpName = "TEXT" };
        public EntryOptions Entry { get; } = new();
        public Option<bool> Json { get; } = new("--json") { Description = "Write coilwright.learnt/1" };
    }
}
