using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Stock;

namespace Coilwright.Workshop.Learning;

/// <summary>What a shop knows of its parts and has learnt: for a coil that is wound now, and for a batch as it was begun.</summary>
public static class LearntParts
{
    /// <summary>For a coil that is wound at a moment.</summary>
    /// <param name="records">The shop's records.</param>
    /// <param name="timeUtc">When.</param>
    /// <param name="spool">Label of its spool; empty when nobody named one.</param>
    /// <param name="cancel">Gives up.</param>
    public static Task<KnownParts> AtAsync(IShopRecords records, DateTimeOffset timeUtc, string spool, CancellationToken cancel) =>
        ReadAsync(records, (book, named) => book.For(timeUtc, named), spool, cancel);

    /// <summary>For a batch that was begun under a set.</summary>
    /// <param name="records">The shop's records.</param>
    /// <param name="number">Number of the set; 0 for none.</param>
    /// <param name="batch">The batch.</param>
    /// <param name="cancel">Gives up.</param>
    internal static Task<KnownParts> UnderAsync(IShopRecords records, int number, BatchRecord batch, CancellationToken cancel) =>
        ReadAsync(records, (book, named) => book.Under(number, batch.BegunUtc, named), batch.Spool, cancel);

    /// <summary>A spool with its lot.</summary>
    internal static async Task<(string Label, string Lot)> SpoolAsync(IShopRecords records, string label, CancellationToken cancel) =>
        label.Length == 0 ? ("", "") : (label, CoilKeys.Lot(label, await SpoolsAsync(records, cancel).ConfigureAwait(false)));

    /// <summary>The shop's spools by their labels in capitals.</summary>
    internal static async Task<IReadOnlyDictionary<string, SpoolRecord>> SpoolsAsync(IShopRecords records, CancellationToken cancel) =>
        (await records.Stock.SpoolsAsync(cancel).ConfigureAwait(false))
            .GroupBy(spool => spool.Label.ToUpperInvariant(), StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.Last(), StringComparer.Ordinal);

    private static async Task<KnownParts> ReadAsync(
        IShopRecords records,
        Func<LearningBook, (string Label, string Lot), RecipeLearning?> take,
        string spool,
        CancellationToken cancel
    )
    {
        KnownParts plain = await KnownParts.ReadAsync(records.Recipes, records.Rules, cancel).ConfigureAwait(false);
        IReadOnlyList<LearningRecord> learnt = await records.Learning.AllAsync(cancel).ConfigureAwait(false);
        return learnt.Any(record => record.Act == LearningAct.Accepted)
            ? plain.With(take(new LearningBook(learnt), await SpoolAsync(records, spool, cancel).ConfigureAwait(false)))
            : plain;
    }
}
