using System.CommandLine;
using Coilwright.Input;
using Coilwright.Papers.Help;
using Coilwright.Physics;

namespace Coilwright.Commands;

/// <summary>coilwright guide, and guide NAME: the guides, the words and the sources, as the pages show them.</summary>
public static class GuideCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string?> name = new("NAME") { Description = "Which guide; without it, the list of them", Arity = ArgumentArity.ZeroOrOne };
        Command command = new("guide", "Guides to the jobs, the words used, and the sources of the numbers; no network is needed") { name };
        command.SetAction(
            async (parsed, _) =>
            {
                string text = parsed.GetValue(name) is { Length: > 0 } asked ? Text(asked) : List();
                await desk.Output.WriteLineAsync(text.TrimEnd()).ConfigureAwait(false);
                return ExitCode.Done;
            }
        );
        return command;
    }

    private static string List() => string.Join('\n', HelpLibrary.All.Select(page => $"{page.Name, -30} {page.Title}"));

    private static string Text(string asked) =>
        HelpLibrary.Find(asked)?.Markdown
        ?? throw WrongInputException.About(
            "NAME",
            $"there is no guide \"{asked}\"" + (Nearest(asked) is { } near ? $"; nearest: {near}" : ""),
            string.Join(", ", HelpLibrary.All.Select(page => page.Name))
        );

    private static string? Nearest(string asked) => NearNames.Nearest(asked, HelpLibrary.All.Select(page => page.Name));
}
