using System.CommandLine;
using Coilwright.Input;

namespace Coilwright.Commands;

/// <summary>coilwright rules show, set FILE: what the shop decides for itself.</summary>
public static class RulesCommand
{
    public static Command Build(CommandContext desk) =>
        new("rules", "The shop's own rules: serials, plastics' limits, ink, tests, lead colours") { Show(desk), Set(desk) };

    private static Command Show(CommandContext desk)
    {
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("show", "Writes the rules that hold (coilwright.rules/1)") { shop };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                await desk
                    .Output.WriteLineAsync(await open.Services.Pieces.Shelf.Rules.TextAsync(cancel).ConfigureAwait(false))
                    .ConfigureAwait(false);
                return ExitCode.Done;
            }
        );
        return command;
    }

    private static Command Set(CommandContext desk)
    {
        Argument<string> file = new("FILE") { Description = "Rules (coilwright.rules/1); - reads standard input" };
        return ShopAction.Build(
            desk,
            "set",
            "Keeps the rules of a file; the old ones stay on record",
            [file],
            async (open, parsed, person, cancel) =>
                (
                    await open
                        .Services.Pieces.Shelf.Rules.KeepAsync(
                            Guid.NewGuid(),
                            await InputFile.ReadAsync(parsed.GetRequiredValue(file), cancel).ConfigureAwait(false),
                            person,
                            cancel
                        )
                        .ConfigureAwait(false),
                    "The rules hold from now on."
                )
        );
    }
}
