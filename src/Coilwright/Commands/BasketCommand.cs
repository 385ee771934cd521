using System.CommandLine;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Steps;

namespace Coilwright.Commands;

/// <summary>coilwright basket in, read, out, undo: potting.</summary>
public static class BasketCommand
{
    public static Command Build(Desk desk) => new("basket", "Potting in baskets, with the bath against what the plastics bear") { In(desk), Read(desk), Out(desk), Undo(desk), UndoReading(desk) };

    private static Command In(Desk desk)
    {
        Argument<string> label = new("BASKET") { Description = "What hangs on it" };
        Option<string> pieces = new("--pieces") { Description = "Serials, with commas", Required = true }, bath = new("--bath") { Description = "The bath as read, for example 60", Required = true }, lot = new("--lot") { Description = "Lot of the wax or lacquer", Required = true };
        Option<string> limit = ShopAction.Text("--limit", "Hottest bath the plastics bear, where the shop's rules do not say");
        return ShopAction.Build(desk, "in", "Puts pieces into the bath", [label, pieces, bath, lot, limit], async (open, parsed, person, cancel) =>
        {
            IReadOnlyList<Problem> problems = await open.Services.Pieces.Potting.InAsync(
                new BasketEntry { Id = Guid.NewGuid(), Label = parsed.GetRequiredValue(label), Lot = parsed.GetRequiredValue(lot), Bath = parsed.GetRequiredValue(bath), Pieces = ShopAction.List(parsed.GetRequiredValue(pieces)), Limit = parsed.GetRequiredValue(limit), Person = person },
                cancel).ConfigureAwait(false);
            string when = "";
            if (problems.Count == 0)
            {
                BasketStanding basket = (await open.Services.Pieces.Potting.GoingAsync(cancel).ConfigureAwait(false)).First(one => one.Record.Label == parsed.GetRequiredValue(label).Trim());
                when = ShopTime.Words(basket.ToBasket().EarliestOutUtc, (await open.Services.Pieces.Shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false)).Zone);
            }

            return (problems, $"Basket {parsed.GetRequiredValue(label)} is in; earliest out {when}{Environment.NewLine}{StepCautions.Wax}");
        });
    }

    private static Command Read(Desk desk)
    {
        Argument<string> label = new("BASKET") { Description = "The basket" };
        Option<string> bath = new("--bath") { Description = "The bath as read", Required = true };
        return ShopAction.Build(desk, "read", "Records the bath's temperature; over the limit every piece in the basket is held", [label, bath], async (open, parsed, person, cancel) =>
        {
            (IReadOnlyList<Problem> problems, string? alarm) = await open.Services.Pieces.Potting.ReadBathAsync(Guid.NewGuid(), parsed.GetRequiredValue(label), parsed.GetRequiredValue(bath), person, cancel).ConfigureAwait(false);
            return (problems, alarm is null ? "The bath is within its limit." : "ALARM: " + alarm);
        });
    }

    private static Command Out(Desk desk)
    {
        Argument<string> label = new("BASKET") { Description = "The basket" };
        return ShopAction.Build(desk, "out", "Takes a basket out", [label], async (open, parsed, person, cancel) =>
            (await open.Services.Pieces.Potting.OutAsync(Guid.NewGuid(), parsed.GetRequiredValue(label), person, cancel).ConfigureAwait(false), $"Basket {parsed.GetRequiredValue(label)} is out."));
    }

    private static Command UndoReading(Desk desk)
    {
        Argument<string> label = new("BASKET") { Description = "The basket" };
        Option<string> reason = new("--reason") { Description = "What was entered wrongly", Required = true };
        return ShopAction.Build(desk, "undo-reading", "Takes the newest reading of the bath back, and the holds it put on pieces", [label, reason], async (open, parsed, person, cancel) =>
            (await open.Services.Pieces.StepUndo.UndoReadingAsync(Guid.NewGuid(), parsed.GetRequiredValue(label), parsed.GetRequiredValue(reason), person, cancel).ConfigureAwait(false), $"The newest reading of basket {parsed.GetRequiredValue(label)} is taken back."));
    }

    private static Command Undo(Desk desk)
    {
        Argument<string> label = new("BASKET") { Description = "The basket" };
        Option<string> reason = new("--reason") { Description = "What was entered wrongly", Required = true };
        return ShopAction.Build(desk, "undo", "Takes a basket back that never went into the bath", [label, reason], async (open, parsed, person, cancel) =>
            (await open.Services.Pieces.Undo.UndoAsync(new UndoEntry { Id = Guid.NewGuid(), Serials = [], Basket = parsed.GetRequiredValue(label), Reason = parsed.GetRequiredValue(reason), Person = person }, cancel).ConfigureAwait(false), $"Basket {parsed.GetRequiredValue(label)} is taken back."));
    }
}
