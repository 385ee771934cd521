using System.CommandLine;
using Coilwright.Application.Instruments;
using Coilwright.Bench.Meters;
using Coilwright.Formats.Instruments;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Commands;

/// <summary>coilwright meter list, read, watch: what an instrument on the bench reads.</summary>
public static class MeterCommand
{
    public static Command Build(CommandContext desk) =>
        new("meter", "What an instrument on the bench reads") { List(desk), Read(desk), Watch(desk) };

    private static Command List(CommandContext desk)
    {
        Command command = new("list", "The profiles that come with the program");
        command.SetAction(_ =>
        {
            Table table = new("profile", "asks", "reads", "for");
            foreach ((string key, MeterProfile profile) in MeterProfiles.All)
            {
                table.Add(key, profile.Ask.Length > 0 ? profile.Ask : "(sends by itself)", profile.Unit.Symbol, profile.Name);
            }

            table.Write(desk.Output);
            return ExitCode.Done;
        });
        return command;
    }

    private static Command Read(CommandContext desk)
    {
        MeterOptions meter = new();
        Option<bool> json = new("--json") { Description = "Write coilwright.meterReading/1" };
        Command command = new("read", "One reading, when the value stands still. Exit 1 when it does not") { json };
        meter.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                (MeterProfile profile, MeterAddress address) = await meter.ReadAsync(parsed, cancel).ConfigureAwait(false);
                try
                {
                    MeterReadingOutcome read = await desk.Use<ReadMeter>().ReadAsync(profile, address, cancel).ConfigureAwait(false);
                    if (read.Note.Length > 0)
                    {
                        await desk.Error.WriteLineAsync("note: " + read.Note).ConfigureAwait(false);
                    }

                    bool asJson = parsed.GetValue(json);
                    await desk
                        .Output.WriteLineAsync(asJson ? MeterReadingJson.Write(read.Answer) : read.Answer.Words)
                        .ConfigureAwait(false);
                    return ExitCode.Done;
                }
                catch (InstrumentException fault) when (fault.Trouble == InstrumentTrouble.Moving)
                {
                    await desk.Error.WriteLineAsync("coilwright: " + fault.Message).ConfigureAwait(false);
                    return ExitCode.AnswerIsNo;
                }
                catch (InstrumentException fault)
                {
                    throw Refused(address, fault);
                }
            }
        );
        return command;
    }

    private static Command Watch(CommandContext desk)
    {
        MeterOptions meter = new();
        Option<bool> json = new("--json") { Description = "Write a coilwright.meterReading/1 on each line" };
        SendOptions send = new();
        Option<string?> name = new("--name")
        {
            Description = "Its name in the shop that it is passed on to; the profile's unless said",
            HelpName = "NAME",
        };
        Command command = new("watch", "A line for each value that stands still, once each time that the clips are on; Ctrl-C ends it")
        {
            json,
            name,
        };
        meter.AddTo(command);
        send.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                (MeterProfile profile, MeterAddress address) = await meter.ReadAsync(parsed, cancel).ConfigureAwait(false);
                bool asJson = parsed.GetValue(json);
                OptionReader typed = new();
                send.Check(parsed, typed, name);
                typed.RefuseIfWrong();
                using MeterSender? sender = send.Sender(parsed, parsed.GetValue(name) ?? profile.Name, "api/meters/");
                string trouble = "";
                await foreach (MeterSight sight in desk.Use<WatchMeter>().WatchAsync(profile, address, cancel).ConfigureAwait(false))
                {
                    trouble = await TellAsync(desk, sight, asJson, trouble).ConfigureAwait(false);
                    if (
                        sender is not null
                        && await sender.SendAsync(MeterSender.BodyOf(sight), cancel).ConfigureAwait(false) is { Length: > 0 } lost
                    )
                    {
                        await desk.Error.WriteLineAsync("coilwright: " + lost).ConfigureAwait(false);
                    }
                }

                return ExitCode.Stopped;
            }
        );
        return command;
    }

    /// <summary>Writes what is to be written of a sight; a trouble is told once, until the instrument answers again.</summary>
    private static async Task<string> TellAsync(CommandContext desk, MeterSight sight, bool asJson, string trouble)
    {
        if (sight is MeterSight.Trouble { Fault.Message: var message })
        {
            if (message != trouble)
            {
                await desk.Error.WriteLineAsync("coilwright: " + message).ConfigureAwait(false);
            }

            return message;
        }

        if (sight is MeterSight.Standing { Answer: var answer })
        {
            string line = asJson ? MeterReadingJson.Write(answer, indented: false) : answer.Words;
            await desk.Output.WriteLineAsync(line).ConfigureAwait(false);
            await desk.Output.FlushAsync().ConfigureAwait(false);
        }

        return "";
    }

    /// <summary>What an instrument does not give, at the option that says where it hangs.</summary>
    private static WrongInputException Refused(MeterAddress address, InstrumentException fault)
    {
        string option = address switch
        {
            MeterAddress.Tcp => "--tcp",
            MeterAddress.Serial => "--serial",
            _ => "--usbtmc",
        };
        return new WrongInputException("", [new Problem(option, fault.Message, fault.Raw.Length > 0 ? $"\"{fault.Raw}\"" : null)]);
    }
}
