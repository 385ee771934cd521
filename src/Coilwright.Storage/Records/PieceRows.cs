using Coilwright.Storage.Model;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Records;

/// <summary>What writing and finding pieces share: their events and parts in one open unit of work.</summary>
internal static class PieceRows
{
    /// <summary>Ids asked for at once; a database takes many, and plans few better.</summary>
    public const int AtOnce = 400;

    private static readonly string s_partOut = PieceEvent.KindOf<PartOut>(),
        s_undone = PieceEvent.KindOf<Undone>();

    public static async Task AddEventsAsync(
        ShopContext context,
        IReadOnlyList<PieceEvent> events,
        IReadOnlyList<PieceReadingRecord> readings,
        CancellationToken cancel
    )
    {
        foreach (PieceEvent happened in events)
        {
            if (await context.PieceEvents.AnyAsync(row => row.Id == happened.Id, cancel))
            {
                continue;
            }

            context.Add(PieceEventRow.Of(happened));
            context.AddRange(readings.Where(reading => reading.EventId == happened.Id));
            await context.SaveChangesAsync(cancel); // one by one: the order of entry is the order here
            await FollowAsync(context, happened.PieceId, cancel);
        }
    }

    public static async Task<string?> AddPartsAsync(
        ShopContext context,
        IDbContextTransaction alone,
        IReadOnlyList<PiecePartRecord> parts,
        CancellationToken cancel
    )
    {
        foreach (PiecePartRecord part in parts)
        {
            if (await context.PieceParts.AnyAsync(row => row.Id == part.Id, cancel))
            {
                continue;
            }

            if (
                part.BatchId is not null
                && await InForce(context).AnyAsync(row => row.BatchId == part.BatchId && row.Tag == part.Tag, cancel)
            )
            {
                return part.Tag; // leaves without a commit: nothing is kept
            }

            context.Add(part);
            await context.SaveChangesAsync(cancel);
        }

        await alone.CommitAsync(cancel);
        return null;
    }

    public static async Task<IReadOnlyList<PieceEvent>> EventsAsync(
        ShopContext context,
        IReadOnlyList<Guid> pieces,
        CancellationToken cancel
    ) =>
        [
            .. (await ManyAsync(pieces, some => context.PieceEvents.Where(row => some.Contains(row.PieceId)), cancel)).Select(row =>
                row.ToEvent()
            ),
        ];

    /// <summary>Events that no later one took back.</summary>
    public static IQueryable<PieceEventRow> InForceEvents(ShopContext context) =>
        context.PieceEvents.Where(one =>
            !context.PieceEvents.Any(undo => undo.PieceId == one.PieceId && undo.Kind == s_undone && undo.About == one.Id)
        );

    /// <summary>Parts that no event took out.</summary>
    public static IQueryable<PiecePartRecord> InForce(ShopContext context) =>
        context.PieceParts.Where(part =>
            !context.PieceEvents.Any(gone => gone.PieceId == part.PieceId && gone.Kind == s_partOut && gone.About == part.Id)
        );

    /// <summary>Pieces whose place in the list of those in the shop is not what their events say.</summary>
    public static async Task<IReadOnlyList<PieceRecord>> MislistedAsync(ShopContext context, CancellationToken cancel)
    {
        HashSet<Guid> listed = [.. await context.OpenPieces.AsNoTracking().Select(row => row.PieceId).ToListAsync(cancel)];
        List<PieceRecord> pieces = await context
            .Pieces.AsNoTracking()
            .OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
        List<PieceRecord> wrong = [];
        foreach (PieceRecord[] some in pieces.Chunk(PieceRows.AtOnce))
        {
            ILookup<Guid, PieceEvent> events = (await PieceRows.EventsAsync(context, [.. some.Select(piece => piece.Id)], cancel)).ToLookup(
                one => one.PieceId
            );
            wrong.AddRange(some.Where(piece => PieceEventLog.IsInShop([.. events[piece.Id]]) != listed.Contains(piece.Id)));
        }

        return wrong;
    }

    /// <summary>Keeps the list of pieces in the shop in step with their events.</summary>
    public static async Task FollowAsync(ShopContext context, Guid pieceId, CancellationToken cancel)
    {
        bool inShop = PieceEventLog.IsInShop(await EventsAsync(context, [pieceId], cancel)),
            listed = await context.OpenPieces.AnyAsync(row => row.PieceId == pieceId, cancel);
        if (inShop && !listed)
        {
            context.Add(new ShopContext.OpenPieceRow(pieceId));
            await context.SaveChangesAsync(cancel);
        }
        else if (!inShop && listed)
        {
            await context.OpenPieces.Where(row => row.PieceId == pieceId).ExecuteDeleteAsync(cancel);
        }
    }

    public static async Task<IReadOnlyList<T>> ManyAsync<T>(
        IReadOnlyList<Guid> ids,
        Func<Guid[], IQueryable<T>> of,
        CancellationToken cancel
    )
        where T : class
    {
        List<T> found = [];
        foreach (Guid[] some in ids.Distinct().Chunk(AtOnce))
        {
            found.AddRange(
                await of(some).AsNoTracking().OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder)).ToListAsync(cancel)
            );
        }

        return found;
    }
}
