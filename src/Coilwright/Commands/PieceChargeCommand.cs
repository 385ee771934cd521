using System.CommandLine;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Commands;

/// <summary>coilwright piece charge SERIALS: magnets charged or knocked down outside their step.</summary>
internal static class PieceChargeCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> serials = ShopAction.Serials();
        ChargeOptions charge = new();
        Option<string> why = ShopAction.Text("--why", "Why it was done, for example after a rewind");
        return ShopAction.Build(
            desk,
            "charge",
            "Records magnets charged or knocked down outside their step; the last charge holds",
            [serials, .. charge.All, why],
            async (open, parsed, person, cancel) =>
            {
                IReadOnlyList<Problem> problems = await open
                    .Services.Pieces.Magnets.ChargeAsync(
                        Guid.NewGuid(),
                        ShopAction.List(parsed.GetRequiredValue(serials)),
                        charge.Read(parsed),
                        parsed.GetRequiredValue(why),
                        person,
                        cancel
                    )
                    .ConfigureAwait(false);
                return (
                    problems,
                    CautionFormatter.Below(
                        $"{parsed.GetRequiredValue(serials)}: {parsed.GetRequiredValue(charge.Level)}",
                        Cautions.For(Job.Charging)
                    )
                );
            }
        );
    }
}
