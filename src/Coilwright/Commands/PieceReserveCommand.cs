using System.CommandLine;
using Coilwright.Workshop.Entry;

namespace Coilwright.Commands;

/// <summary>coilwright piece reserve SERIALS --for CUSTOMER: pieces kept for a customer until they are shipped.</summary>
internal static class PieceReserveCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> serials = ShopAction.Serials();
        Option<string> customer = ShopAction.Text("--for", "Reference of the customer");
        return ShopAction.Build(
            desk,
            "reserve",
            "Keeps pieces for a customer: they are shipped to nobody else",
            [serials, customer],
            async (open, parsed, person, cancel) =>
            {
                IReadOnlyList<Problem> problems = await open
                    .Services.Pieces.DispatchService.ReserveAsync(
                        Guid.NewGuid(),
                        ShopAction.List(parsed.GetRequiredValue(serials)),
                        parsed.GetRequiredValue(customer),
                        person,
                        cancel
                    )
                    .ConfigureAwait(false);
                return (problems, $"{parsed.GetRequiredValue(serials)}: reserved for {parsed.GetRequiredValue(customer)}");
            }
        );
    }
}
