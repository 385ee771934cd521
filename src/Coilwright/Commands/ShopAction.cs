using System.CommandLine;
using Coilwright.Input;
using Coilwright.Workshop.Entry;

namespace Coilwright.Commands;

/// <summary>
/// A command that changes one thing in a shop: it opens the shop, acts, refuses with every problem, and tells what came of it.
/// </summary>
internal static class ShopAction
{
    /// <summary>Makes the command.</summary>
    /// <param name="desk">Where answers go.</param>
    /// <param name="name">Its word.</param>
    /// <param name="description">What it does.</param>
    /// <param name="parts">Its arguments and options; the shop and the person are added.</param>
    /// <param name="act">Acts, and gives every problem or what to say.</param>
    public static Command Build(
        CommandContext desk,
        string name,
        string description,
        IReadOnlyList<Symbol> parts,
        Func<OpenShop, ParseResult, string, CancellationToken, Task<(IReadOnlyList<Problem> Problems, string Said)>> act
    )
    {
        EntryOptions entry = new();
        Command command = new(name, description);
        foreach (Symbol part in parts)
        {
            if (part is Argument argument)
            {
                command.Arguments.Add(argument);
            }
            else if (part is Option option)
            {
                command.Options.Add(option);
            }
        }

        entry.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await entry.OpenAsync(parsed, desk, cancel).ConfigureAwait(false);
                (IReadOnlyList<Problem> problems, string said) = await act(open, parsed, entry.Person(parsed), cancel)
                    .ConfigureAwait(false);
                Refuse(problems);
                await desk.Output.WriteLineAsync(said).ConfigureAwait(false);
                return ExitCode.Done;
            }
        );
        return command;
    }

    /// <summary>An option that may be left out: empty then.</summary>
    public static Option<string> Text(string name, string description) =>
        new(name) { Description = description, DefaultValueFactory = _ => "" };

    /// <summary>Serials, several with commas.</summary>
    public static Argument<string> Serials() => new("SERIALS") { Description = "The piece, or several with commas" };

    /// <summary>The entries of a list with commas.</summary>
    public static string[] List(string typed) =>
        typed.Split([',', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    /// <exception cref="WrongInputException">There is a problem.</exception>
    public static void Refuse(IReadOnlyList<Problem> problems)
    {
        if (problems.Count > 0)
        {
            throw new WrongInputException("", problems);
        }
    }
}
