using Coilwright.Papers.Pieces;
using Coilwright.Papers.Sheets;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Application.Printing;

/// <summary>A person prints a paper of a piece, or one of several pieces.</summary>
public sealed class PrintPiecePaper(IShopRecords records, PieceService pieces, FinalTestService tests)
{
    /// <summary>Papers of a piece, by the words they are asked for.</summary>
    public static IReadOnlyList<string> Kinds { get; } =
    ["spec", "readings", "traveller", "wiring", "parts", "certificate", "packing", "repair"];

    /// <summary>Papers that may be of several pieces.</summary>
    public static IReadOnlyList<string> OfSeveral { get; } = ["certificate", "packing"];

    /// <summary>Shop, rules and day that papers rest on.</summary>
    public async Task<PaperGround> GroundAsync(CancellationToken cancel) =>
        new(
            await records.ShopNameAsync(cancel).ConfigureAwait(false),
            await pieces.Rules.CurrentAsync(cancel).ConfigureAwait(false),
            await pieces.NowUtcAsync(cancel).ConfigureAwait(false)
        );

    /// <summary>The paper of the pieces; a kind that there is not gives neither paper nor reason.</summary>
    /// <param name="kind">One of <see cref="Kinds"/>.</param>
    /// <param name="of">The pieces; one, unless the paper may be of several.</param>
    /// <param name="load">What hangs on the pickup of a spec sheet.</param>
    /// <param name="cancel">Stops it.</param>
    public async Task<PiecePaper> PrintAsync(string kind, IReadOnlyList<TracedPiece> of, LoadCircuit load, CancellationToken cancel)
    {
        PaperGround ground = await GroundAsync(cancel).ConfigureAwait(false);
        PieceSnapshot life = of[0].Snapshot;
        return kind switch
        {
            "spec" or "readings" => new PiecePaper(
                PiecePapers.Spec(
                    life,
                    PrintRecipePaper.Predict(life.Recipe, load, PrintRecipePaper.OfSpec, cancel),
                    load,
                    ground,
                    forHouse: kind == "readings"
                )
            ),
            "traveller" => new PiecePaper(PiecePapers.TravellerOf(life, ground)),
            "wiring" => new PiecePaper(PiecePapers.WiringOf(life.Recipe, life.Revision.Letter, ground)),
            "parts" => new PiecePaper(PiecePapers.PartsOf(life, PrintRecipePaper.PredictParts(life.Recipe, cancel), ground)),
            "certificate" => Or(
                await CertificateAsync(of, ground, cancel).ConfigureAwait(false),
                "a piece among them was never tested",
                "piece test SERIAL first"
            ),
            "packing" => Or(Packing(of, ground), $"{life.Piece.Serial} went to no customer yet", "piece ship SERIAL --to CUSTOMER first"),
            "repair" => Or(PiecePapers.Repair(of[0], ground), $"{life.Piece.Serial} never came back", "piece return SERIAL first"),
            _ => new PiecePaper(null),
        };
    }

    /// <summary>As above, of one piece: its packing list names everything that went to the customer at the same moment.</summary>
    public async Task<PiecePaper> PrintAsync(string kind, TracedPiece piece, LoadCircuit load, CancellationToken cancel) =>
        kind == "packing" && piece.Customers is [.., var customer]
            ? new PiecePaper(
                PiecePapers.Packing(
                    customer,
                    await ShipmentAsync(piece.Snapshot, customer, cancel).ConfigureAwait(false),
                    await GroundAsync(cancel).ConfigureAwait(false)
                )
            )
            : await PrintAsync(kind, [piece], load, cancel).ConfigureAwait(false);

    private async Task<Sheet?> CertificateAsync(IReadOnlyList<TracedPiece> of, PaperGround ground, CancellationToken cancel)
    {
        List<(PieceSnapshot, IReadOnlyList<TestLine>)> asked = [];
        foreach (PieceSnapshot life in of.Select(piece => piece.Snapshot))
        {
            asked.Add((life, await tests.LimitsAsync(life, ground.Rules, cancel).ConfigureAwait(false)));
        }

        return PiecePapers.Certificate(of.Count == 1 ? of[0].Snapshot.Piece.Serial : $"{of.Count} pieces", asked, ground);
    }

    private static Sheet? Packing(IReadOnlyList<TracedPiece> of, PaperGround ground) =>
        of[0].Customers is [.., var customer] ? PiecePapers.Packing(customer, [.. of.Select(piece => piece.Snapshot)], ground) : null;

    private static PiecePaper Or(Sheet? sheet, string why, string toDo) =>
        sheet is null ? new PiecePaper(null, why, toDo) : new PiecePaper(sheet);

    /// <summary>Everything that went to the customer at the same moment as a piece.</summary>
    internal async Task<IReadOnlyList<PieceSnapshot>> ShipmentAsync(PieceSnapshot life, CustomerRecord customer, CancellationToken cancel)
    {
        DateTimeOffset? left = life.History.InForce.OfType<Shipped>().LastOrDefault()?.TimeUtc;
        IReadOnlyList<PieceSnapshot> all = await pieces
            .LivesAsync(await records.Pieces.WithAsync(new PieceQuery(CustomerId: customer.Id), cancel).ConfigureAwait(false), cancel)
            .ConfigureAwait(false);
        return
        [
            .. all.Where(one =>
                one.History.InForce.OfType<Shipped>().Any(shipped => shipped.TimeUtc == left && shipped.CustomerId == customer.Id)
            ),
        ];
    }
}
