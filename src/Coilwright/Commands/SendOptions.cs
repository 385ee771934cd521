using System.CommandLine;
using Coilwright.Input;

namespace Coilwright.Commands;

/// <summary>Where what is read here is passed on to.</summary>
internal sealed class SendOptions
{
    private readonly Option<string?> _send = new("--send")
    {
        Description = "Address of the served shop that it is passed on to",
        HelpName = "URL",
    };
    private readonly Option<string?> _token = new("--token")
    {
        Description = "What lets this computer in, where the shop asks for it",
        HelpName = "TOKEN",
    };

    /// <summary>Adds them to a command.</summary>
    public void AddTo(Command command)
    {
        command.Add(_send);
        command.Add(_token);
    }

    /// <summary>True when it is to be passed on.</summary>
    public bool IsAsked(ParseResult parsed) => parsed.GetValue(_send) is not null;

    /// <summary>What was said beside the address belongs to one.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="typed">Takes what is wrong.</param>
    /// <param name="others">Further options that belong to it.</param>
    public void Check(ParseResult parsed, OptionReader typed, params Option<string?>[] others)
    {
        foreach (Option<string?> option in others.Append(_token).Where(one => !IsAsked(parsed) && parsed.GetValue(one) is not null))
        {
            typed.Add(option.Name, "belongs to --send, which is not there");
        }
    }

    /// <summary>Passes it on; null when nobody asked for it.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="name">The instrument or batch there.</param>
    /// <param name="path">Address of its kind.</param>
    /// <exception cref="WrongInputException">The address is none.</exception>
    public MeterSender? Sender(ParseResult parsed, string? name, string path) =>
        parsed.GetValue(_send) is { } typed && name is not null
            ? new MeterSender(MeterSender.AddressOf(typed), path + Uri.EscapeDataString(name), parsed.GetValue(_token))
            : null;
}
