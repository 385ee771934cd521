using System.Globalization;
using Coilwright.Papers.Labels;
using Coilwright.Papers.Pieces;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Application.Printing;

/// <summary>A person prints labels of coils, pieces, spools or boxes on a label printer.</summary>
public sealed class PrintLabels(IShopRecords records, TraceService trace, PrintPiecePaper papers)
{
    /// <summary>Most labels of one request.</summary>
    public const int Most = 300;

    /// <summary>What labels may be of.</summary>
    public static IReadOnlyList<string> Kinds { get; } = ["coil", "piece", "spool", "box"];

    /// <summary>The labels, each proved to stand whole on the size; or every problem at once.</summary>
    public async Task<LabelOutcome> PrintAsync(LabelQuestion asked, CancellationToken cancel)
    {
        List<Problem> problems = [];
        if (!LabelSize.TryParse(asked.Size, out LabelSize size))
        {
            problems.Add(new Problem("size", "this is no size of a label", asked.Size, LabelSize.Allowed));
        }

        IReadOnlyList<PieceLabel> labels = await OfAsync(asked, problems, cancel).ConfigureAwait(false);
        if (problems.Count == 0)
        {
            problems.AddRange(labels.SelectMany(label => Check(label, size)).Distinct());
        }

        return new LabelOutcome(problems.Count == 0 ? labels : [], size, problems);
    }

    private async Task<IReadOnlyList<PieceLabel>> OfAsync(LabelQuestion asked, List<Problem> problems, CancellationToken cancel)
    {
        IReadOnlyList<PieceLabel>? found = asked.Kind switch
        {
            "coil" => await CoilsAsync(asked, problems, cancel).ConfigureAwait(false),
            "piece" => await PieceAsync(asked.Name, cancel).ConfigureAwait(false),
            "spool" => await SpoolAsync(asked.Name, cancel).ConfigureAwait(false),
            "box" => await BoxAsync(asked.Name, cancel).ConfigureAwait(false),
            _ => null,
        };
        if (found is null)
        {
            problems.Add(Unknown(asked));
        }

        return found ?? [];
    }

    private static Problem Unknown(LabelQuestion asked) =>
        asked.Kind switch
        {
            "coil" => new Problem("name", "there is no such batch", asked.Name, "name of a batch"),
            "piece" => new Problem("name", "there is no such piece", asked.Name, "a serial"),
            "spool" => new Problem("name", "there is no such spool", asked.Name, "label of a spool on the shelf"),
            "box" => new Problem("name", "no piece of this serial went to a customer", asked.Name, "serial of a shipped piece"),
            _ => new Problem("kind", "labels are of something else", asked.Kind, string.Join(", ", Kinds)),
        };

    private async Task<IReadOnlyList<PieceLabel>?> CoilsAsync(LabelQuestion asked, List<Problem> problems, CancellationToken cancel)
    {
        BatchRecord? batch = (await records.Batches.AllAsync(cancel).ConfigureAwait(false)).FirstOrDefault(one =>
            Same(one.Name, asked.Name)
        );
        if (batch is null)
        {
            return null;
        }

        IReadOnlyList<RevisionRecord> revisions = await records.Recipes.RevisionsAsync(batch.RecipeId, cancel).ConfigureAwait(false);
        int wanted = BatchNumber.Wanted(
            batch,
            BatchEventLog.Holding(await records.Batches.EventsAsync(batch.Id, cancel).ConfigureAwait(false))
        );
        int first = Number("first", asked.First, 1, 1_000_000, problems),
            count = Number("count", asked.Count, Math.Min(Most, Math.Max(1, wanted - first + 1)), Most, problems);
        RevisionRecord revision = revisions.First(one => one.Number == batch.RevisionNumber);
        return [.. Enumerable.Range(first, count).Select(number => ShopLabels.OfCoil(batch, revision, number))];
    }

    private static int Number(string field, string typed, int usual, int most, List<Problem> problems)
    {
        if (typed.Trim().Length == 0)
        {
            return usual;
        }

        if (!int.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out int number) || number < 1 || number > most)
        {
            problems.Add(new Problem(field, "outside the allowed range", typed, FormattableString.Invariant($"1 to {most:#,##0}")));
            return usual;
        }

        return number;
    }

    private async Task<IReadOnlyList<PieceLabel>?> PieceAsync(string serial, CancellationToken cancel) =>
        await trace.PieceAsync(serial.Trim(), cancel).ConfigureAwait(false) is { } piece ? [PiecePapers.Label(piece.Snapshot)] : null;

    private async Task<IReadOnlyList<PieceLabel>?> SpoolAsync(string label, CancellationToken cancel) =>
        (await records.Stock.SpoolsAsync(cancel).ConfigureAwait(false)).FirstOrDefault(one => Same(one.Label, label)) is { } spool
            ? [ShopLabels.OfSpool(spool)]
            : null;

    private async Task<IReadOnlyList<PieceLabel>?> BoxAsync(string serial, CancellationToken cancel) =>
        await trace.PieceAsync(serial.Trim(), cancel).ConfigureAwait(false) is { Customers: [.., var customer] } piece
            ? [ShopLabels.OfBox(customer, await papers.ShipmentAsync(piece.Snapshot, customer, cancel).ConfigureAwait(false))]
            : null;

    private static IEnumerable<Problem> Check(PieceLabel label, LabelSize size) =>
        LabelLayout.Refusal(label, size) is { } why ? [new Problem("size", why)] : [];

    private static bool Same(string one, string typed) => string.Equals(one, typed.Trim(), StringComparison.OrdinalIgnoreCase);
}
