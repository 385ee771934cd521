using System.CommandLine;
using Coilwright.Application.Shops;
using Coilwright.Input;
using Coilwright.Output;

namespace Coilwright.Commands;

/// <summary>coilwright move --to CONNECTION: the whole shop into another database, file or server, compared table by table.</summary>
internal static class MoveCommand
{
    public static Command Build(CommandContext desk)
    {
        Option<string> to = new("--to")
        {
            Description = "Where to: a file that is not there yet, or postgres://user@host:port/database with nothing in it",
            HelpName = "CONNECTION",
            Required = true,
        };
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("move", "Copies the whole shop into another database, and compares every table before it says so")
        {
            to,
            shop,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                string from = parsed.GetValue(shop) ?? OpenShop.UsualPath,
                    target = parsed.GetRequiredValue(to);
                try
                {
                    MoveOutcome outcome = await Progress
                        .ShowCountAsync(desk, "Copying rows", count => desk.Use<MoveShop>().RunAsync(from, target, count, cancel), cancel)
                        .ConfigureAwait(false);
                    MoveFormatter.Write(desk.Output, outcome, target);
                    return ExitCode.Done;
                }
                catch (ShopRefusedException refused)
                {
                    throw WrongInputException.About("", refused.Message);
                }
            }
        );
        return command;
    }
}
