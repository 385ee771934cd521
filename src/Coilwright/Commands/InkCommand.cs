using System.CommandLine;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Steps;

namespace Coilwright.Commands;

/// <summary>coilwright ink mix LABEL: a mix of ink with its clocks.</summary>
public static class InkCommand
{
    public static Command Build(CommandContext desk) => new("ink", "Ink for marking") { Mix(desk), Undo(desk) };

    private static Command Undo(CommandContext desk)
    {
        Argument<string> label = new("MIX") { Description = "What stands on the pot" };
        Option<string> reason = new("--reason") { Description = "What was entered wrongly", Required = true };
        return ShopAction.Build(
            desk,
            "undo",
            "Takes a mix back that no piece is marked with",
            [label, reason],
            async (open, parsed, person, cancel) =>
                (
                    await open
                        .Services.Pieces.StepUndo.UndoMixAsync(
                            Guid.NewGuid(),
                            parsed.GetRequiredValue(label),
                            parsed.GetRequiredValue(reason),
                            person,
                            cancel
                        )
                        .ConfigureAwait(false),
                    $"Mix {parsed.GetRequiredValue(label)} is taken back."
                )
        );
    }

    private static Command Mix(CommandContext desk)
    {
        Argument<string> label = new("MIX") { Description = "What stands on the pot" };
        Option<string> lots = new("--lots") { Description = "Lots of the parts", Required = true },
            room = ShopAction.Text("--room", "The room's temperature; the one in force unless said");
        return ShopAction.Build(
            desk,
            "mix",
            "Records a mix; pot life and cure follow from the shop's sheet and the room",
            [label, lots, room],
            async (open, parsed, person, cancel) =>
            {
                IReadOnlyList<Problem> problems = await open
                    .Services.Pieces.Ink.MixAsync(
                        Guid.NewGuid(),
                        parsed.GetRequiredValue(label),
                        parsed.GetRequiredValue(lots),
                        parsed.GetRequiredValue(room),
                        person,
                        cancel
                    )
                    .ConfigureAwait(false);
                string said = "";
                if (problems.Count == 0)
                {
                    InkMix mix = (await open.Services.Pieces.Ink.NewestAsync(cancel).ConfigureAwait(false))[0].ToMix();
                    TimeZoneInfo zone = (await open.Services.Pieces.Shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false)).Zone;
                    said = CautionFormatter.Below(
                        $"Mix {mix.Label}: discard at {ShopTime.Words(mix.DiscardUtc, zone)}; a print made now is fully hard at "
                            + $"{ShopTime.Words(mix.Cure(mix.MixedUtc).EndUtc, zone)}; {mix.Rule.Words}",
                        Cautions.For(Job.Marking)
                    );
                }

                return (problems, said);
            }
        );
    }
}
