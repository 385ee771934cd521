using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Rules;

namespace Coilwright.Application.Magnets;

/// <summary>A person asks how the magnets stand: all of the shop's, or those of a lot or a piece.</summary>
public sealed class ReadMagnets(IPieceRecords pieces, PieceService shelf)
{
    /// <summary>The magnets as they stand.</summary>
    /// <param name="asked">A lot of magnets or a serial; empty for neither.</param>
    /// <param name="cancel">Stops it.</param>
    public async Task<MagnetBoard> ReadAsync(string asked, CancellationToken cancel)
    {
        ShopRules rules = await shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false);
        IReadOnlyList<RecordStatus<PieceSnapshot>> open = await shelf.OpenStatusesAsync(cancel).ConfigureAwait(false);
        string name = asked.Trim();
        IReadOnlyList<MagnetLine> found = name.Length == 0 ? [] : await FindAsync(name, rules, cancel).ConfigureAwait(false);
        return new MagnetBoard(Lines(open, rules), name, found, rules.Zone) { Unreadable = open.Unreadable() };
    }

    private async Task<IReadOnlyList<MagnetLine>> FindAsync(string name, ShopRules rules, CancellationToken cancel)
    {
        IReadOnlyList<PieceRecord> named = await pieces.FindAsync([name], cancel).ConfigureAwait(false);
        IReadOnlyList<PieceRecord> held =
            named.Count > 0 ? named : await pieces.WithAsync(new PieceQuery(Lot: name), cancel).ConfigureAwait(false);
        IReadOnlyList<MagnetLine> lines = Lines(await shelf.StatusesAsync(held, cancel).ConfigureAwait(false), rules);
        return named.Count > 0 ? lines : [.. lines.Where(line => line.Lots.Contains(name, StringComparer.OrdinalIgnoreCase))];
    }

    private static MagnetLine[] Lines(IReadOnlyList<RecordStatus<PieceSnapshot>> pieces, ShopRules rules) =>
        [.. pieces.Readable().Where(life => ChargeRule.HasMagnets(life.Recipe)).Select(life => MagnetLine.Of(life, rules))];
}
