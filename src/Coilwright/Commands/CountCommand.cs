using System.CommandLine;
using System.Runtime.CompilerServices;
using Coilwright.Application.Instruments;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Instruments;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Commands;

/// <summary>
/// coilwright count: turns as an old winder's counter gives them. Exit 1 when they ended short of the stop or cannot be trusted.
/// </summary>
public static class CountCommand
{
    private static readonly Limits s_turns = new(QuantityKind.Turns, 1, TurnCount.Most, "turns", "8,000");

    private sealed record Options(
        Argument<string?> Source,
        AddressOptions Address,
        Option<int> Baud,
        Option<string?> Machine,
        Option<string?> Stop,
        Option<string?> From,
        Option<bool> Pulses,
        SendOptions Send,
        Option<string?> Batch
    );

    public static Command Build(CommandContext desk)
    {
        Options options = new(
            new Argument<string?>("-")
            {
                Description = "Reads standard input (so it does unless --tcp or --serial is given)",
                Arity = ArgumentArity.ZeroOrOne,
            },
            new AddressOptions("as the counter has it", usb: false),
            new Option<int>("--baud")
            {
                Description = "Bits a second of the serial line",
                DefaultValueFactory = _ => 9600,
                HelpName = "N",
            }.AsCount(),
            new("--machine")
            {
                Description = "The winder's file, or its name in a shop: its counter's correction is applied",
                HelpName = "FILE",
            },
            new("--stop") { Description = "Turns at which to stop", HelpName = "N" },
            new("--from") { Description = "What was counted before, where pulses go on", HelpName = "N" },
            new("--pulses") { Description = "Each line is one pulse, whatever it says; otherwise it is the counter's reading" },
            new SendOptions(),
            new("--batch") { Description = "Batch whose coil is wound, for --send", HelpName = "NAME" }
        );
        Command command = new("count", "Turns as they come from the counter of a winder")
        {
            options.Source,
            options.Baud,
            options.Machine,
            options.Stop,
            options.From,
            options.Pulses,
        };
        options.Address.AddTo(command);
        options.Send.AddTo(command);
        command.Add(options.Batch);
        Option<string?> shop = ShopOptions.Shop();
        command.Add(shop);
        command.SetAction(
            async (parsed, cancel) => await CountAsync(desk, options, parsed.GetValue(shop), parsed, cancel).ConfigureAwait(false)
        );
        return command;
    }

    private static async Task<int> CountAsync(
        CommandContext desk,
        Options options,
        string? shop,
        ParseResult parsed,
        CancellationToken cancel
    )
    {
        ReadOutcome<MeterAddress> read = options.Address.Read(parsed);
        MeterAddress? address = read.Value;
        (double? stop, double from) = Check(options, parsed, read);
        Machine? machine = await MachineFile.FindAsync(parsed.GetValue(options.Machine), shop, desk, cancel).ConfigureAwait(false);
        if (parsed.GetValue(options.Machine) is { } named && machine is null)
        {
            throw WrongInputException.About(
                "--machine",
                $"there is no file {named}",
                "a winder's file, or with --shop the name of one there"
            );
        }

        TurnCount count = new(machine?.Counter?.Correction.Value ?? 1, stop, from);
        CountFormatter formatter = new(desk.Output, desk.Error, isCorrected: machine?.Counter is not null);
        foreach (string line in CautionFormatter.Lines(Cautions.For(Job.RunningWinder)))
        {
            await desk.Error.WriteLineAsync(line).ConfigureAwait(false);
        }

        using MeterSender? sender = options.Send.Sender(parsed, parsed.GetValue(options.Batch), "api/counts/");
        CountWatch watch = new(formatter, sender, desk.Time);
        TurnLines lines = new(count, parsed.GetValue(options.Pulses));
        IAsyncEnumerable<CounterLine> source = address is null
            ? InputLines(cancel)
            : desk.Use<CounterLines>().ReadAsync(address, new SerialLine(parsed.GetValue(options.Baud)), cancel);
        await TakeAllAsync(source, lines, watch, isLive: address is not null, desk.Time, cancel).ConfigureAwait(false);
        return formatter.WriteEnd(lines) ? ExitCode.Done : ExitCode.AnswerIsNo;
    }

    private static async Task TakeAllAsync(
        IAsyncEnumerable<CounterLine> source,
        TurnLines lines,
        CountWatch watch,
        bool isLive,
        TimeProvider time,
        CancellationToken cancel
    )
    {
        long start = time.GetTimestamp();
        using CancellationTokenSource ended = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        Task looking = watch.RunAsync(ended.Token);
        try
        {
            await foreach (CounterLine line in source.ConfigureAwait(false))
            {
                // What is piped in says nothing of when it was counted.
                TimeSpan? at = isLive ? time.GetElapsedTime(start) : null;
                if (line.Line is null)
                {
                    watch.Lose(line.Fault!.Message);
                }
                else if (lines.Take(line.Line, at) is { } step)
                {
                    watch.Take(step, at is { } now ? lines.Count.Rpm(now) : 0);
                }
            }
        }
        finally
        {
            await ended.CancelAsync().ConfigureAwait(false);
            await looking.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }

        await watch.LookAsync(cancel).ConfigureAwait(false);
    }

    private static (double? Stop, double From) Check(Options options, ParseResult parsed, ReadOutcome<MeterAddress> address)
    {
        OptionReader typed = new();
        foreach (Problem problem in address.Problems)
        {
            typed.Add(problem.Field, problem.Message, problem.Understood, problem.Allowed);
        }

        string? source = parsed.GetValue(options.Source);
        if (source is not null && (source != "-" || address.Value is not null))
        {
            typed.Add("-", "is the only thing that may stand here, and only without --tcp and --serial", $"\"{source}\"");
        }

        if (parsed.GetValue(options.Baud) is < 50 or > 4_000_000)
        {
            typed.Add("--baud", "is not the speed of a line", null, "50 to 4,000,000");
        }

        double? stop = typed.Turns("--stop", parsed.GetValue(options.Stop), s_turns);
        double? from = typed.Turns("--from", parsed.GetValue(options.From), s_turns with { Min = 0 });
        if (from is not null && !parsed.GetValue(options.Pulses))
        {
            typed.Add("--from", "is for pulses: a counter's reading says by itself where it stands");
        }

        if (options.Send.IsAsked(parsed) != (parsed.GetValue(options.Batch) is not null))
        {
            typed.Add("--send, --batch", "belong together: where the shop is served, and whose coil is wound");
        }

        options.Send.Check(parsed, typed);

        typed.RefuseIfWrong();
        return (stop, from ?? 0);
    }

    private static async IAsyncEnumerable<CounterLine> InputLines([EnumeratorCancellation] CancellationToken cancel)
    {
        while (true)
        {
            // Standard input cannot be given up from inside a read; waiting for it can.
            string? line = await Task.Run(Console.In.ReadLine, cancel).WaitAsync(cancel).ConfigureAwait(false);
            if (line is null)
            {
                yield break;
            }

            yield return new CounterLine(line);
        }
    }
}
