using System.CommandLine;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Steps;

namespace Coilwright.Commands;

/// <summary>coilwright basket in, read, out, undo: potting.</summary>
public static class BasketCommand
{
    public static Command Build(CommandContext desk) =>
        new("basket", "Potting in baskets, with the bath against what the plastics bear")
        {
            In(desk),
            Read(desk),
            Out(desk),
            Undo(desk),
            UndoReading(desk),
        };

    private static Command In(CommandContext desk)
    {
        Argument<string> label = new("BASKET") { Description = "What hangs on it" };
        Option<string> pieces = new("--pieces") { Description = "Serials, with commas", Required = true },
            bath = new("--bath") { Description = "The bath as read, for example 60", Required = true },
            lot = new("--lot") { Description = "Lot of the wax or lacquer", Required = true };
        Option<string> limit = ShopAction.Text("--limit", "Hottest bath the plastics bear, where the shop's rules do not say");
        return ShopAction.Build(
            desk,
            "in",
            "Puts pieces into the bath",
            [label, pieces, bath, lot, limit],
            async (open, parsed, person, cancel) =>
            {
                IReadOnlyList<Problem> problems = await open
                    .Services.Pieces.Potting.InAsync(
                        new BasketEntry
                        {
                            Id = Guid.NewGuid(),
                            Label = parsed.GetRequiredValue(label),
                            Lot = parsed.GetRequiredValue(lot),
                            Bath = parsed.GetRequiredValue(bath),
                            Pieces = ShopAction.List(parsed.GetRequiredValue(pieces)),
                            Limit = parsed.GetRequiredValue(limit),
                            Person = person,
                        },
                        cancel
                    )
                    .ConfigureAwait(false);
                string when = "";
                if (problems.Count == 0)
                {
                    BasketStatus basket = (await open.Services.Pieces.Potting.GoingAsync(cancel).ConfigureAwait(false)).First(one =>
                        one.Record.Label == parsed.GetRequiredValue(label).Trim()
                    );
                    when = ShopTime.Words(
                        basket.ToBasket().EarliestOutUtc,
                        (await open.Services.Pieces.Shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false)).Zone
                    );
                }

                return (
                    problems,
                    CautionFormatter.Below(
                        $"Basket {parsed.GetRequiredValue(label)} is in; earliest out {when}",
                        await CautionsAsync(open, parsed.GetRequiredValue(label), cancel).ConfigureAwait(false)
                    )
                );
            }
        );
    }

    private static Command Read(CommandContext desk)
    {
        Argument<string> label = new("BASKET") { Description = "The basket" };
        Option<string> bath = new("--bath") { Description = "The bath as read", Required = true };
        return ShopAction.Build(
            desk,
            "read",
            "Records the bath's temperature; over the limit every piece in the basket is held",
            [label, bath],
            async (open, parsed, person, cancel) =>
            {
                (IReadOnlyList<Problem> problems, string? alarm) = await open
                    .Services.Pieces.Potting.ReadBathAsync(
                        Guid.NewGuid(),
                        parsed.GetRequiredValue(label),
                        parsed.GetRequiredValue(bath),
                        person,
                        cancel
                    )
                    .ConfigureAwait(false);
                return (
                    problems,
                    CautionFormatter.Below(
                        alarm is null ? "The bath is within its limit." : "ALARM: " + alarm,
                        await CautionsAsync(open, parsed.GetRequiredValue(label), cancel).ConfigureAwait(false)
                    )
                );
            }
        );
    }

    private static Command Out(CommandContext desk)
    {
        Argument<string> label = new("BASKET") { Description = "The basket" };
        return ShopAction.Build(desk, "out", "Takes a basket out", [label], async (open, parsed, person, cancel) =>
        {
            // while it still hangs in the bath
            IReadOnlyList<string> cautions = await CautionsAsync(open, parsed.GetRequiredValue(label), cancel).ConfigureAwait(false);
            return (
                await open
                    .Services.Pieces.Potting.OutAsync(Guid.NewGuid(), parsed.GetRequiredValue(label), person, cancel)
                    .ConfigureAwait(false),
                CautionFormatter.Below($"Basket {parsed.GetRequiredValue(label)} is out.", cautions)
            );
        });
    }

    private static async Task<IReadOnlyList<string>> CautionsAsync(OpenShop open, string label, CancellationToken cancel)
    {
        IReadOnlyList<BasketStatus> going = await open.Services.Pieces.Potting.GoingAsync(cancel).ConfigureAwait(false);
        return Cautions.ForBath(
            going.FirstOrDefault(one => string.Equals(one.Record.Label, label.Trim(), StringComparison.OrdinalIgnoreCase))?.Record.Kind
        );
    }

    private static Command UndoReading(CommandContext desk)
    {
        Argument<string> label = new("BASKET") { Description = "The basket" };
        Option<string> reason = new("--reason") { Description = "What was entered wrongly", Required = true };
        return ShopAction.Build(
            desk,
            "undo-reading",
            "Takes the newest reading of the bath back, and the holds it put on pieces",
            [label, reason],
            async (open, parsed, person, cancel) =>
                (
                    await open
                        .Services.Pieces.StepUndo.UndoReadingAsync(
                            Guid.NewGuid(),
                            parsed.GetRequiredValue(label),
                            parsed.GetRequiredValue(reason),
                            person,
                            cancel
                        )
                        .ConfigureAwait(false),
                    $"The newest reading of basket {parsed.GetRequiredValue(label)} is taken back."
                )
        );
    }

    private static Command Undo(CommandContext desk)
    {
        Argument<string> label = new("BASKET") { Description = "The basket" };
        Option<string> reason = new("--reason") { Description = "What was entered wrongly", Required = true };
        return ShopAction.Build(
            desk,
            "undo",
            "Takes a basket back that never went into the bath",
            [label, reason],
            async (open, parsed, person, cancel) =>
                (
                    await open
                        .Services.Pieces.Undo.UndoAsync(
                            new UndoEntry
                            {
                                Id = Guid.NewGuid(),
                                Serials = [],
                                Basket = parsed.GetRequiredValue(label),
                                Reason = parsed.GetRequiredValue(reason),
                                Person = person,
                            },
                            cancel
                        )
                        .ConfigureAwait(false),
                    $"Basket {parsed.GetRequiredValue(label)} is taken back."
                )
        );
    }
}
