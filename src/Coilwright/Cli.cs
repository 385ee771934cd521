using System.CommandLine;
using System.CommandLine.Parsing;
using Coilwright.Application.Shops;
using Coilwright.Commands;
using Coilwright.Input;
using Coilwright.Workshop.Entry;

namespace Coilwright;

/// <summary>The command line: finds the command, runs it, and turns whatever happens into an exit code and words.</summary>
public static class Cli
{
    /// <summary>How long a command that was stopped may take to write what it found.</summary>
    private static readonly TimeSpan s_toFinish = TimeSpan.FromSeconds(20);

    /// <summary>Runs one command line in this process.</summary>
    /// <param name="args">Arguments without the program's name.</param>
    /// <param name="output">Where answers go.</param>
    /// <param name="error">Where messages go.</param>
    /// <param name="time">Clock for records; the system's unless a test hands in another.</param>
    /// <param name="input">Where passwords are read; the terminal unless a test hands in another.</param>
    /// <param name="cancel">Stops a command, as Ctrl+C does.</param>
    /// <returns>An <see cref="ExitCode"/>.</returns>
    public static async Task<int> RunAsync(
        string[] args,
        TextWriter output,
        TextWriter error,
        TimeProvider? time = null,
        TextReader? input = null,
        CancellationToken cancel = default
    )
    {
        using CommandContext desk = new(output, error, time ?? TimeProvider.System) { Input = input };
        try
        {
            ParseResult parsed = BuildRoot(desk).Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
            if (parsed.Errors.Count > 0 && !AsksForHelp(args))
            {
                foreach (string message in parsed.Errors.Select(failure => failure.Message).Distinct(StringComparer.Ordinal))
                {
                    await error.WriteLineAsync("coilwright: " + message).ConfigureAwait(false);
                }

                await error.WriteLineAsync($"See: coilwright {CommandPath(parsed)}--help").ConfigureAwait(false);
                return ExitCode.WrongInput;
            }

            RefuseLongTexts(parsed);
            return await parsed
                .InvokeAsync(
                    new InvocationConfiguration
                    {
                        Output = output,
                        Error = error,
                        EnableDefaultExceptionHandler = false,
                        ProcessTerminationTimeout = s_toFinish,
                    },
                    cancel
                )
                .ConfigureAwait(false);
        }
        catch (WrongInputException wrong)
        {
            ProblemFormatter.Write(error, wrong.Source, wrong.Problems);
            return ExitCode.WrongInput;
        }
        catch (UnreadableRecordException record)
        {
            await error
                .WriteLineAsync($"coilwright: this cannot be shown: {record.Message}. What to do: {record.ToDo}.")
                .ConfigureAwait(false);
            return ExitCode.WrongInput;
        }
        catch (OperationCanceledException)
        {
            await error.WriteLineAsync("coilwright: stopped").ConfigureAwait(false);
            return ExitCode.Stopped;
        }
        catch (Exception failure) when (ShopFault.Of(failure) is { } fault)
        {
            await error.WriteLineAsync("coilwright: " + fault.Words).ConfigureAwait(false);
            return ExitCode.WrongInput;
        }
        catch (Exception failure)
        {
            await error
                .WriteLineAsync($"coilwright: this is our mistake, not yours: {failure.GetType().Name}: {failure.Message}")
                .ConfigureAwait(false);
            await error.WriteLineAsync("Nothing was lost. Please report it with the command and its input.").ConfigureAwait(false);
            if (Environment.GetEnvironmentVariable("COILWRIGHT_TRACE") == "1")
            {
                await error.WriteLineAsync(failure.ToString()).ConfigureAwait(false);
            }

            return ExitCode.InternalError;
        }
    }

    /// <summary>Every command the program knows.</summary>
    public static RootCommand BuildRoot(CommandContext desk)
    {
        RootCommand root = new("Coilwright: from wire to verdict, for people who design and make magnetic pickups.")
        {
            PredictCommand.Build(desk),
            RespondCommand.Build(desk),
            ListenCommand.Build(desk),
            FitCommand.Build(desk),
            ResonanceCommand.Build(desk),
            SweepCommand.Build(desk),
            MeterCommand.Build(desk),
            CountCommand.Build(desk),
            WindCommand.Build(desk),
            JudgeCommand.Build(desk),
            GaugeCommand.Build(desk),
            PairCommand.Build(desk),
            SpreadCommand.Build(desk),
            SolveCommand.Build(desk),
            IdentifyCommand.Build(desk),
            RecipeCommand.Build(desk),
            BatchCommand.Build(desk),
            ReadCommand.Build(desk),
            LearnCommand.Build(desk),
            MachineCommand.Build(desk),
            StockCommand.Build(desk),
            PieceCommand.Build(desk),
            SetCommand.Build(desk),
            BasketCommand.Build(desk),
            InkCommand.Build(desk),
            ClocksCommand.Build(desk),
            TraceCommand.Build(desk),
            RecallCommand.Build(desk),
            CustomerCommand.Build(desk),
            RulesCommand.Build(desk),
            SampleCommand.Build(desk),
            LotsCommand.Build(desk),
            PlanCommand.Build(desk),
            PaperCommand.Build(desk),
            GuideCommand.Build(desk),
            BackupCommand.Build(desk),
            RestoreCommand.Build(desk),
            VerifyCommand.Build(desk),
            ExportCommand.Build(desk),
            ImportCommand.Build(desk),
            MoveCommand.Build(desk),
            UserCommand.Build(desk),
            TokenCommand.Build(desk),
            ServeCommand.Build(desk),
            DemoCommand.Build(desk),
        };
        return root;
    }

    /// <summary>Names, reasons and tags are kept for good: the same limits as on pages.</summary>
    private static void RefuseLongTexts(ParseResult parsed)
    {
        Problem[] wrong =
        [
            .. TextLimit.Check(
                parsed
                    .CommandResult.Children.OfType<OptionResult>()
                    .SelectMany(option => option.Tokens.Select(token => (option.Option.Name, (string?)token.Value)))
            ),
        ];
        if (wrong.Length > 0)
        {
            throw new WrongInputException("", wrong);
        }
    }

    private static bool AsksForHelp(string[] args) => args.Any(argument => argument is "--help" or "-h" or "-?" or "--version");

    private static string CommandPath(ParseResult parsed)
    {
        List<string> names = [];
        for (SymbolResult? at = parsed.CommandResult; at is CommandResult { Command: not RootCommand } command; at = at.Parent)
        {
            names.Insert(0, command.Command.Name);
        }

        return string.Concat(names.Select(name => name + " "));
    }
}
