using System.Globalization;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Stock;

namespace Coilwright.Papers.Labels;

/// <summary>What stands on the label of a coil, a spool or a box; the most needed line first.</summary>
public static class ShopLabels
{
    /// <summary>The label of a coil: tag, batch, recipe, which coil. A wound coil without its magnets warns of none.</summary>
    public static PieceLabel OfCoil(BatchRecord batch, RevisionRecord revision, int number)
    {
        string tag = BatchTags.Of(batch, number);
        return new PieceLabel(
            BatchTags.CodeOf(batch, tag),
            tag,
            [$"batch {batch.Name}", $"{revision.RecipeName} {revision.Letter}", $"coil {batch.CoilName}"]
        );
    }

    /// <summary>The label of a spool: its name, gauge and film, enamel, lot, the supplier's words.</summary>
    public static PieceLabel OfSpool(SpoolRecord spool) =>
        new(
            spool.Label,
            "Spool " + spool.Label,
            [
                $"{spool.Gauge} {KeyLabels.Of(spool.Build)}",
                KeyLabels.Of(spool.Insulation),
                spool.Lot.Length > 0 ? "lot " + spool.Lot : "",
                spool.SupplierText,
            ]
        );

    /// <summary>The label of a box that goes to a customer: whose, how many, which serials.</summary>
    public static PieceLabel OfBox(CustomerRecord customer, IReadOnlyList<PieceSnapshot> pieces)
    {
        string count = pieces.Count == 1 ? "1 piece" : pieces.Count.ToString(CultureInfo.InvariantCulture) + " pieces";
        string code = Sheet.CodeOf(customer.Reference) is { Length: > 0 } reference ? reference : pieces[0].Piece.Serial;
        return new PieceLabel(
            code,
            customer.Reference,
            [customer.Name, count, string.Join(", ", pieces.Select(piece => piece.Piece.Serial))],
            pieces.Any(piece => ChargeRule.HasMagnets(piece.Recipe))
        );
    }
}
