using System.CommandLine;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Steps;

namespace Coilwright.Commands;

/// <summary>coilwright clocks: what is curing, what may move, what is late.</summary>
public static class ClocksCommand
{
    public static Command Build(CommandContext desk)
    {
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("clocks", "What is curing, what may move, what is late") { shop };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                ClockBoard board = await ClockBoard
                    .ReadAsync(open.Services.Records.Steps, open.Services.Pieces.Shelf, open.Services.Pieces.Potting, cancel)
                    .ConfigureAwait(false);
                await UnreadableFormatter.WriteAsync(desk.Error, board.Unreadable).ConfigureAwait(false);
                PieceFormatter.WriteBoard(desk.Output, board);
                return ExitCode.Done;
            }
        );
        return command;
    }
}
